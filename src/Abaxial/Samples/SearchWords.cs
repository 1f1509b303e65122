using System.Collections.Immutable;
using System.Text;

namespace Abaxial.Samples;

/// <summary>
/// The words that samples are found by, the same for every kind of database: runs of letters and digits, in small letters, without accents. What is written together with
/// hyphens, full stops or the like and holds a digit (<c>26-0142-D</c>, <c>d-01</c>, <c>2026-07-14</c>) is one word as well. Any text whatever is taken; of what is no
/// letter and no digit nothing is left.
/// </summary>
public static class SearchWords
{
    /// <summary>Code points of one word: what is longer is found by its beginning.</summary>
    public const int Longest = 32;

    private const string Joints = "-./_:";

    // The letters that the small letters of two blocks of Unicode are with an accent taken off (their canonical or compatible decomposition; for a few, as the barred ones, what is
    // typed for them); _ where there is none. The framework's own table is not on every machine.
    private const int Latin = 0xDF;

    private const string PlainLatin =
        "_aaaaaa_ceeeeiiiidnooooo_ouuuuy_y_a_a_a_c_c_c_c_d_d_e_e_e_e_e_g_g_g_g_h_h_i_i_i_i_i___j_kk_l_l_l___l"
        + "_n_n_n__n_o_o_o___r_r_r_s_s_s_s_t_t_t_u_u_u_u_u_u_w_y__z_z_zsb________________________________o_____"
        + "_________u_____________________________a_i_o_u_u_u_u_ue_a_a_____g_k_o_o__j____g___n_a_____a_a_e_e_i_"
        + "i_o_o_r_r_u_u_s_t___h_______a_e_o_o_o_o_y____________________________";

    private const int Vietnamese = 0x1E00;

    private const string PlainVietnamese =
        "_a_b_b_b_c_d_d_d_d_d_e_e_e_e_e_f_g_h_h_h_h_h_i_i_k_k_k_l_l_l_l_m_m_m_n_n_n_n_o_o_o_o_p_p_r_r_r_r_s_s"
        + "_s_s_s_t_t_t_t_u_u_u_u_u_v_v_w_w_w_w_w_x_x_y_z_z_zhtwy_s_____a_a_a_a_a_a_a_a_a_a_a_a_e_e_e_e_e_e_e_e"
        + "_i_i_o_o_o_o_o_o_o_o_o_o_o_o_u_u_u_u_u_u_u_y_y_y_y______";

    /// <summary>The words of a text to be found: what is written together as one word, and its parts.</summary>
    public static IEnumerable<string> OfText(string text) => Chunks(text).SelectMany(parts => IsOne(parts) ? parts.Append(string.Concat(parts)) : parts).Select(Cut);

    /// <summary>The words that a question asks for, each once, in its order: all of them have to be there, each as the beginning of a word.</summary>
    /// <param name="text">The question.</param>
    /// <param name="most">Words from which on the rest is left out.</param>
    public static ImmutableArray<string> OfQuery(string text, int most) =>
        [.. Chunks(text).SelectMany(parts => IsOne(parts) ? [string.Concat(parts)] : (IEnumerable<string>)parts).Select(Cut).Distinct(StringComparer.Ordinal).Take(most)];

    private static bool IsOne(List<string> parts) => parts.Count > 1 && parts.Exists(part => part.AsSpan().ContainsAnyInRange('0', '9'));

    /// <summary>The words of a text by what is written together.</summary>
    private static IEnumerable<List<string>> Chunks(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = new List<string>();
        var word = new StringBuilder();
        bool isApart = true; // something that is no part of a word was read last
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value is >= 0x300 and <= 0x36F) continue; // an accent that is written apart from its letter
            if (Rune.IsLetterOrDigit(rune))
            {
                word.Append(Folded(rune));
                isApart = false;
                continue;
            }

            if (word.Length > 0) parts.Add(word.ToString());
            word.Clear();
            bool isJoint = !isApart && rune.IsAscii && Joints.Contains((char)rune.Value, StringComparison.Ordinal);
            isApart = true;
            if (isJoint || parts.Count == 0) continue;
            yield return parts;
            parts = [];
        }

        if (word.Length > 0) parts.Add(word.ToString());
        if (parts.Count > 0) yield return parts;
    }

    /// <summary>The small letter without its accent.</summary>
    private static string Folded(Rune rune) => Rune.ToLowerInvariant(rune).Value switch
    {
        'ß' => "ss",
        'æ' => "ae",
        'œ' => "oe",
        'þ' => "th",
        'İ' => "i",
        >= Latin and < Latin + 0x171 and var letter when PlainLatin[letter - Latin] is not '_' and var plain => plain.ToString(),
        >= Vietnamese and < Vietnamese + 0x100 and var letter when PlainVietnamese[letter - Vietnamese] is not '_' and var plain => plain.ToString(),
        var letter => new Rune(letter).ToString(),
    };

    private static string Cut(string word)
    {
        if (word.Length <= Longest) return word;
        int end = 0, count = 0;
        foreach (var rune in word.EnumerateRunes())
        {
            if (count++ == Longest) return word[..end];
            end += rune.Utf16SequenceLength;
        }

        return word;
    }
}

using System.Collections.Frozen;

namespace Abaxial.Web.People;

/// <summary>What a password has to be: long, and not among those that are tried first. Nothing is asked of its letters.</summary>
internal static class PasswordRules
{
    public const int Shortest = 12;
    public const int Longest = 200;

    private const string Keys = "01234567890 qwertyuiopasdfghjklzxcvbnm qwertzuiop abcdefghijklmnopqrstuvwxyz";

    private static readonly char[] Edges = [.. "0123456789.,-_#*+?&!"];

    /// <summary>The usual beginnings of passwords, as common practice knows them; from memory.</summary>
    private static readonly FrozenSet<string> Common = new[]
    {
        "password", "passwort", "contrasena", "letmein", "welcome", "iloveyou", "admin", "administrator", "qwerty", "qwertz", "azerty", "monkey", "dragon", "football", "baseball", "superman",
        "batman", "sunshine", "princess", "master", "shadow", "michael", "jordan", "trustno", "whatever", "starwars", "computer", "internet", "secret", "changeme", "default", "summer", "winter",
        "spring", "autumn", "january", "february", "october", "november", "december", "monday", "friday", "hello", "login", "guest", "root", "test", "tomato", "potato", "plantclinic", "clinic",
        "abaxial", "correcthorsebatterystaple", "thisisapassword", "mypassword", "passphrase",
    }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Why a password will not do; null where it does.</summary>
    /// <param name="password">As it was typed.</param>
    /// <param name="names">What the person is called: no password either.</param>
    public static Fault? FaultOf(string password, params ReadOnlySpan<string> names)
    {
        int letters = password.EnumerateRunes().Count();
        if (letters is < Shortest or > Longest) return Faults.PasswordShort;
        string plain = Close(password), bare = Bare(plain);
        foreach (string name in names)
        {
            if (name.Length > 2 && bare == Bare(Close(name))) return Faults.PasswordCommon;
        }

        return Common.Contains(bare) || Common.Contains(StandIns(plain)) || IsRepeated(plain) || IsRun(plain) ? Faults.PasswordCommon : null;
    }

    /// <summary>Small letters without spaces.</summary>
    private static string Close(string text) => string.Concat(text.ToLowerInvariant().Where(letter => !char.IsWhiteSpace(letter)));

    /// <summary>Without the digits and signs that are put before and after a word, and with the usual stand-ins taken back.</summary>
    private static string Bare(string text) => StandIns(text.Trim(Edges));

    private static string StandIns(string text) => string.Concat(text.Select(letter => letter switch { '@' => 'a', '$' => 's', '3' => 'e', '0' => 'o', '!' or '1' => 'i', _ => letter }));

    /// <summary>A few letters over and over.</summary>
    private static bool IsRepeated(string text) => text.Distinct().Count() < 5 || Enumerable.Range(1, text.Length / 2).Any(length => IsPeriod(text, length));

    private static bool IsPeriod(string text, int length) => !text.Where((letter, i) => letter != text[i % length]).Any();

    /// <summary>Keys beside one another, either way, over and over.</summary>
    private static bool IsRun(string text)
    {
        string back = string.Concat(Keys.Reverse());
        return text.Chunk(5).All(part => Keys.Contains(new string(part), StringComparison.Ordinal) || back.Contains(new string(part), StringComparison.Ordinal));
    }
}

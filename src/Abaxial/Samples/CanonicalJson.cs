using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Abaxial.Samples;

/// <summary>The one form of a JSON text that hashes are taken over: RFC 8785, JSON Canonicalization Scheme.</summary>
public static class CanonicalJson
{
    /// <summary>Writes a JSON value in canonical form: members sorted by their UTF-16 code units, no white space, numbers as ECMAScript writes them.</summary>
    /// <exception cref="ArgumentException">A number does not fit a double, or an object names a member twice.</exception>
    /// <exception cref="InvalidOperationException">A text holds half of a surrogate pair.</exception>
    public static string Of(JsonElement value)
    {
        var text = new StringBuilder();
        Write(value, text);
        return text.ToString();
    }

    /// <summary>Writes a number as ECMAScript's Number::toString does (ECMA-262, 6.1.6.1.20).</summary>
    /// <exception cref="ArgumentException">The number is not finite.</exception>
    public static string Of(double number)
    {
        if (!double.IsFinite(number)) throw new ArgumentException($"{number} has no JSON form.", nameof(number));
        if (number == 0) return "0"; // also where it is negative

        // The framework finds the digits: the fewest that read back as the same number and, of those, the nearest to it. Where they stand is ECMAScript's own.
        string shortest = Math.Abs(number).ToString("R", CultureInfo.InvariantCulture);
        int exponent = 0, mark = shortest.IndexOf('E', StringComparison.Ordinal);
        if (mark >= 0)
        {
            exponent = int.Parse(shortest.AsSpan(mark + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
            shortest = shortest[..mark];
        }

        int point = shortest.IndexOf('.', StringComparison.Ordinal);
        int whole = point < 0 ? shortest.Length : point;
        string all = shortest.Replace(".", "", StringComparison.Ordinal);
        string digits = all.TrimStart('0');
        int n = whole - (all.Length - digits.Length) + exponent;
        return (number < 0 ? "-" : "") + Place(digits.TrimEnd('0'), n);
    }

    /// <summary>Writes a text with its quotation marks.</summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var written = new StringBuilder(text.Length + 2);
        WriteText(text, written);
        return written.ToString();
    }

    /// <summary>Writes an object of members whose values are canonical already; those without a value are left out.</summary>
    internal static string OfObject(params ReadOnlySpan<(string Name, string? Json)> members)
    {
        var known = new List<(string Name, string Json)>(members.Length);
        foreach (var (name, json) in members)
        {
            if (json is not null) known.Add((name, json));
        }

        known.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        return "{" + string.Join(',', known.Select(member => $"{Of(member.Name)}:{member.Json}")) + "}";
    }

    /// <summary>Writes an array of values that are canonical already.</summary>
    internal static string OfArray(IEnumerable<string> items) => "[" + string.Join(',', items) + "]";

    /// <summary>Where the point stands among the digits, or the exponent.</summary>
    private static string Place(string digits, int n)
    {
        int k = digits.Length;
        if (k <= n && n <= 21) return digits + new string('0', n - k);
        if (n is > 0 and <= 21) return digits[..n] + "." + digits[n..];
        if (n is > -6 and <= 0) return "0." + new string('0', -n) + digits;
        string exponent = (n - 1 < 0 ? "e-" : "e+") + Math.Abs(n - 1).ToString(CultureInfo.InvariantCulture);
        return k == 1 ? digits + exponent : digits[..1] + "." + digits[1..] + exponent;
    }

    private static void Write(JsonElement value, StringBuilder text)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                WriteObject(value, text);
                break;
            case JsonValueKind.Array:
                text.Append('[');
                string comma = "";
                foreach (var item in value.EnumerateArray())
                {
                    text.Append(comma);
                    Write(item, text);
                    comma = ",";
                }

                text.Append(']');
                break;
            case JsonValueKind.String:
                WriteText(value.GetString()!, text);
                break;
            case JsonValueKind.Number:
                text.Append(Of(value.GetDouble()));
                break;
            default:
                text.Append(value.GetRawText());
                break;
        }
    }

    private static void WriteObject(JsonElement value, StringBuilder text)
    {
        var members = value.EnumerateObject().ToArray();
        Array.Sort(members, (a, b) => string.CompareOrdinal(a.Name, b.Name));
        text.Append('{');
        for (int i = 0; i < members.Length; i++)
        {
            if (i > 0)
            {
                if (members[i].Name == members[i - 1].Name) throw new ArgumentException($"The member '{members[i].Name}' stands twice.", nameof(value));
                text.Append(',');
            }

            WriteText(members[i].Name, text);
            text.Append(':');
            Write(members[i].Value, text);
        }

        text.Append('}');
    }

    private static void WriteText(string value, StringBuilder text)
    {
        text.Append('"');
        foreach (char letter in value)
        {
            string? escape = letter switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\b' => "\\b",
                '\t' => "\\t",
                '\n' => "\\n",
                '\f' => "\\f",
                '\r' => "\\r",
                < ' ' => "\\u" + ((int)letter).ToString("x4", CultureInfo.InvariantCulture),
                _ => null,
            };
            if (escape is null) text.Append(letter);
            else text.Append(escape);
        }

        text.Append('"');
    }
}

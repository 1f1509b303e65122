using System.Collections.Immutable;
using System.Globalization;

namespace Abaxial.Weather.Sprays;

/// <summary>What was applied on a day. No brand and no dose: neither is kept.</summary>
/// <param name="Day">The day.</param>
/// <param name="Materials">What was in the tank; one or more.</param>
public sealed record Application(DateOnly Day, ImmutableArray<Material> Materials)
{
    /// <summary>The material that fungicide units exist for.</summary>
    public const string UnitsExistFor = "chlorothalonil";

    /// <summary>Whether chlorothalonil was in the tank.</summary>
    public bool HasUnits => Materials.Any(material => material.Ingredient.Trim().Equals(UnitsExistFor, StringComparison.OrdinalIgnoreCase));
}

/// <summary>A material by how it acts.</summary>
/// <param name="Code">Its FRAC code, as <see cref="FracCode"/> writes it.</param>
/// <param name="Ingredient">The active ingredient as it was typed.</param>
public sealed record Material(string Code, string Ingredient);

/// <summary>Codes of how fungicides act, by the list of the Fungicide Resistance Action Committee (FRAC): a number, or letters and a number.</summary>
public static class FracCode
{
    private static readonly ImmutableArray<string> Letters = ["BM", "NC", "M", "P", "U"];

    /// <summary>Reads a code: <c>m5</c> as <c>M05</c>, <c>11</c> as it is.</summary>
    /// <param name="text">The code as typed.</param>
    /// <param name="code">The code as the list writes it; empty where it is none.</param>
    public static bool TryParse(string text, out string code)
    {
        ArgumentNullException.ThrowIfNull(text);
        string trimmed = text.Trim().ToUpperInvariant();
        string letters = Letters.FirstOrDefault(one => trimmed.StartsWith(one, StringComparison.Ordinal)) ?? "";
        string digits = trimmed[letters.Length..].Trim();
        code = "";
        if (digits.Length == 0 && letters == "NC") code = letters;
        if (digits.Length is 1 or 2 && digits.All(char.IsAsciiDigit) && int.Parse(digits, CultureInfo.InvariantCulture) > 0)
        {
            code = letters.Length == 0 ? digits.TrimStart('0') : letters + digits.PadLeft(2, '0');
        }

        return code.Length > 0;
    }

    /// <summary>Whether a material acts at many sites: resistance to it is unlikely, and repeating it is no fault.</summary>
    public static bool IsMultiSite(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return code.StartsWith('M');
    }
}

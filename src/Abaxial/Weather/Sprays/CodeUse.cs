using System.Collections.Immutable;

namespace Abaxial.Weather.Sprays;

/// <summary>How often materials of one FRAC code were used.</summary>
/// <param name="Code">The code.</param>
/// <param name="Uses">Applications with it.</param>
/// <param name="Running">How many applications in a row up to the last one had it; 0 where the last one had not.</param>
/// <param name="Longest">The most applications in a row that had it.</param>
public sealed record CodeUse(string Code, int Uses, int Running, int Longest)
{
    /// <summary>
    /// Uses on end that are flagged. The working groups of FRAC commonly allow two on end and no more (recommendations of the CAA group for late blight, restated);
    /// labels often allow fewer, so that the second is flagged already.
    /// </summary>
    public const int FlaggedFrom = 2;

    /// <summary>Whether a code that acts at one site was used on end.</summary>
    public bool IsFlagged => Longest >= FlaggedFrom && !FracCode.IsMultiSite(Code);

    /// <summary>The uses of every code, in order of the codes. Applications of one day are one.</summary>
    /// <param name="applications">The applications, in order of days, one a day.</param>
    public static ImmutableArray<CodeUse> Of(ImmutableArray<Application> applications)
    {
        var codes = applications.SelectMany(application => application.Materials).Select(material => material.Code).Distinct(StringComparer.Ordinal);
        return [.. codes.Select(code => Of(code, applications)).OrderBy(use => use.Code.Length).ThenBy(use => use.Code, StringComparer.Ordinal)];
    }

    private static CodeUse Of(string code, ImmutableArray<Application> applications)
    {
        int uses = 0, running = 0, longest = 0;
        foreach (var application in applications)
        {
            bool has = application.Materials.Any(material => material.Code == code);
            running = has ? running + 1 : 0;
            uses += has ? 1 : 0;
            longest = Math.Max(longest, running);
        }

        return new CodeUse(code, uses, running, longest);
    }
}

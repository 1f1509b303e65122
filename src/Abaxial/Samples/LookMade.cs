using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>A look at one of the sample's plants or lots.</summary>
/// <param name="Case">Which plant or lot of the sample, from 1.</param>
/// <param name="Observation">A look as a case file holds it, as canonical JSON. It is judged with the knowledge of the day that reads it.</param>
public sealed record LookMade(int Case, string Observation) : Payload
{
    /// <summary>Plants or lots of one sample.</summary>
    public const int MostCases = 100;

    private static readonly ImmutableArray<string> Known = ["case", "observation"];

    public override string Kind => EntryKind.Look;

    public override string ToJson() => CanonicalJson.OfObject(("case", Digits(Case)), ("observation", Observation));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members) return null;
        long? number = members.Whole("case", 1, MostCases, isRequired: true);
        string? observation = members.Raw("observation", isRequired: true);
        return number is null || observation is null ? null : new LookMade((int)number, observation);
    }
}

/// <summary>What weather or neighbours say of one cause before any look, as a case file holds it.</summary>
/// <param name="Case">Which plant or lot of the sample, from 1.</param>
/// <param name="Cause">Id of the cause.</param>
/// <param name="Factor">The factor on its prior.</param>
/// <param name="Reason">Why.</param>
public sealed record PriorFactorStated(int Case, string Cause, double Factor, string Reason) : Payload
{
    private static readonly ImmutableArray<string> Known = ["case", "cause", "factor", "reason"];

    public override string Kind => EntryKind.PriorFactor;

    public override string ToJson() => CanonicalJson.OfObject(("case", Digits(Case)), ("cause", Quote(Cause)), ("factor", Digits(Factor)), ("reason", Quote(Reason)));

    internal string ToCaseJson() => CanonicalJson.OfObject(("cause", Quote(Cause)), ("factor", Digits(Factor)), ("reason", Quote(Reason)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members) return null;
        long? number = members.Whole("case", 1, LookMade.MostCases, isRequired: true);
        string? cause = members.Id("cause", isRequired: true), reason = members.Text("reason", isRequired: true);
        double? factor = members.Number("factor", CaseRange.Positive, isRequired: true);
        return number is null || cause is null || factor is null || reason is null ? null : new PriorFactorStated((int)number, cause, factor.Value, reason);
    }
}

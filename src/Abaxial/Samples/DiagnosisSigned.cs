using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>What the engine answered when a diagnosis was signed.</summary>
/// <param name="Knowledge">Name, version and hash of the knowledge.</param>
/// <param name="Standing">Where late blight stood.</param>
/// <param name="Leader">Id of the most probable cause.</param>
public sealed record EngineSaid(string Knowledge, string Standing, string Leader);

/// <summary>A person's signed diagnosis, with what the engine said beside it.</summary>
public sealed record DiagnosisSigned : Payload
{
    private static readonly ImmutableArray<string> Known = ["case", "disagreement", "engine", "primary", "provenBy", "secondary", "unlisted"];
    private static readonly ImmutableArray<string> InEngine = ["knowledge", "leader", "standing"];

    public override string Kind => EntryKind.Diagnosis;

    /// <summary>Which plant or lot of the sample, from 1.</summary>
    public required int Case { get; init; }

    /// <summary>Cause ids; empty where the primary cause is not listed.</summary>
    public ImmutableArray<string> Primary { get; init; } = [];

    public ImmutableArray<string> Secondary { get; init; } = [];

    /// <summary>A cause that is not listed, in words.</summary>
    public string? Unlisted { get; init; }

    public string? ProvenBy { get; init; }

    public required EngineSaid Engine { get; init; }

    /// <summary>Why the person and the engine differ; needed where the engine's first cause is none of the primary ones.</summary>
    public string? Disagreement { get; init; }

    public override string ToJson() => CanonicalJson.OfObject(
        ("case", Digits(Case)),
        ("disagreement", Quote(Disagreement)),
        ("engine", CanonicalJson.OfObject(("knowledge", Quote(Engine.Knowledge)), ("leader", Quote(Engine.Leader)), ("standing", Quote(Engine.Standing)))),
        ("primary", Primary.IsEmpty ? null : CanonicalJson.OfArray(Primary.Select(CanonicalJson.Of))),
        ("provenBy", Quote(ProvenBy)),
        ("secondary", Secondary.IsEmpty ? null : CanonicalJson.OfArray(Secondary.Select(CanonicalJson.Of))),
        ("unlisted", Quote(Unlisted)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members) return null;
        var diagnosis = new DiagnosisSigned
        {
            Case = (int)(members.Whole("case", 1, LookMade.MostCases, isRequired: true) ?? 0),
            Disagreement = members.Text("disagreement"),
            Engine = ReadEngine(members),
            Primary = members.Ids("primary"),
            ProvenBy = members.Text("provenBy"),
            Secondary = members.Ids("secondary"),
            Unlisted = members.Text("unlisted"),
        };
        if (diagnosis.Primary.IsEmpty && diagnosis.Unlisted is null) problems.AddMissing(members.Below("primary"), "at least one cause", "or a cause in unlisted");
        if (diagnosis is { Disagreement: null, Engine.Leader: { Length: > 0 } leader } && !diagnosis.Primary.Contains(leader)) problems.AddMissing(members.Below("disagreement"), $"why not {leader}");
        return diagnosis;
    }

    private static EngineSaid ReadEngine(CaseMembers members)
    {
        var nothing = new EngineSaid("", "", "");
        if (members.Find("engine") is not { } value)
        {
            members.Problems.AddMissing(members.Below("engine"), "what the engine said");
            return nothing;
        }

        if (CaseMembers.Of(value, members.Below("engine"), InEngine, members.Problems) is not { } said) return nothing;
        return new EngineSaid(said.Text("knowledge", isRequired: true) ?? "", said.Id("standing", isRequired: true) ?? "", said.Id("leader", isRequired: true) ?? "");
    }
}

using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>A message to or from the sender.</summary>
/// <param name="Direction">in or out.</param>
/// <param name="Text">Seal of the text.</param>
public sealed record MessageNoted(string Direction, Seal Text) : Payload
{
    private static readonly ImmutableArray<string> Known = ["direction", "text"];

    public override string Kind => EntryKind.Message;

    public override IEnumerable<Seal> Seals => [Text];

    public override string ToJson() => CanonicalJson.OfObject(("direction", Quote(Direction)), ("text", Text.ToJson()));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members) return null;
        string? direction = members.Word("direction", ["in", "out"], isRequired: true);
        var text = members.Seal("text", isRequired: true);
        return direction is null || text is null ? null : new MessageNoted(direction, text);
    }
}

/// <summary>Somebody has to act on the sample from now on.</summary>
/// <param name="To">Id of the person.</param>
public sealed record HandedOver(string To) : Payload
{
    private static readonly ImmutableArray<string> Known = ["to"];

    public override string Kind => EntryKind.HandedOver;

    public override string ToJson() => CanonicalJson.OfObject(("to", Quote(To)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems) =>
        CaseMembers.Of(value, at, Known, problems) is { } members && members.Id("to", isRequired: true) is { } to ? new HandedOver(to) : null;
}

/// <summary>Put aside until a moment.</summary>
/// <param name="Until">The moment.</param>
public sealed record Snoozed(DateTimeOffset Until) : Payload
{
    private static readonly ImmutableArray<string> Known = ["until"];

    public override string Kind => EntryKind.Snoozed;

    public override string ToJson() => CanonicalJson.OfObject(("until", Quote(Entry.Moment(Until))));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems) =>
        CaseMembers.Of(value, at, Known, problems) is { } members && members.Moment("until", isRequired: true) is { } until ? new Snoozed(until) : null;
}

/// <summary>Nobody has to act on the sample any more.</summary>
/// <param name="Why">Why.</param>
public sealed record Closed(string Why) : Payload
{
    internal static readonly ImmutableArray<string> Known = ["why"];

    public override string Kind => EntryKind.Closed;

    public override string ToJson() => CanonicalJson.OfObject(("why", Quote(Why)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems) =>
        CaseMembers.Of(value, at, Known, problems) is { } members && members.Text("why", isRequired: true) is { } why ? new Closed(why) : null;
}

/// <summary>The sample has to be acted on again.</summary>
/// <param name="Why">Why.</param>
public sealed record Reopened(string Why) : Payload
{
    public override string Kind => EntryKind.Reopened;

    public override string ToJson() => CanonicalJson.OfObject(("why", Quote(Why)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems) =>
        CaseMembers.Of(value, at, Closed.Known, problems) is { } members && members.Text("why", isRequired: true) is { } why ? new Reopened(why) : null;
}

/// <summary>What was sealed about a person has been deleted.</summary>
/// <param name="Person">Id of the person.</param>
public sealed record PersonErased(string Person) : Payload
{
    private static readonly ImmutableArray<string> Known = ["person"];

    public override string Kind => EntryKind.PersonErased;

    public override string ToJson() => CanonicalJson.OfObject(("person", Quote(Person)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems) =>
        CaseMembers.Of(value, at, Known, problems) is { } members && members.Id("person", isRequired: true) is { } person ? new PersonErased(person) : null;
}

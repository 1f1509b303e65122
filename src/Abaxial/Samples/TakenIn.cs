using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>Where a sample comes from, no finer than the clinic chose for all to see; the exact place is sealed.</summary>
/// <param name="Name">What the area is called; null where it has no name.</param>
/// <param name="Latitude">Of the area's middle, degrees.</param>
/// <param name="Longitude">Of the area's middle, degrees.</param>
/// <param name="UncertaintyMeters">How far the sample's place may be from the middle.</param>
public sealed record Area(string? Name, double Latitude, double Longitude, double UncertaintyMeters)
{
    private static readonly ImmutableArray<string> Known = ["name", "latitude", "longitude", "uncertaintyMeters"];

    internal string ToJson() => CanonicalJson.OfObject(
        ("name", Name is null ? null : CanonicalJson.Of(Name)),
        ("latitude", CanonicalJson.Of(Latitude)),
        ("longitude", CanonicalJson.Of(Longitude)),
        ("uncertaintyMeters", CanonicalJson.Of(UncertaintyMeters)));

    internal static Area? Read(CaseMembers parent, string name)
    {
        if (parent.Find(name) is not { } value || CaseMembers.Of(value, parent.Below(name), Known, parent.Problems) is not { } members) return null;
        double? latitude = members.Number("latitude", new CaseRange(-90, 90), isRequired: true);
        double? longitude = members.Number("longitude", new CaseRange(-180, 180), isRequired: true);
        double? uncertainty = members.Number("uncertaintyMeters", CaseRange.Positive, isRequired: true);
        return new Area(members.Text("name"), latitude ?? 0, longitude ?? 0, uncertainty ?? 0);
    }
}

/// <summary>A sample was taken in. What it says of plants stands here as a case file says it; texts about people are seals.</summary>
public sealed record TakenIn : Payload
{
    private static readonly ImmutableArray<string> Known = ["area", "cultivar", "host", "noticed", "place", "promised", "purpose", "says", "stage", "submitter", "system"];

    public override string Kind => EntryKind.TakenIn;

    public required string Host { get; init; }

    public string? System { get; init; }

    public string? Stage { get; init; }

    public string? Purpose { get; init; }

    /// <summary>The day the trouble was noticed.</summary>
    public DateOnly? Noticed { get; init; }

    public string? Cultivar { get; init; }

    public Area? Area { get; init; }

    /// <summary>Seal of the exact place.</summary>
    public Seal? Place { get; init; }

    /// <summary>Id of the person who sent it.</summary>
    public string? Submitter { get; init; }

    /// <summary>Seal of what the sender says.</summary>
    public Seal? Says { get; init; }

    /// <summary>The moment by which an answer was promised.</summary>
    public DateTimeOffset? Promised { get; init; }

    public override IEnumerable<Seal> Seals => new[] { Place, Says }.OfType<Seal>();

    public override string ToJson() => CanonicalJson.OfObject(
        ("area", Area?.ToJson()),
        ("cultivar", Quote(Cultivar)),
        ("host", Quote(Host)),
        ("noticed", Quote(Noticed?.ToString("O", global::System.Globalization.CultureInfo.InvariantCulture))),
        ("place", Place?.ToJson()),
        ("promised", Promised is { } promised ? Quote(Entry.Moment(promised)) : null),
        ("purpose", Quote(Purpose)),
        ("says", Says?.ToJson()),
        ("stage", Quote(Stage)),
        ("submitter", Quote(Submitter)),
        ("system", Quote(System)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members) return null;
        return new TakenIn
        {
            Area = Area.Read(members, "area"),
            Cultivar = members.Text("cultivar"),
            Host = members.Id("host", isRequired: true) ?? "",
            Noticed = ReadNoticed(members),
            Place = members.Seal("place"),
            Promised = members.Moment("promised"),
            Purpose = members.Id("purpose"),
            Says = members.Seal("says"),
            Stage = members.Id("stage"),
            Submitter = members.Id("submitter"),
            System = members.Id("system"),
        };
    }

    private static DateOnly? ReadNoticed(CaseMembers members)
    {
        if (members.Find("noticed") is not { } value) return null;
        if (value.ValueKind == JsonValueKind.String && IsoTime.TryDate(value.GetString(), out var date)) return date;
        members.Problems.AddWrongKind(members.Below("noticed"), value, "a date as 2026-07-14");
        return null;
    }
}

/// <summary>A sample got its number.</summary>
/// <param name="Number">The number that it is called by.</param>
public sealed record Numbered(SampleNumber Number) : Payload
{
    private static readonly ImmutableArray<string> Known = ["number"];

    public override string Kind => EntryKind.Numbered;

    public override string ToJson() => CanonicalJson.OfObject(("number", Quote(Number.ToString())));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members || members.Text("number", isRequired: true) is not { } text) return null;
        if (SampleNumber.TryParse(text, out var number) && number.ToString() == text) return new Numbered(number);
        problems.Add(members.Below("number"), text, "a sample number as 26-0142-" + SampleNumber.From(26, 142).Check);
        return null;
    }
}

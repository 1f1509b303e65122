using System.Text.Json;
using System.Text.Json.Serialization;

namespace Abaxial.Knowledge;

/// <summary>The knowledge as it is stored once compiled: the files of a knowledge folder in one JSON document, words turned into numbers.</summary>
public sealed record KnowledgeDocument
{
    public required string Name { get; init; }
    public required string Version { get; init; }
    public required string[] Hosts { get; init; }
    public required string[] Systems { get; init; }
    public required string[] Stages { get; init; }
    public required string[] Purposes { get; init; }
    public required string Subject { get; init; }
    public required Dictionary<string, double> Words { get; init; }
    public required Dictionary<string, double> Strengths { get; init; }
    public required Dictionary<string, string> PurposeBySystem { get; init; }
    public required string PurposeOtherwise { get; init; }
    public required OnlyOrganDocument OnlyOrgan { get; init; }

    /// <summary>By stage, the organs that a plant has not got yet.</summary>
    public Dictionary<string, string[]> NotYet { get => field ?? []; init; }
    public required double WeightSpread { get; init; }
    public required double NotListed { get; init; }
    public required PairsDocument Pairs { get; init; }
    public required Dictionary<string, LossDocument> Losses { get; init; }
    public required CostsDocument Costs { get; init; }
    public required StandingDocument Standing { get; init; }
    public required PriorFactorsDocument PriorFactors { get; init; }
    public required ProofDocument Proof { get; init; }
    public required ShowingDocument Showing { get; init; }
    public required RegulatedDocument Regulated { get; init; }
    public required FitDocument Fit { get; init; }
    public required Dictionary<string, double> Groups { get; init; }
    public required CharacterDocument[] Characters { get; init; }
    public required ReadingDocument Reading { get; init; }
    public required SourceDocument[] Sources { get; init; }
    public required CauseDocument[] Causes { get; init; }
    public required Dictionary<string, TextsDocument> Texts { get; init; }
}

public sealed record OnlyOrganDocument(Dictionary<string, Dictionary<string, string>> Stages, Dictionary<string, Dictionary<string, string>> Systems, double Chance, double FromChance);

public sealed record PairsDocument(double Otherwise, PairByKindDocument[] ByKind, PairByCauseDocument[] ByCause);

public sealed record PairByKindDocument(string[] Kinds, double Factor);

public sealed record PairByCauseDocument(string[] Causes, double Factor);

public sealed record LossDocument(ActLossDocument Act, AdviseLossDocument Advise, ActLossDocument SendOn);

public sealed record ActLossDocument(double LateBlight, double Other);

public sealed record AdviseLossDocument(double LateBlight, double Right, double Other);

public sealed record CostsDocument(double Minute, double WaitHour, Dictionary<string, double> Ways, Dictionary<string, double> Characters);

public sealed record StandingDocument(ThresholdDocument RuledOut, ThresholdDocument Unlikely, ThresholdDocument Likely);

public sealed record ThresholdDocument(double Probability, double? High = null, double? Low = null);

public sealed record PriorFactorsDocument(RangeDocument Each, RangeDocument Product, NeverUnderOneDocument NeverUnderOne, string[] Context);

public sealed record RangeDocument(double From, double To);

public sealed record NeverUnderOneDocument(string[] Systems, string[] Stages, string[] Watering);

public sealed record ProofDocument(
    string[] Readers,
    Dictionary<string, string> PositiveTests,
    SporangiaDocument Sporangia,
    ContradictionsDocument Contradictions);

public sealed record SporangiaDocument(string Spores, int Count, [property: JsonPropertyName("mean-length-um")] double[] MeanLengthUm, string Sporangiophore, string Organ);

public sealed record ContradictionsDocument(
    [property: JsonPropertyName("pcr-p-infestans")] string[] Pcr,
    string[] Culture,
    string[] SporangiumPapilla,
    [property: JsonPropertyName("stalk-over-um")] double StalkOverUm);

public sealed record ShowingDocument(
    Dictionary<string, ShowingOrganDocument> Organs,
    string State,
    WetMorningDocument WetMorning,
    Dictionary<string, string> Test,
    Dictionary<string, Dictionary<string, string[]>> ProvenOtherwise,
    Dictionary<string, string[]> Stale,
    string[] Never);

public sealed record ShowingOrganDocument(string Growth, double ChamberHours, double StaleHours);

public sealed record WetMorningDocument(string Organ, string How, string[] Readers);

public sealed record RegulatedDocument(double Chance, string[] HeldBack);

public sealed record FitDocument(double UnexpectedBelow, double TailBelow, double MisfitBelow);

public sealed record CharacterDocument
{
    public required string Id { get; init; }
    public bool Many { get; init; }
    public bool Sign { get; init; }
    public string? Organ { get; init; }
    public string? Empty { get; init; }
    public string[] States { get => field ?? []; init; }
    public string[] Voids { get => field ?? []; init; }
    public string[] Hosts { get => field ?? []; init; }
    public Dictionary<string, string[]> StateHosts { get => field ?? []; init; }
    public required string[] How { get; init; }
    public string[] Surface { get => field ?? []; init; }
    public string[] From { get => field ?? []; init; }
    public string? OfCharacter { get; init; }
    public string? OfOnly { get; init; }
    public string? Measure { get; init; }
    public required double Minutes { get; init; }
    public double WaitHours { get; init; }
    public required string Group { get; init; }
    public Dictionary<string, string[]> When { get => field ?? []; init; }
    public required Dictionary<string, double> Background { get; init; }
}

public sealed record ReadingDocument
{
    public required Dictionary<string, NoiseDocument> Ways { get; init; }
    public required Dictionary<string, double> Observers { get; init; }
    public required NoiseDocument Most { get; init; }
    public required CertainSignsDocument CertainSigns { get; init; }
    public required Dictionary<string, Dictionary<string, NoiseDocument>> Characters { get; init; }
    public required string[] Surfaces { get; init; }
    public required Dictionary<string, Dictionary<string, JsonElement>> Shows { get; init; }
    public required double ChamberHours { get; init; }
    public required Dictionary<string, double> Slower { get; init; }
    public required HidesDocument Hides { get; init; }
    public required Dictionary<string, OvergrowthDocument> Overgrowth { get; init; }
    public required Dictionary<string, NoiseDocument> StreamingFrom { get; init; }
}

public sealed record NoiseDocument(double? Error = null, double? Miss = null, double? False = null);

public sealed record CertainSignsDocument(string[] Observers, string[] NotWays);

public sealed record HidesDocument(string[] States, Dictionary<string, Dictionary<string, double>> InChamber, Dictionary<string, Dictionary<string, double>> Otherwise);

public sealed record OvergrowthDocument(Dictionary<string, double> Chance, Dictionary<string, double> Leaves);

public sealed record SourceDocument
{
    public required string Id { get; init; }
    public string? Ref { get; init; }
    public required string Authors { get; init; }
    public required string Year { get; init; }
    public required string Title { get; init; }
    public required string Publisher { get; init; }
    public required string Where { get; init; }
    public required string Seen { get; init; }
}

public sealed record CauseDocument
{
    public required string Id { get; init; }
    public required Dictionary<string, string> Name { get; init; }
    public string? Scientific { get; init; }
    public string[] OlderNames { get => field ?? []; init; }
    public string? Eppo { get; init; }
    public required string Kind { get; init; }
    public bool Regulated { get; init; }
    public bool TissueOpener { get; init; }
    public required string[] Hosts { get; init; }
    public required SeenDocument Seen { get; init; }
    public required Dictionary<string, string> Advice { get; init; }
    public required Dictionary<string, RowDocument> Rows { get; init; }
}

public sealed record SeenDocument
{
    public required string[] Source { get; init; }
    public required Dictionary<string, double> Weight { get; init; }
    public Dictionary<string, double> Systems { get => field ?? []; init; }
    public Dictionary<string, double> Stages { get => field ?? []; init; }
    public double[] Months { get => field ?? []; init; }
}

public sealed record RowDocument
{
    public Dictionary<string, double>? Is { get; init; }
    public double? Mean { get; init; }
    public double? Between { get; init; }
    public double? Within { get; init; }
    public double? Strength { get; init; }
    public required string[] Source { get; init; }
    public required Dictionary<string, string> Say { get; init; }
}

public sealed record TextsDocument
{
    public required Dictionary<string, string> Characters { get; init; }
    public required Dictionary<string, Dictionary<string, string>> States { get; init; }
    public required Dictionary<string, string> Words { get; init; }
    public required Dictionary<string, string> Sentences { get; init; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.KebabCaseLower,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(KnowledgeDocument))]
internal sealed partial class KnowledgeJson : JsonSerializerContext;

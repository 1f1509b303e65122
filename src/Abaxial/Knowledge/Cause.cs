using System.Collections.Immutable;

namespace Abaxial.Knowledge;

/// <summary>What kind of thing a row's source is.</summary>
public enum SourceKind
{
    Publication,
    CommonPractice,
    Judgement,
}

/// <summary>Anything that can make a plant look so.</summary>
public sealed class Cause
{
    internal Cause(CauseDocument document, int index)
    {
        Id = document.Id;
        Index = index;
        Names = document.Name.ToImmutableDictionary(StringComparer.Ordinal);
        Scientific = document.Scientific;
        OlderNames = [.. document.OlderNames];
        Eppo = document.Eppo;
        Kind = document.Kind;
        Regulated = document.Regulated;
        TissueOpener = document.TissueOpener;
        Hosts = [.. document.Hosts];
        Advice = document.Advice.ToImmutableDictionary(StringComparer.Ordinal);
        Seen = document.Seen;
    }

    public string Id { get; }

    /// <summary>The place in <see cref="KnowledgeBase.Causes"/>.</summary>
    public int Index { get; }

    /// <summary>The common name by language.</summary>
    public ImmutableDictionary<string, string> Names { get; }

    public string? Scientific { get; }

    public ImmutableArray<string> OlderNames { get; }

    public string? Eppo { get; }

    /// <summary>oomycete, fungus, bacterium, virus, insect, mite, nematode, weather, chemical, nutrition, physiology or plant.</summary>
    public string Kind { get; }

    /// <summary>The competent authority wants to know of it.</summary>
    public bool Regulated { get; }

    /// <summary>An injury or rot that others follow.</summary>
    public bool TissueOpener { get; }

    public ImmutableArray<string> Hosts { get; }

    /// <summary>What the reply to a sender starts from, by language.</summary>
    public ImmutableDictionary<string, string> Advice { get; }

    /// <summary>How often a clinic sees it.</summary>
    public SeenDocument Seen { get; }

    public ImmutableArray<Row> Rows { get; internal set; } = [];

    public override string ToString() => Id;
}

/// <summary>What is known of one character under one cause.</summary>
/// <param name="Character">The character.</param>
/// <param name="Facet">The kind of spore measured or the place a streaming came from; null where the row holds for all.</param>
/// <param name="Host">The host that the row holds for; null where it holds for every host of the cause.</param>
/// <param name="Chances">For each state, how often it is truly there in good conditions, 0 to 1 exclusive; empty for a measured character.</param>
/// <param name="Range">The published range of a measured character.</param>
/// <param name="Strength">How many cases the row is worth.</param>
/// <param name="SourceKind">The best kind among the sources.</param>
/// <param name="Sources">The publications named, in the order given.</param>
/// <param name="Say">A plain sentence for people, by language.</param>
public sealed record Row(
    Character Character,
    string? Facet,
    string? Host,
    ImmutableArray<double> Chances,
    MeasuredRange? Range,
    double Strength,
    SourceKind SourceKind,
    ImmutableArray<Source> Sources,
    ImmutableDictionary<string, string> Say);

/// <summary>A measured character of one organism, in the character's unit: the mean, the standard deviation between collections and within one.</summary>
public sealed record MeasuredRange(double Mean, double Between, double Within);

/// <summary>A publication.</summary>
public sealed record Source(string Id, string Authors, string Year, string Title, string Publisher, string Where, string Seen);

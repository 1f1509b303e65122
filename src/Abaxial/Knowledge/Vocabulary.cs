using System.Collections.Immutable;

namespace Abaxial.Knowledge;

/// <summary>The way a look was made, cheapest first.</summary>
public enum Way
{
    NakedEye,
    HandLens,
    Touch,
    Smell,
    Cut,
    MoistChamber,
    Microscope,
    BenchTest,
    Asked,
    Photo,
}

/// <summary>Who made a look; each reads more surely than the one before.</summary>
public enum Observer
{
    Grower,
    Scout,
    Diagnostician,
    Specialist,
}

/// <summary>What the surface was like when growth was looked for.</summary>
public enum Surface
{
    DryDay,
    WetMorning,
    BaggedInTransit,
    MoistChamber,
}

/// <summary>The words of the fixed interface for the ways, observers and surfaces, each in the order of its enumeration.</summary>
public static class Vocabulary
{
    public static ImmutableArray<string> Ways { get; } =
        ["naked-eye", "hand-lens", "touch", "smell", "cut", "moist-chamber", "microscope", "bench-test", "asked", "photo"];

    public static ImmutableArray<string> Observers { get; } = ["grower", "scout", "diagnostician", "specialist"];

    public static ImmutableArray<string> Surfaces { get; } = ["dry-day", "wet-morning", "bagged-in-transit", "moist-chamber"];

    public static string Word(this Way way) => Ways[(int)way];

    public static string Word(this Observer observer) => Observers[(int)observer];

    public static string Word(this Surface surface) => Surfaces[(int)surface];

    internal static bool TryWay(string word, out Way way)
    {
        int index = Ways.IndexOf(word, 0, StringComparer.Ordinal);
        way = (Way)Math.Max(index, 0);
        return index >= 0;
    }

    internal static bool TryObserver(string word, out Observer observer)
    {
        int index = Observers.IndexOf(word, 0, StringComparer.Ordinal);
        observer = (Observer)Math.Max(index, 0);
        return index >= 0;
    }

    internal static bool TrySurface(string word, out Surface surface)
    {
        int index = Surfaces.IndexOf(word, 0, StringComparer.Ordinal);
        surface = (Surface)Math.Max(index, 0);
        return index >= 0;
    }
}

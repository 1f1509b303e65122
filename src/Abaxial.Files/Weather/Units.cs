using System.Collections.Immutable;
using Abaxial.Weather;

namespace Abaxial.Files.Weather;

/// <summary>A unit that a file may use: the SI value is the file's value times a factor, plus a term.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="Term">The term.</param>
internal readonly record struct Unit(double Factor, double Term)
{
    private static readonly Unit Same = new(1, 0);

    private static readonly Dictionary<string, Unit> Temperatures = new(StringComparer.OrdinalIgnoreCase)
    {
        ["C"] = Same,
        ["°C"] = Same,
        ["F"] = new(5.0 / 9, -160.0 / 9),
        ["°F"] = new(5.0 / 9, -160.0 / 9),
        ["K"] = new(1, -273.15),
    };

    private static readonly Dictionary<string, Unit> Depths = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = Same,
        ["cm"] = new(10, 0),
        ["in"] = new(25.4, 0),
    };

    private static readonly Dictionary<string, Unit> Shares = new(StringComparer.OrdinalIgnoreCase)
    {
        ["%"] = Same,
        ["fraction"] = new(100, 0),
    };

    private static readonly Dictionary<string, Unit> Minutes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["min"] = Same,
        ["h"] = new(60, 0),
        ["fraction"] = new(60, 0),
        ["%"] = new(0.6, 0),
    };

    private static readonly Dictionary<string, Unit> Fluxes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["W/m2"] = Same,
        ["kJ/m2"] = new(1 / 3.6, 0),
        ["MJ/m2"] = new(1000 / 3.6, 0),
    };

    private static readonly Dictionary<string, Unit> Speeds = new(StringComparer.OrdinalIgnoreCase)
    {
        ["m/s"] = Same,
        ["km/h"] = new(1 / 3.6, 0),
        ["kn"] = new(1852.0 / 3600, 0),
        ["mph"] = new(0.44704, 0),
    };

    /// <summary>The units of a column.</summary>
    public static ImmutableArray<string> Of(Column column) => [.. Table(column).Keys];

    public static bool TryFind(Column column, string name, out Unit unit) => Table(column).TryGetValue(name, out unit);

    public double ToSi(double value) => this == Same ? value : Math.Round((value * Factor) + Term, 9, MidpointRounding.AwayFromZero);

    /// <summary>The unit of the contract's own columns.</summary>
    public static Unit Plain => Same;

    private static Dictionary<string, Unit> Table(Column column) => column switch
    {
        Column.Temperature or Column.DewPoint => Temperatures,
        Column.Humidity => Shares,
        Column.Wetness => Minutes,
        Column.Radiation => Fluxes,
        Column.Wind => Speeds,
        _ => Depths,
    };
}

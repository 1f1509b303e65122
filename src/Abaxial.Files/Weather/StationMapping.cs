using System.Collections.Immutable;
using Abaxial.Weather;
using NodaTime.Text;

namespace Abaxial.Files.Weather;

/// <summary>How a table of somebody else's is to be read: which column holds what, in which unit, and how missing values are marked.</summary>
public sealed record StationMapping
{
    private static readonly ImmutableArray<string> Known =
        ["station", "latitude", "longitude", "zone", "separator", "decimal", "missing", "time", "time-format", "date", "only", "columns"];

    /// <summary>The station's name; null for the file's.</summary>
    public string? Station { get; init; }

    public double? Latitude { get; init; }

    public double? Longitude { get; init; }

    /// <summary>The IANA zone of times without offset; null where they have one, or the command names it.</summary>
    public string? Zone { get; init; }

    public char Separator { get; init; } = ',';

    public char DecimalSign { get; init; } = '.';

    /// <summary>Marks of missing values, in addition to an empty cell, NA and NaN.</summary>
    public ImmutableArray<string> Missing { get; init; } = [];

    /// <summary>The column of the time, or its four or five: year, month, day, hour, minute. Empty in a daily table.</summary>
    public ImmutableArray<string> Time { get; init; } = [];

    /// <summary>The form of the time; null for ISO 8601.</summary>
    public string? TimeFormat { get; init; }

    /// <summary>The column of the date in a daily table; null in an hourly one.</summary>
    public string? Date { get; init; }

    /// <summary>Columns and the value that a row must have there.</summary>
    public ImmutableArray<KeyValuePair<string, string>> Only { get; init; } = [];

    /// <summary>What is read, from which column, in which unit.</summary>
    public ImmutableArray<MappedColumn> Columns { get; init; } = [];

    /// <summary>Reads a mapping.</summary>
    /// <param name="text">YAML; its form is described in docs/method/weather.md.</param>
    /// <param name="fileName">The file's name, for the refusal.</param>
    /// <param name="refusal">Why it cannot be read; null where it can.</param>
    /// <returns>The mapping; null where it cannot be read.</returns>
    public static StationMapping? Read(TextReader text, string fileName, out RecordRefusal? refusal)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            refusal = null;
            return Read(YamlFields.Read(text));
        }
        catch (RefusedException refused)
        {
            refusal = refused.In(fileName);
            return null;
        }
    }

    private static StationMapping Read(YamlFields yaml)
    {
        yaml.RequireKnown(Known);
        var mapping = new StationMapping
        {
            Station = yaml.Text("station"),
            Latitude = yaml.Number("latitude"),
            Longitude = yaml.Number("longitude"),
            Zone = yaml.Text("zone"),
            Separator = Sign(yaml, "separator", ',', ',', ';', '\t', '|'),
            DecimalSign = Sign(yaml, "decimal", '.', '.', ','),
            Missing = yaml.Words("missing"),
            Time = yaml.Words("time"),
            TimeFormat = yaml.Text("time-format"),
            Date = yaml.Text("date"),
            Only = yaml.Fields("only") is { } only ? [.. only.Names.Select(name => new KeyValuePair<string, string>(name, only.Text(name) ?? ""))] : [],
            Columns = ColumnsOf(yaml),
        };
        if (mapping.Zone is { } zone && !StationZones.Exists(zone)) throw yaml.Wrong("zone", "an IANA zone such as Europe/Dublin");
        if (mapping.DecimalSign == mapping.Separator) throw yaml.Wrong("decimal", "another sign than the separator");
        if (mapping.Time.IsEmpty == mapping.Date is null) throw yaml.Wrong("time", "a column, or year, month, day and hour as a list; date instead in a daily table");
        if (mapping.Time.Length is not (0 or 1 or 4 or 5)) throw yaml.Wrong("time", "a column", "[year, month, day, hour]", "[year, month, day, hour, minute]");
        if (mapping.TimeFormat is { } format && !IsPattern(format)) throw yaml.Wrong("time-format", "letters such as dd/MM/uuuu HH:mm");
        return mapping;
    }

    private static ImmutableArray<MappedColumn> ColumnsOf(YamlFields yaml)
    {
        var fields = yaml.Fields("columns");
        bool isDaily = yaml.Has("date");
        ImmutableArray<string> accepted = isDaily ? ["tmin", "tmax", "rain"] : [.. Abaxial.Weather.Columns.All.Select(column => column.Word())];
        if (fields is null || !fields.Names.Any()) throw yaml.Wrong("columns", accepted);
        fields.RequireKnown(accepted);
        if (isDaily && !(fields.Has("tmin") && fields.Has("tmax"))) throw yaml.Wrong("columns", "tmin and tmax");
        return [.. fields.Names.Select(name => ColumnOf(fields, name))];
    }

    private static MappedColumn ColumnOf(YamlFields fields, string name)
    {
        var column = Abaxial.Weather.Columns.Find(name) ?? Column.Temperature;
        if (fields.IsWord(name)) return new MappedColumn(name, fields.Text(name)!, column, Unit.Plain);
        var inner = fields.Fields(name) ?? throw fields.Wrong(name, "a column, or from: and unit:");
        inner.RequireKnown("from", "unit");
        string from = inner.Text("from") ?? throw inner.Wrong("from", "the name of a column");
        string? unitName = inner.Text("unit");
        var unit = Unit.Plain;
        if (unitName is not null && !Unit.TryFind(column, unitName, out unit)) throw inner.Wrong("unit", Unit.Of(column));
        return new MappedColumn(name, from, column, unit);
    }

    private static char Sign(YamlFields yaml, string name, char otherwise, params ReadOnlySpan<char> accepted)
    {
        if (yaml.Text(name) is not { } text) return otherwise;
        if (text is "tab" or "\\t") text = "\t";
        return text.Length == 1 && accepted.Contains(text[0]) ? text[0] : throw yaml.Wrong(name, [.. accepted.ToArray().Select(sign => sign == '\t' ? "tab" : sign.ToString())]);
    }

    private static bool IsPattern(string format)
    {
        try
        {
            LocalDateTimePattern.CreateWithInvariantCulture(format);
            return true;
        }
        catch (InvalidPatternException)
        {
            return false;
        }
    }
}

/// <summary>A column of somebody else's table.</summary>
public sealed record MappedColumn
{
    internal MappedColumn(string name, string from, Column column, Unit unit)
    {
        Name = name;
        From = from;
        Column = column;
        Unit = unit;
    }

    /// <summary>What it is here: <c>temperature</c>, <c>tmin</c>.</summary>
    public string Name { get; }

    /// <summary>What it is called there.</summary>
    public string From { get; }

    /// <summary>The quantity.</summary>
    public Column Column { get; }

    internal Unit Unit { get; }
}

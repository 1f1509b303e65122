using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Weather.Arrival;

namespace Abaxial.Files.Weather;

/// <summary>Reads what was measured of the oldest lesions of one or several fields.</summary>
public static class LesionFiles
{
    private const int NoonHour = 12;
    private const double MostDays = 60;
    private static readonly ImmutableArray<string> Known = ["field", "seen", "lesion-mm", "lesion-days", "record"];
    private static readonly string[] Times = ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm"];

    /// <summary>Reads a list.</summary>
    /// <param name="text">YAML: <c>fields</c>, a list of field, seen, lesion-mm or lesion-days (a number or the least and the most), and record, a file, where it is not the one named.</param>
    /// <param name="fileName">The file's name, for the refusal.</param>
    /// <param name="refusal">Why it cannot be read; null where it can.</param>
    public static ImmutableArray<FieldLesions> Read(TextReader text, string fileName, out RecordRefusal? refusal)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            refusal = null;
            var yaml = YamlFields.Read(text);
            yaml.RequireKnown("fields");
            var fields = yaml.List("fields").Select(FieldOf).ToImmutableArray();
            if (fields.IsEmpty) throw yaml.Wrong("fields", "a list of fields with their lesions");
            return fields;
        }
        catch (RefusedException refused)
        {
            refusal = refused.In(fileName);
            return [];
        }
    }

    private static FieldLesions FieldOf(YamlFields yaml)
    {
        yaml.RequireKnown(Known);
        string name = yaml.Text("field") ?? throw yaml.Wrong("field", "what the clinic calls the field");
        string seen = yaml.Text("seen") ?? throw yaml.Wrong("seen", "when they were looked at");
        if (yaml.Has("lesion-mm") == yaml.Has("lesion-days")) throw yaml.Wrong("lesion-mm", "either lesion-mm or lesion-days");
        var measure = yaml.Has("lesion-mm")
            ? MeasureOf(yaml, "lesion-mm", LesionMeasureOf.Millimetres, least: 0.1, most: 1000)
            : MeasureOf(yaml, "lesion-days", LesionMeasureOf.DaysVisible, least: 0, most: MostDays);
        return new FieldLesions(name, SeenOf(seen) ?? throw yaml.Wrong("seen", "2026-07-14, which is read as noon", "2026-07-14T09:30, the station's standard time"), measure, yaml.Text("record"));
    }

    private static DateTime? SeenOf(string text)
    {
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return day.ToDateTime(new TimeOnly(NoonHour, 0));
        return DateTime.TryParseExact(text, Times, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;
    }

    private static LesionMeasure MeasureOf(YamlFields yaml, string name, LesionMeasureOf of, double least, double most)
    {
        string accepted = string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most}, or the least and the most of it: [8, 14]");
        var numbers = yaml.Words(name).Select(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : double.NaN).ToList();
        bool isGood = numbers.Count is 1 or 2 && numbers.All(number => number >= least && number <= most) && numbers[0] <= numbers[^1];
        return isGood ? new LesionMeasure(of, numbers[0], numbers[^1]) : throw yaml.Wrong(name, accepted);
    }
}

/// <summary>The oldest lesions of a field.</summary>
/// <param name="Field">What the clinic calls the field.</param>
/// <param name="Seen">When they were looked at, in the standard time of the record.</param>
/// <param name="Lesion">What was measured.</param>
/// <param name="Record">The file of the station's record; null for the one that was named with the command.</param>
public sealed record FieldLesions(string Field, DateTime Seen, LesionMeasure Lesion, string? Record);

using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Which hours have every value that a model reads, which of them rest on estimates, and what is missing where.</summary>
internal sealed class HourLedger
{
    private readonly StationRecord record;
    private readonly int[] missingBefore;
    private readonly int[] estimatedBefore;

    public HourLedger(ModelInput input, ImmutableArray<Column> needs)
    {
        record = input.Record;
        int count = record.Days.Length * StationRecord.HoursOfDay;
        var missing = new bool[count];
        var estimated = new bool[count];
        if (record.Daily is { } daily) MarkDaily(daily, needs, missing);
        else foreach (var column in needs) Mark(input, column, missing, estimated);

        missingBefore = new int[count + 1];
        estimatedBefore = new int[count + 1];
        for (int hour = 0; hour < count; hour++)
        {
            missingBefore[hour + 1] = missingBefore[hour] + (missing[hour] ? 1 : 0);
            estimatedBefore[hour + 1] = estimatedBefore[hour] + (estimated[hour] && !missing[hour] ? 1 : 0);
        }
    }

    /// <summary>Whether an hour lacks a value.</summary>
    public bool IsMissing(int hour) => missingBefore[hour + 1] > missingBefore[hour];

    /// <summary>What the value of a day rests on.</summary>
    public DayInputs Of(DayWindow window)
    {
        int missing = MissingIn(window.Start, window.End);
        return new DayInputs(StationRecord.HoursOfDay - missing, In(estimatedBefore, window.Start, window.End), missing);
    }

    /// <summary>Why a day cannot be told: hours that are missing in it, or in the hours that are looked back over; null where all are there.</summary>
    public DayNote? Gap(DayWindow window, int hoursBack = 0)
    {
        int inDay = MissingIn(window.Start, window.End);
        if (inDay > 0) return DayNote.Of("missing-hours", inDay);
        int before = MissingIn(window.Start - hoursBack, window.Start);
        if (before == 0) return null;
        return window.Start - hoursBack < record.First ? DayNote.Of("record-starts", hoursBack) : DayNote.Of("missing-before", before, hoursBack);
    }

    private int MissingIn(int start, int end) => In(missingBefore, start, end) + Math.Max(0, -start) + Math.Max(0, end - missingBefore.Length + 1);

    private static int In(int[] before, int start, int end) => before[Math.Clamp(end, 0, before.Length - 1)] - before[Math.Clamp(start, 0, before.Length - 1)];

    private static void Mark(ModelInput input, Column column, bool[] missing, bool[] estimated)
    {
        if (column == Column.Wetness)
        {
            var states = input.Wetness;
            for (int hour = 0; hour < missing.Length; hour++)
            {
                missing[hour] |= states[hour] == HourState.Unknown;
                estimated[hour] |= input.WetnessEstimated[hour];
            }

            return;
        }

        var values = input.Record.Hours.Of(column);
        var guesses = input.Record.Hours.EstimatedOf(column);
        for (int hour = 0; hour < missing.Length; hour++)
        {
            missing[hour] |= double.IsNaN(values[hour]);
            if (!guesses.IsEmpty) estimated[hour] |= guesses[hour];
        }
    }

    private static void MarkDaily(DailyTable daily, ImmutableArray<Column> needs, bool[] missing)
    {
        bool needsTemperature = needs.Contains(Column.Temperature), needsRain = needs.Contains(Column.Rain);
        for (int hour = 0; hour < missing.Length; hour++)
        {
            int day = hour / StationRecord.HoursOfDay;
            missing[hour] = (needsTemperature && double.IsNaN(daily.LowestCelsius[day] + daily.HighestCelsius[day]))
                || (needsRain && (daily.RainMillimetres.IsEmpty || double.IsNaN(daily.RainMillimetres[day])));
        }
    }
}

using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Weather;

namespace Abaxial.Files.Weather;

/// <summary>
/// Puts rows into hours. Rows may come out of order within 48 hours. Where most hours have several rows they are sub-hourly, and an hour is their mean or sum;
/// otherwise the last row of an hour in the file counts, and the hour is flagged.
/// </summary>
internal sealed class HourCollector(ImmutableArray<Column> columns)
{
    private const int DisorderHours = 48;
    private const int RingSize = 64;                 // above 48, so that open hours never meet
    private const int HoursToTellCadence = 500;
    private const int MostYears = 120;
    private const int MostHours = MostYears * 8766;

    private static readonly long Earliest = RowTime.SecondsOf(new DateOnly(1700, 1, 1));
    private static readonly long Latest = RowTime.SecondsOf(new DateOnly(2400, 1, 1));

    private readonly HourCell?[] ring = new HourCell?[RingSize];
    private readonly double[][] hours = [.. columns.Select(_ => Array.Empty<double>())];
    private readonly Dictionary<long, double[]> lastOfSeveral = [];
    private readonly List<long> flagged = [];
    private long baseKey, firstKey = long.MaxValue, newestKey = long.MinValue, newestSeconds, oldestOpen;
    private int closed, closedWithSeveral, capacity;
    private bool? isSubHourly;

    /// <summary>Rows taken.</summary>
    public long Rows { get; private set; }

    /// <summary>Takes a row.</summary>
    /// <param name="seconds">When it ended: seconds of a clock whose hours are the station's.</param>
    /// <param name="row">A value for each column, NaN where it is missing.</param>
    /// <param name="line">The row's line.</param>
    /// <param name="timeColumn">The column of the time.</param>
    /// <exception cref="RefusedException">The row is too far out of order, or the record too long.</exception>
    public void Add(long seconds, ReadOnlySpan<double> row, long line, string timeColumn)
    {
        if (seconds < Earliest || seconds > Latest) throw new RefusedException(line, timeColumn, TimeOf(Math.Max(0, seconds)), "times from 1700 to 2400");
        long key = Math.DivRem(seconds, 3600L, out long second);
        if (Rows == 0)
        {
            baseKey = key - DisorderHours - 1;
            newestSeconds = seconds;
            newestKey = oldestOpen = key;
        }

        if (newestSeconds - seconds > DisorderHours * 3600L) throw new RefusedException(line, timeColumn, $"{TimeOf(seconds)}, more than 48 hours before {TimeOf(newestSeconds)} above it", "rows in order within 48 hours");
        if (key - baseKey >= MostHours) throw new RefusedException(line, timeColumn, $"{TimeOf(seconds)}, more than {MostYears} years after the record's start", "a record that is split");
        newestSeconds = Math.Max(newestSeconds, seconds);
        if (key > newestKey) CloseUpTo(key);
        oldestOpen = Math.Min(oldestOpen, key);
        firstKey = Math.Min(firstKey, key);
        CellOf(key).Add((int)second, row);
        Rows++;
    }

    /// <summary>The hours in whole days.</summary>
    /// <param name="hoursAhead">Hours that the station's standard time is ahead of the clock that the rows were given by.</param>
    /// <param name="draft">What else is known of the station.</param>
    public StationRecord Finish(int hoursAhead, StationRecord draft)
    {
        for (long key = oldestOpen; key <= newestKey; key++) Close(key);
        Decide();
        long first = firstKey + hoursAhead, last = newestKey + hoursAhead;
        int firstDay = (int)Math.DivRem(first, StationRecord.HoursOfDay, out long _), lastDay = (int)(last / StationRecord.HoursOfDay);
        int count = (lastDay - firstDay + 1) * StationRecord.HoursOfDay;
        long start = ((long)firstDay * StationRecord.HoursOfDay) - hoursAhead;
        var table = new Dictionary<Column, double[]>();
        for (int i = 0; i < columns.Length; i++)
        {
            var whole = new double[count];
            Array.Fill(whole, double.NaN);
            Array.Copy(hours[i], firstKey - baseKey, whole, firstKey - start, newestKey - firstKey + 1);
            table[columns[i]] = whole;
        }

        return draft with
        {
            Days = [.. Enumerable.Range(firstDay, lastDay - firstDay + 1).Select(DateOnly.FromDayNumber)],
            Hours = HourTable.Of(count, table),
            First = (int)(firstKey - start),
            Last = (int)(newestKey - start),
            Rows = Rows,
            Flags = [.. flagged.Distinct().Order().Select(key => new Flag(FlagKind.Duplicate, null, (int)(key - start), double.NaN))],
        };
    }

    private HourCell CellOf(long key)
    {
        ref var cell = ref ring[key % RingSize];
        cell ??= new HourCell(columns.Length);
        if (cell.Key != key || cell.Count == 0) cell.Start(key);
        return cell;
    }

    private void CloseUpTo(long newest)
    {
        for (; oldestOpen < newest - DisorderHours && oldestOpen <= newestKey; oldestOpen++) Close(oldestOpen);
        oldestOpen = Math.Max(oldestOpen, newest - DisorderHours);
        newestKey = newest;
    }

    private void Close(long key)
    {
        var cell = ring[key % RingSize];
        if (cell is null || cell.Key != key || cell.Count == 0) return;
        int at = (int)(key - baseKey);
        EnsureRoom(at);
        bool areSeveral = cell.Count > 1;
        bool takesLast = areSeveral && isSubHourly == false;
        for (int i = 0; i < columns.Length; i++) hours[i][at] = areSeveral && !takesLast ? cell.Together(i, columns[i].IsSum()) : cell.Last[i];
        if (cell.HasRepeat || takesLast) flagged.Add(key);
        if (areSeveral && isSubHourly is null) lastOfSeveral[key] = cell.Last.ToArray();
        cell.Start(long.MinValue);
        closed++;
        if (areSeveral) closedWithSeveral++;
        if (closed >= HoursToTellCadence) Decide();
    }

    /// <summary>Tells once and for all whether the rows are sub-hourly, and settles the hours that waited for it.</summary>
    private void Decide()
    {
        if (isSubHourly is not null) return;
        isSubHourly = 2 * closedWithSeveral > closed;
        if (isSubHourly == false)
        {
            foreach (var (key, row) in lastOfSeveral)
            {
                for (int i = 0; i < row.Length; i++) hours[i][key - baseKey] = row[i];
                flagged.Add(key);
            }
        }

        lastOfSeveral.Clear();
    }

    private void EnsureRoom(int at)
    {
        if (at < capacity) return;
        int grown = (int)Math.Min(Math.Max(at + 1L, Math.Max(1024L, capacity * 2L)), MostHours);
        for (int i = 0; i < hours.Length; i++)
        {
            Array.Resize(ref hours[i], grown);
            hours[i].AsSpan(capacity).Fill(double.NaN);
        }

        capacity = grown;
    }

    private static string TimeOf(long seconds) => new DateTime(seconds * TimeSpan.TicksPerSecond).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}

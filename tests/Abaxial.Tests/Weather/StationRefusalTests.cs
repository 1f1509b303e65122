using Abaxial.Files.Weather;

namespace Abaxial.Tests.Weather;

/// <summary>What cannot be read is refused with its place, and nothing is guessed.</summary>
public sealed class StationRefusalTests
{
    [Theory]
    [InlineData("", 0, null)]
    [InlineData("time,temperature\n", 0, null)]
    [InlineData("\n", 1, "time")]
    [InlineData("temperature,humidity\n1,2\n", 1, "time")]
    [InlineData("time,soil\n2026-06-01T00:00Z,1\n", 1, null)]
    [InlineData("time,rain,rain\n2026-06-01T00:00Z,1,1\n", 1, "rain")]
    [InlineData("time,temperature\n2026-06-01T00:00Z,warm\n", 2, "temperature")]
    [InlineData("time,temperature\n2026-06-01T00:00Z,1,5\n", 2, null)]
    [InlineData("time,temperature\n2026-06-01T00:00Z,1e999\n", 2, "temperature")]
    [InlineData("time,temperature\n2026-06-01T00:00Z,1\n\n2026-06-01,2\n", 4, "time")]
    [InlineData("time,temperature\n2026-02-30T00:00Z,1\n", 2, "time")]
    [InlineData("time,temperature\n2026-06-01T25:00Z,1\n", 2, "time")]
    [InlineData("time,temperature\n2026-06-01T00:00,1\n", 2, "time")]
    [InlineData("time,temperature\n0001-06-01T00:00Z,1\n", 2, "time")]
    [InlineData("time,temperature\n2026-06-01T00:00Z,1\n2300-06-01T00:00Z,1\n", 3, "time")]
    [InlineData("date,tmin,tmax\n2026-06-01,x,20\n", 2, "tmin")]
    [InlineData("date,tmin,tmax\n2026-06-09,1,2\n2026-06-01,1,2\n", 3, "date")]
    [InlineData("date,tmin,tmax\n", 0, null)]
    [InlineData("2026 06 01 00   125    98 10132   270    31     8     3 -9999\n2026 06 01 01 rain\n", 2, "temperature")]
    [InlineData("2026 06 31 00   125    98 10132   270    31     8     3 -9999\n", 1, "day")]
    [InlineData("LOCATION,X,-,X,X,0,44,-31,0,8\n", 0, null)]
    [InlineData("LOCATION,X,-,X,X,0,44,-31,0,8\nDATA PERIODS,1,4,Data,Sunday,1/1,12/31\n", 2, "DATA PERIODS")]
    [InlineData("LOCATION,X,-,X,X,0,44,-31,0,8\n1986,1,1,25,60,?,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1\n", 2, "hour")]
    public void A_file_that_is_no_record_is_refused_with_line_and_column(string text, long line, string? column)
    {
        var refusal = Records.Read(text).Refusal!;
        Assert.Equal(("made.csv", line, column), (refusal.File, refusal.Line, refusal.Column));
        Assert.NotEqual("", refusal.Found);
        Assert.NotEmpty(refusal.Accepted);
    }

    [Fact]
    public void A_zero_byte_is_refused_where_it_stands() =>
        Assert.Equal(3, Records.Read("time,temperature\n2026-06-01T00:00Z,1\n2026-06-01T01:00Z,\0\n").Refusal!.Line);

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.98)]
    public void A_packed_file_that_ends_early_is_refused(double share)
    {
        var rows = string.Concat(Enumerable.Range(0, 5000).Select(hour => $"{new DateTime(2026, 1, 1).AddHours(hour):yyyy-MM-ddTHH:mm}Z,{hour * 7919 % 400 / 10.0:0.0}\n"));
        string later = rows.Replace("2026-", "2027-", StringComparison.Ordinal);
        byte[] packed = StationFilesTests.Packed("time,temperature\n" + rows);
        Assert.NotNull(Records.Read(packed).Record);
        Assert.Contains("compressed", Records.Read(packed[..(int)(packed.Length * share)]).Refusal!.Found, StringComparison.Ordinal);
        Assert.Equal(Records.Read(packed).Record!.Rows * 2, Records.Read([.. packed, .. StationFilesTests.Packed(later)]).Record!.Rows);
        packed[packed.Length / 2] ^= 0x55;
        Assert.NotNull(Records.Read(packed).Refusal);
    }

    [Fact]
    public void Ten_million_columns_in_a_row_are_refused_before_they_are_held()
    {
        using var stream = new RepeatingStream("time,temperature\n2026-06-01T00:00Z,1\n"u8.ToArray(), ","u8.ToArray(), 10_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var refusal = StationFiles.Read(stream, "made.csv", new StationReadOptions()).Refusal!;
        Assert.Equal(3, refusal.Line);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 64 << 20);
    }

    [Fact]
    public void A_long_record_is_read_in_memory_that_its_hours_bound()
    {
        // A hundred megabytes of readings of one hour.
        using var stream = new RepeatingStream("time,temperature\n"u8.ToArray(), "2026-06-01T00:00:07Z,12.5\n"u8.ToArray(), 4_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var record = StationFiles.Read(stream, "made.csv", new StationReadOptions()).Record!;
        Assert.Equal(4_000_000, record.Rows);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 64 << 20);
    }

    [Theory]
    [InlineData("time: t", "columns")]
    [InlineData("time: t\ncolumns: {}", "columns")]
    [InlineData("columns: { temperature: t }", "time")]
    [InlineData("time: t\ncolumns: { pressure: p }", "pressure")]
    [InlineData("time: t\ncolumns:\n  temperature: { from: t, unit: R }", "unit")]
    [InlineData("time: t\nzone: Mars\ncolumns: { temperature: t }", "zone")]
    [InlineData("time: t\ncolor: red\ncolumns: { temperature: t }", "color")]
    [InlineData("time: [a, b]\ncolumns: { temperature: t }", "time")]
    [InlineData("time: t\nseparator: x\ncolumns: { temperature: t }", "separator")]
    [InlineData("time: t\ndecimal: \",\"\ncolumns: { temperature: t }", "decimal")]
    [InlineData("date: d\ncolumns: { tmin: a }", "columns")]
    [InlineData("- a\n- b", null)]
    [InlineData("a: [", null)]
    public void A_mapping_that_maps_nothing_or_wrongly_is_refused(string yaml, string? column)
    {
        Assert.Null(StationMapping.Read(new StringReader(yaml), "map.yaml", out var refusal));
        Assert.Equal(("map.yaml", column), (refusal!.File, refusal.Column));
        Assert.NotEmpty(refusal.Accepted);
    }

    [Fact]
    public void A_column_that_a_mapping_names_must_be_there()
    {
        var refusal = Records.Read("t,x\n", new StationReadOptions { Mapping = Records.Mapping("time: t\ncolumns: { temperature: temp }") }).Refusal!;
        Assert.Equal((1, "temp"), (refusal.Line, refusal.Column));
    }

    [Theory]
    [InlineData("name: x", "tmin")]
    [InlineData("tmin: 5\ntopt: 40\ntmax: 30\nwmin: 6\nwmax: 12", "topt")]
    [InlineData("tmin: 5\ntopt: 20\ntmax: 30\nwmin: 6", "wmax")]
    [InlineData("tmin: 5\ntopt: 20\ntmax: 30\nwmin: 0\nwmax: 12", "wmin")]
    [InlineData("latent: [{ celsius: 10, hours: 200 }]", "latent")]
    [InlineData("latent: [{ celsius: 10, hours: 200 }, { celsius: 9, hours: 100 }]", "celsius")]
    public void A_pathogen_that_lacks_something_is_refused(string yaml, string column)
    {
        Assert.Null(PathogenFiles.Read(new StringReader(yaml), "set.yaml", out var refusal));
        Assert.Equal(column, refusal!.Column);
    }
}

/// <summary>A head, then the same bytes over and over.</summary>
internal sealed class RepeatingStream(byte[] head, byte[] again, long times) : Stream
{
    private long at;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => head.Length + (again.Length * times);

    public override long Position { get => at; set => throw new NotSupportedException(); }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        int read = 0;
        while (read < buffer.Length && at < Length)
        {
            var source = at < head.Length ? head.AsSpan((int)at) : again.AsSpan((int)((at - head.Length) % again.Length));
            int part = Math.Min(source.Length, buffer.Length - read);
            source[..part].CopyTo(buffer[read..]);
            read += part;
            at += part;
        }

        return read;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}

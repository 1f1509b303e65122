using System.IO.Compression;
using System.Text;
using Abaxial.Files.Weather;
using Abaxial.Weather;

namespace Abaxial.Tests.Weather;

/// <summary>The forms that a record may come in.</summary>
public sealed class StationFilesTests
{
    [Fact]
    public void Columns_stand_in_any_order_and_unknown_ones_are_named_and_ignored()
    {
        var reading = Records.Read("rain,Soil moisture,time,temperature\n0.2,7,2026-06-01T00:00Z,12.5\n,8,2026-06-01T01:00Z,NA\n");
        Assert.Equal(["Soil moisture"], reading.UnknownColumns);
        var hours = reading.Record!.Hours;
        Assert.Equal([0.2, double.NaN], hours.Of(Column.Rain)[..2].ToArray());
        Assert.Equal([12.5, double.NaN], hours.Of(Column.Temperature)[..2].ToArray());
        Assert.False(hours.Has(Column.Humidity));
    }

    [Theory]
    [InlineData("\r\n", true)]
    [InlineData("\n", false)]
    public void Line_ends_quotes_and_a_byte_order_mark_do_not_matter(string end, bool hasMark)
    {
        var record = Records.Record($"{(hasMark ? "\uFEFF" : "")}\"time\",temperature{end}\"2026-06-01T05:00Z\",\"12.5\"{end}{end}");
        Assert.Equal(12.5, record.Hours.Of(Column.Temperature)[5]);
        Assert.Equal((5, 5, 1L), (record.First, record.Last, record.Rows));
    }

    [Fact]
    public void A_packed_file_is_read_as_it_is()
    {
        const string Text = "time,temperature\n2026-06-01T05:00Z,12.5\n";
        Assert.Equal(12.5, Records.Read(Packed(Text)).Record!.Hours.Of(Column.Temperature)[5]);
    }

    [Fact]
    public void The_station_is_called_after_its_file()
    {
        using var stream = new MemoryStream("time,temperature\n2026-06-01T05:00Z,12.5\n"u8.ToArray());
        Assert.Equal("dunsany", StationFiles.Read(stream, "a/b/dunsany.csv.gz", new StationReadOptions()).Record!.Station);
    }

    [Fact]
    public void Daily_rows_are_read_and_a_missing_day_is_missing()
    {
        var record = Records.Record("date,tmax,tmin,rain\n2026-06-01,20,10,1.5\n2026-06-03,22,,0\n");
        Assert.Equal(3, record.Days.Length);
        Assert.Equal([10, double.NaN, double.NaN], record.Daily!.LowestCelsius);
        Assert.Equal([20, double.NaN, 22], record.Daily.HighestCelsius);
        Assert.Equal([1.5, double.NaN, 0], record.Daily.RainMillimetres);
    }

    [Fact]
    public void ISD_Lite_is_read_in_tenths_with_its_missing_marks_and_traces()
    {
        var record = Records.Record("2026 06 01 00   125    98 10132   270    31     8     3 -9999\n2026 06 01 01 -9999 -9999 10131   270 -9999     8    -1 -9999\n");
        Assert.Equal([12.5, double.NaN], record.Hours.Of(Column.Temperature)[..2].ToArray());
        Assert.Equal(9.8, record.Hours.Of(Column.DewPoint)[0]);
        Assert.Equal(3.1, record.Hours.Of(Column.Wind)[0]);
        Assert.Equal([0.3, 0], record.Hours.Of(Column.Rain)[..2].ToArray());
    }

    [Theory]
    [InlineData("Station_ID|Station_name|Year|Month|Day|Hour|Minute|Latitude|Longitude|Elevation|temperature|temperature_Quality_Code|relative_humidity|precipitation|wind_speed\nX1|Inventia|2026|06|01|13|53|44|-31|8|12.5|1|88|0.2|3.1\n")]
    [InlineData("STATION|Station_name|DATE|LATITUDE|LONGITUDE|temperature|temperature_Quality_Code|relative_humidity|precipitation|wind_speed\nX1|Inventia|2026-06-01T13:53:00|44|-31|12.5|1|88|0.2|3.1\n")]
    public void GHCN_hourly_is_read_in_both_its_headers(string text)
    {
        var record = Records.Record(text);
        Assert.Equal((12.5, 88, 0.2, 3.1), (At(Column.Temperature), At(Column.Humidity), At(Column.Rain), At(Column.Wind)));

        double At(Column column) => record.Hours.Of(column)[13];
    }

    [Fact]
    public void EnergyPlus_months_of_several_years_follow_on_and_days_keep_the_year_they_print()
    {
        var text = new StringBuilder("LOCATION,Inventia,-,XXX,Invented,000000,44.00,-31.00,-2.0,8.0\nDESIGN CONDITIONS,0\nDATA PERIODS,1,1,Data,Sunday,1/31,2/2\n");
        foreach (var (year, month, day) in new[] { (1986, 1, 31), (1991, 2, 1), (1991, 2, 2) })
        {
            for (int hour = 1; hour <= 24; hour++) text.Append($"{year},{month},{day},{hour},60,?,{hour}.0,{(hour == 3 ? "99.9" : "5.0")},90,101325,0,0,0,{hour},0,0,0,0,0,0,180,3.5,0,0,9999,99999,9,999999999,0,0,0,99,0,0.5,1\n");
        }

        var record = Records.Record(text.ToString());
        Assert.Equal([new DateOnly(1986, 1, 31), new DateOnly(1991, 2, 1), new DateOnly(1991, 2, 2)], record.Days);
        Assert.Equal((-120, "-02:00", 44.0, -31.0), (record.OffsetMinutes, record.Zone, record.Latitude, record.Longitude));
        Assert.Equal(0, record.Hours.MissingIn(Column.Temperature, 0, 71));
        Assert.Equal(3, record.Hours.MissingIn(Column.DewPoint, 0, 71));
        Assert.Equal(new DateTime(1986, 1, 31, 1, 0, 0), record.TimeOf(0));
        Assert.Equal([null, 1, 1], new Abaxial.Weather.Models.Hutton().Values(record with { Hours = record.Hours.With(Column.Temperature, [.. Enumerable.Repeat(12.0, 72)]) }));
    }

    [Fact]
    public void A_mapping_says_columns_units_marks_separator_and_decimal_sign()
    {
        const string Map = """
            station: Obstgarten
            separator: ";"
            decimal: ","
            missing: ["-999", "---"]
            zone: Etc/GMT-1
            time: Zeit
            time-format: "dd.MM.uuuu HH:mm"
            columns:
              temperature: { from: Temp, unit: F }
              humidity: Feuchte
              rain: { from: Regen, unit: in }
              wind: { from: Wind, unit: km/h }
              radiation: { from: Strahlung, unit: MJ/m2 }
              wetness: { from: Nass, unit: fraction }
            """;
        var record = Records.Record("Zeit;Temp;Feuchte;Regen;Wind;Strahlung;Nass\n01.06.2026 05:00;50,0;88,5;0,1;36;1,8;0,5\n01.06.2026 06:00;-999;---;-999,0;0;0;0\n", new StationReadOptions { Mapping = Records.Mapping(Map) });
        Assert.Equal(("Obstgarten", "Etc/GMT-1", 60), (record.Station, record.Zone, record.OffsetMinutes));
        Assert.Equal([10, 88.5, 2.54, 10, 500, 30], Values(5));
        Assert.Equal([double.NaN, double.NaN, double.NaN, 0, 0, 0], Values(6));

        IEnumerable<double> Values(int hour) =>
            new[] { Column.Temperature, Column.Humidity, Column.Rain, Column.Wind, Column.Radiation, Column.Wetness }.Select(column => record.Hours.Of(column)[hour]);
    }

    [Fact]
    public void A_mapping_takes_times_in_parts_and_one_station_of_several()
    {
        var options = new StationReadOptions { Mapping = Records.Mapping("zone: UTC\ntime: [y, m, d, h]\nonly: { id: B }\ncolumns: { temperature: t }") };
        var record = Records.Record("id,y,m,d,h,t\nA,2026,6,1,5,1\nB,2026,6,1,5,2\nB,2026,6,1,6,3\n", options);
        Assert.Equal(2, record.Rows);
        Assert.Equal([2.0, 3], record.Hours.Of(Column.Temperature)[5..7].ToArray());
    }

    [Fact]
    public void A_mapping_reads_daily_tables_in_foreign_units()
    {
        var options = new StationReadOptions { Mapping = Records.Mapping("date: day\ncolumns:\n  tmin: { from: lo, unit: F }\n  tmax: { from: hi, unit: F }\n  rain: { from: r, unit: in }") };
        var record = Records.Record("day,lo,hi,r\n2026-06-01,50,68,1\n", options);
        Assert.Equal((10, 20, 25.4), (record.Daily!.LowestCelsius[0], record.Daily.HighestCelsius[0], record.Daily.RainMillimetres[0]));
    }

    internal static byte[] Packed(string text)
    {
        using var bytes = new MemoryStream();
        using (var gzip = new GZipStream(bytes, CompressionLevel.Fastest)) gzip.Write(Encoding.UTF8.GetBytes(text));
        return bytes.ToArray();
    }
}

using System.Collections.Immutable;
using Abaxial.Cli.Pages;
using Abaxial.Files.Weather;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Arrival;

namespace Abaxial.Cli.Weather;

/// <summary><c>abaxial weather FILE --arrival LESIONS.yaml</c>: when the lesions of one or several fields began.</summary>
internal static class ArrivalRun
{
    /// <exception cref="RecordRefusedException">The lesions or another record cannot be read.</exception>
    public static int Run(WeatherRequest request, ArrivalUse use, StationRecord raw, StationMapping? mapping, Speech speech)
    {
        var fields = WeatherFiles.Text(request.Terminal, use.Lesions, text =>
        {
            var read = LesionFiles.Read(text, use.Lesions, out var refusal);
            return refusal is null ? read : throw new RecordRefusedException(refusal);
        });
        var records = new Dictionary<string, StationRecord>(StringComparer.Ordinal) { [request.File] = WeatherFiles.Checked(raw, request.Settings) };
        var estimates = fields.Select(field =>
        {
            string file = field.Record ?? request.File;
            if (!records.TryGetValue(file, out var record)) records.Add(file, record = WeatherFiles.Checked(WeatherFiles.Record(request, file, mapping, speech), request.Settings));
            return ArrivalEstimate.Of(new LesionFinding(field.Field, record, field.Seen, field.Lesion), request.Settings);
        }).ToImmutableArray();

        if (request.Json)
        {
            ArrivalJson.Write(estimates, speech, request.Terminal.Out);
        }
        else
        {
            using var writer = request.Terminal.Writer();
            ArrivalPage.Write(new Page(writer, request.Terminal), estimates, request.Settings, speech);
        }

        return ExitCode.Done;
    }
}

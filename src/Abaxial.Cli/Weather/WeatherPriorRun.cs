using System.Buffers;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Abaxial.Cli.Pages;
using Abaxial.Weather;
using Abaxial.Weather.Models;
using Abaxial.Weather.Priors;

namespace Abaxial.Cli.Weather;

/// <summary><c>abaxial weather FILE --prior</c>: the factors as a case file takes them; why a cause has none goes to standard error.</summary>
internal static class WeatherPriorRun
{
    private static readonly JsonWriterOptions Form = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static int Run(WeatherRequest request, PriorUse use, StationRecord raw, Speech speech)
    {
        var input = new ModelInput(WeatherFiles.Checked(raw, request.Settings), request.Settings);
        var noticed = use.Noticed ?? LastWholeDay(input) ?? throw new UsageException($"'{request.File}' has no whole day; name one with --noticed.");
        var rule = speech.Knowledge.Document.PriorFactors.NeverUnderOne;
        bool saysLittle = rule.Systems.Contains(use.System) || rule.Stages.Contains(use.Stage) || rule.Watering.Contains(use.Watering);
        var prior = WeatherPrior.Of(input, noticed, use.Host, saysLittle);
        request.Terminal.Out.Write(Json(prior, input.Record, noticed, speech));
        request.Terminal.Out.Flush();
        foreach (var none in prior.Neutral) request.Terminal.Error.WriteLine(speech.Say("prior.none", none.Cause, speech.Say($"prior.why.{none.Why.Key}", [.. none.Why.Values])));
        return ExitCode.Done;
    }

    private static byte[] Json(WeatherPrior prior, StationRecord record, DateOnly noticed, Speech speech)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Form))
        {
            json.WriteStartObject();
            json.WriteStartArray("priorFactors");
            foreach (var factor in prior.Factors)
            {
                string days = factor.Days.Low.ToString("0.0", CultureInfo.InvariantCulture);
                json.WriteStartObject();
                json.WriteString("cause", factor.Response.Cause);
                json.WriteNumber("factor", factor.Factor);
                json.WriteString("reason", speech.Say($"prior.reason.{factor.Response.Cause}", record.Station, InfectionDays.Days.ToString(CultureInfo.InvariantCulture), noticed.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), days));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        buffer.Write("\n"u8);
        return buffer.WrittenSpan.ToArray();
    }

    private static DateOnly? LastWholeDay(ModelInput input)
    {
        var whole = input.Windows.Where(window => window.End - 1 <= input.Record.Last).ToList();
        return whole.Count == 0 ? null : whole[^1].Day;
    }
}

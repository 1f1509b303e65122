using System.Globalization;
using System.Text.Json;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Models;
using Abaxial.Weather.Priors;

namespace Abaxial.Cli.Weather;

/// <summary><c>abaxial weather FILE --prior</c>: the factors as a case file takes them; why a cause has none goes to standard error.</summary>
internal static class WeatherPriorRun
{
    public static int Run(WeatherRequest request, PriorUse use, StationRecord raw, Speech speech)
    {
        var input = new ModelInput(WeatherFiles.Checked(raw, request.Settings), request.Settings);
        var noticed = use.Noticed ?? LastWholeDay(input) ?? throw new UsageException($"'{request.File}' has no whole day; name one with --noticed.");
        var rule = speech.Knowledge.Document.PriorFactors.NeverUnderOne;
        bool saysLittle = rule.Systems.Contains(use.System) || rule.Stages.Contains(use.Stage) || rule.Watering.Contains(use.Watering);
        var prior = WeatherPrior.Of(input, noticed, use.Host, saysLittle);
        JsonLine.Write(request.Terminal.Out, json => Factors(json, prior, input.Record, noticed, speech));
        foreach (var none in prior.Neutral) request.Terminal.Error.WriteLine(speech.Say("prior.none", none.Cause, speech.Say($"prior.why.{none.Why.Key}", [.. none.Why.Values])));
        return ExitCode.Done;
    }

    private static void Factors(Utf8JsonWriter json, WeatherPrior prior, StationRecord record, DateOnly noticed, Speech speech)
    {
        json.WriteStartArray("priorFactors");
        foreach (var factor in prior.Factors)
        {
            string days = (factor.Factor > 1 ? factor.Days.Low : factor.Days.High).ToString("0.0", CultureInfo.InvariantCulture);
            json.WriteStartObject();
            json.WriteString("cause", factor.Response.Cause);
            json.WriteNumber("factor", factor.Factor);
            json.WriteString("reason", speech.Say($"prior.reason.{factor.Response.Cause}", record.Station, InfectionDays.Days.ToString(CultureInfo.InvariantCulture), noticed.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), days));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static DateOnly? LastWholeDay(ModelInput input)
    {
        var whole = input.Windows.Where(window => window.End - 1 <= input.Record.Last).ToList();
        return whole.Count == 0 ? null : whole[^1].Day;
    }
}

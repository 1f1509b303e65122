using System.Globalization;
using System.Text;
using System.Text.Json;
using Abaxial.Samples;
using Abaxial.Speaking;

namespace Abaxial.Web.Samples;

/// <summary>Entries in a line each, for the timeline.</summary>
internal static class Entries
{
    public static string Told(TimelineItem item, SealedTexts texts, Speech words) => item.Said is { } said ? Told(said, texts, words) : $"{item.Entry.Kind}: {item.Entry.Payload}";

    private static string Told(Payload said, SealedTexts texts, Speech words) => said switch
    {
        TakenIn taken => $"Taken in: {words.Word($"host.{taken.Host}")}",
        Numbered numbered => $"Numbered {numbered.Number}",
        LookMade look => $"Look: {Observed(look.Observation, words)}",
        PriorFactorStated factor => string.Create(CultureInfo.InvariantCulture, $"{words.Knowledge.Texts.Cause(factor.Cause)} {factor.Factor:0.##} times as likely beforehand: {factor.Reason}"),
        PhotographAdded => "Photograph added",
        PhotographMarked marked => $"Photograph marked: {string.Join(", ", new[] { marked.Side, marked.MicrometersPerPixel?.ToString("0.## µm a pixel", CultureInfo.InvariantCulture) }.OfType<string>())}",
        DiagnosisSigned diagnosis => $"Diagnosis signed: {string.Join(", ", diagnosis.Primary.Select(cause => words.Knowledge.Texts.Cause(cause)).Concat(diagnosis.Unlisted is { } other ? [other] : []))}",
        MessageNoted message => $"Message {(message.Direction == "in" ? "from" : "to")} the sender{(texts.Find(message.Text) is null ? ", deleted with the person whom it was about" : "")}",
        HandedOver handed => $"Handed over to {handed.To}",
        Snoozed snoozed => $"Put aside until {Ages.Moment(snoozed.Until)}",
        Closed closed => $"Closed: {closed.Why}",
        Reopened reopened => $"Reopened: {reopened.Why}",
        Correction { Payload: null } struck => $"Struck an entry: {struck.Why}",
        Correction correction => $"Corrected an entry ({correction.Why}){(correction.Replacement is { } now ? $". {Told(now, texts, words)}" : "")}",
        PersonErased => "Texts about a person were deleted",
        _ => said.Kind,
    };

    /// <summary>A look in words; as it was written down where the knowledge of today knows its words no more.</summary>
    private static string Observed(string observation, Speech words)
    {
        using var document = JsonDocument.Parse(observation);
        var root = document.RootElement;
        if (!root.TryGetProperty("character", out var id) || id.ValueKind != JsonValueKind.String || words.Knowledge.FindCharacter(id.GetString()!) is not { } character) return observation;
        var seen = new StringBuilder(words.Name(character)).Append(": ");
        string[] states = root.TryGetProperty("states", out var several) && several.ValueKind == JsonValueKind.Array ? [.. several.EnumerateArray().Select(state => state.ToString())]
            : root.TryGetProperty("state", out var one) ? [one.ToString()] : [];
        if (states.Length == 0 && root.TryGetProperty("values", out var values)) seen.Append(values.ToString());
        return seen.AppendJoin(words.Word("list.semicolon"), states.Select(state => character.StateIndex(state) is >= 0 and var index ? words.Name(character, index) : state)).ToString();
    }
}

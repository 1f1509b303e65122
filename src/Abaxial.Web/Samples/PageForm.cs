using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Abaxial.Samples;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Samples;

/// <summary>What a form of a page said, and what was wrong with it where the page is shown again.</summary>
internal sealed class PageForm
{
    /// <summary>What is said over problems where a form wrote nothing.</summary>
    public const string NothingWritten = "Nothing was written";

    private IFormCollection? sent;

    /// <summary>Why nothing was written; empty where nothing was sent.</summary>
    public ImmutableArray<CaseProblem> Problems { get; private set; } = [];

    /// <summary>What the problems come to, in words.</summary>
    public string Title { get; private set; } = NothingWritten;

    /// <summary>Keeps what was sent, so that nobody has to type it again.</summary>
    public void Refuse(IFormCollection form, ImmutableArray<CaseProblem> problems, string title) => (sent, Problems, Title) = (form, problems, title);

    /// <summary>What a field is filled with: what was sent, or else what stands there at first.</summary>
    public string? Value(string name, string? otherwise = null) => sent is null ? otherwise : sent[name].FirstOrDefault();

    /// <summary>Whether one of several was chosen.</summary>
    public bool IsChosen(string name, string value, bool otherwise = false) => sent is null ? otherwise : sent[name].Contains(value);

    /// <summary>A field that is not blank.</summary>
    public static string? Text(IFormCollection form, string name) => form[name].FirstOrDefault()?.Trim() is { Length: > 0 } text ? text : null;

    /// <summary>The id that the form carries for what it writes.</summary>
    public static EntryId? Key(IFormCollection form) => EntryId.TryParse(form["key"].FirstOrDefault(), out var id) ? id : null;

    /// <summary>An object of the fields that are not blank, each as text.</summary>
    public static JsonObject Texts(IFormCollection form, params ReadOnlySpan<string> names)
    {
        var json = new JsonObject();
        foreach (string name in names)
        {
            if (Text(form, name) is { } text) json[name] = text;
        }

        return json;
    }

    /// <summary>A number where the field holds one; otherwise the text, so that the refusal can name it.</summary>
    public static JsonNode? Number(IFormCollection form, string name) => Text(form, name) switch
    {
        null => null,
        { } text when double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) => JsonValue.Create(number),
        { } text => JsonValue.Create(text),
    };

    /// <summary>A moment as entries write it, of a field for date and time, which is in UTC; the text where it holds none.</summary>
    public static string? Moment(IFormCollection form, string name) => Text(form, name) is { } text
        ? DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var moment) ? Entry.Moment(moment) : text
        : null;

    /// <summary>As it is read again.</summary>
    public static JsonElement Element(JsonObject json) => Json.Of(json.ToJsonString());
}

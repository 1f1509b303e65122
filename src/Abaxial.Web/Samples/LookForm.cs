using System.Text.Json.Nodes;
using Abaxial.Data.People;
using Abaxial.Knowledge;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Samples;

/// <summary>Makes of a form about one character the look that a case file would hold.</summary>
internal static class LookForm
{
    /// <summary>The payload of a look.</summary>
    public static JsonObject Payload(IFormCollection form, KnowledgeBase knowledge, Visitor by)
    {
        var look = PageForm.Texts(form, "character", "how", "surface", "from", "of", "at", "note");
        look["by"] = ObserverOf(by);
        look["observer"] = by.Id;
        var character = knowledge.FindCharacter(PageForm.Text(form, "character") ?? "");
        string[] states = [.. form["state"].OfType<string>().Where(state => state.Length > 0)];
        if (PageForm.Number(form, "hours") is { } hours) look["hours"] = hours;
        if (character is { IsMeasured: true } && states.Length == 0) look["values"] = Values(PageForm.Text(form, "values") ?? "");
        else if (character is { IsMany: true } && states is not ["unsure"]) look["states"] = new JsonArray([.. states.Select(state => (JsonNode)state)]);
        else if (states.Length > 0) look["state"] = states[0];
        if (character?.Surfaces.IsEmpty != false || PageForm.Text(form, "how") == Way.MoistChamber.Word()) look.Remove("surface");
        int number = int.TryParse(PageForm.Text(form, "case"), out int read) ? read : 1;
        return new JsonObject { ["case"] = number, ["observation"] = look };
    }

    /// <summary>As whom somebody looks: by their role.</summary>
    private static string ObserverOf(Visitor by) => (by.Role switch { Role.Submitter => Observer.Grower, Role.Scout => Observer.Scout, _ => Observer.Diagnostician }).Word();

    private static JsonArray Values(string text)
    {
        var values = new JsonArray();
        foreach (string part in text.Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries))
        {
            values.Add(double.TryParse(part, System.Globalization.CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? JsonValue.Create(value) : JsonValue.Create(part));
        }

        return values;
    }
}

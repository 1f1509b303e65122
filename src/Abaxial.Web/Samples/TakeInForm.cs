using System.Text.Json.Nodes;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Samples;

/// <summary>The form that takes a sample in.</summary>
internal static class TakeInForm
{
    public static async Task<IResult> TakeIn(IFormCollection form, Visitor visitor, TakingIn taking, PageForm page, CancellationToken cancel)
    {
        var taken = PageForm.Texts(form, "host", "system", "stage", "purpose", "noticed", "cultivar", "submitter", "says");
        if (PageForm.Moment(form, "promised") is { } promised) taken["promised"] = promised;
        var place = new JsonObject();
        foreach (string name in new[] { "latitude", "longitude" })
        {
            if (PageForm.Number(form, name) is { } value) place[name] = value;
        }

        if (place.Count > 0) taken["place"] = place;
        if (PageForm.Text(form, "area") is { } area && place.Count == 2 && place.All(member => member.Value is JsonValue value && value.TryGetValue(out double _))) taken["area"] = AreaOf(area, place);
        var written = await taking.WriteAsync(visitor, PageForm.Key(form), PageForm.Element(taken), new CaseProblems(), cancel);
        return written.IsRefused ? SampleForms.Shown(page, form, written) : TypedResults.LocalRedirect($"/samples/{written.Entry.Sample}");
    }

    /// <summary>The coarse area of the place, under the name that it was given.</summary>
    private static JsonObject AreaOf(string name, JsonObject place)
    {
        double latitude = (double)place["latitude"]!, longitude = (double)place["longitude"]!;
        if (latitude is < -90 or > 90 || longitude is < -180 or > 180) return new JsonObject { ["name"] = name };
        var area = Abaxial.Samples.CaseIntake.AreaOf(new Place(latitude, longitude, null));
        return new JsonObject { ["name"] = name, ["latitude"] = area.Latitude, ["longitude"] = area.Longitude, ["uncertaintyMeters"] = area.UncertaintyMeters };
    }
}

using Abaxial.Web.Hosting.Description;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Causes;

/// <summary>The knowledge behind the answers, to be read.</summary>
internal static class CausesSetup
{
    public static void MapCauses(this WebApplication app)
    {
        var api = app.MapGroup("/api").WithTags("Knowledge");
        api.MapGet("/causes", CausesApi.Causes).WithSummary("Every cause.").WithAnswerExample(CausesExamples.Causes);
        api.MapGet("/causes/{id}", CausesApi.Cause).WithSummary("A cause, what it shows, and where that is from.").WithAnswerExample(CausesExamples.Cause);
        api.MapGet("/characters", CausesApi.Characters).WithSummary("Everything there is to look at.").WithAnswerExample(CausesExamples.Characters);
    }
}

using Abaxial.Data.People;
using Abaxial.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Abaxial.Web.People;

/// <summary>Making the first administrator, with the code that the console shows.</summary>
internal static class SetUpApi
{
    public static void Map(IEndpointRouteBuilder app) =>
        app.MapPost("/api/set-up", SetUpAsync).Answers(201, """{ "id": "a-01" }""").AllowAnonymous().TakesSignIn().TakesText("""{ "code": "7KQW-M4TX-92PB-HHV3-CZ8D", "displayName": "Orla Tenney", "name": "orla", "password": "seven wet leaves in a tray" }""").WithTags("People").WithSummary("Makes the first administrator, with the code that the console shows.");

    private static async Task<IResult> SetUpAsync(Asked asked, HttpContext http, SetUpCode code, AddressTries tries, PersonChanges changes, Sessions sessions, CancellationToken cancel)
    {
        const string page = "/set-up";
        if (tries.IsShut(http) || !code.IsRight(asked["code"]))
        {
            tries.Fail(http);
            return asked.Refuse(Faults.CodeUsed, page);
        }

        var wanted = new PersonWanted(asked["id"], asked["name"], asked["displayName"], "administrator", []);
        var (fault, role) = await changes.FaultOfAsync(wanted, null, cancel);
        fault ??= PasswordRules.FaultOf(asked["password"], wanted.Name, wanted.DisplayName);
        if (fault is not null) return asked.Refuse(fault, page);
        if (!code.Take()) return asked.Refuse(Faults.CodeUsed, page);
        var person = await changes.AddAsync(wanted, role, asked["password"], new AuditNote(AuditKind.SetUp, null), cancel);
        await sessions.BeginAsync(http, person, Means.Password, cancel: cancel);
        return asked.Done(new { person.Id }, "/people", StatusCodes.Status201Created);
    }
}

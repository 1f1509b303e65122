using System.Net.Mime;
using System.Text.Json.Nodes;
using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Web.Hosting.Description;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Abaxial.Web.People;

/// <summary>People: who may in, and what they may do.</summary>
internal static class PeopleSetup
{
    public static void AddPeople(this WebApplicationBuilder builder, ClinicOptions options)
    {
        var services = builder.Services;
        services.AddScoped(provider => provider.GetRequiredService<Ledger>().Ask());
        services.AddSingleton<AuditTrail>();
        services.AddSingleton<PasswordWork>();
        services.AddSingleton<AddressTries>();
        services.AddSingleton<OneTime>();
        services.AddSingleton<SetUpCode>();
        services.AddScoped<SigningIn>();
        services.AddScoped<Sessions>();
        services.AddScoped<PersonChanges>();
        services.AddScoped<PersonEnds>();
        services.AddScoped<IUserStore<Person>>(provider => new UserOnlyStore<Person, LedgerContext, string, IdentityUserClaim<string>, IdentityUserLogin<string>, IdentityUserToken<string>, IdentityUserPasskey<string>>(provider.GetRequiredService<LedgerContext>()));
        services.AddIdentityCore<Person>();
        services.AddScoped<IPasskeyHandler<Person>, PasskeyHandler<Person>>();
        services.Configure<IdentityPasskeyOptions>(passkeys => PasskeyApi.Configure(passkeys, options));
        services.AddDataProtection().SetApplicationName("abaxial").PersistKeysToFileSystem(KeyFolder(options.Store));
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error); // it warns that the keys lie in the folder, which is where they are meant to be
        services.Configure<AntiforgeryOptions>(forms => forms.Cookie.Name = "abaxial-form");
    }

    /// <summary>Finds out who asks; stands after what every answer goes through, and before limits and endpoints.</summary>
    public static void UsePeople(this WebApplication app) => app.UseMiddleware<Gate>();

    public static void MapPeople(this WebApplication app)
    {
        SessionApi.Map(app);
        SetUpApi.Map(app);
        PeopleApi.Map(app);
        AccountApi.Map(app);
        PasskeyApi.Map(app);
        DeviceApi.Map(app);
        BenchApi.Map(app);
        AuditApi.Map(app);
    }

    /// <summary>Makes the code with which the first administrator is made, where there is none.</summary>
    public static Task PreparePeopleAsync(this WebApplication app, ClinicOptions options, CancellationToken cancel) =>
        options.IsDemo ? Task.CompletedTask : app.Services.GetRequiredService<SetUpCode>().PrepareAsync(app.Services.GetRequiredService<Ledger>(), cancel);

    /// <summary>The endpoint takes members with texts, as JSON or as a form.</summary>
    /// <param name="endpoint">The endpoint.</param>
    /// <param name="example">An example of what is sent.</param>
    public static RouteHandlerBuilder TakesText(this RouteHandlerBuilder endpoint, string example) =>
        endpoint.Accepts<Dictionary<string, string>>(MediaTypeNames.Application.Json, MediaTypeNames.Application.FormUrlEncoded).WithRequestExample(example);

    /// <summary>The endpoint answers a program with nothing more, and sends whoever sent a form on to a page.</summary>
    public static RouteHandlerBuilder AnswersNothing(this RouteHandlerBuilder endpoint) => endpoint.Produces(StatusCodes.Status204NoContent).Produces(StatusCodes.Status303SeeOther);

    /// <summary>The endpoint answers a program with an object, and sends whoever sent a form on to a page.</summary>
    public static RouteHandlerBuilder Answers(this RouteHandlerBuilder endpoint, int status, string example) =>
        endpoint.Produces<JsonObject>(status, MediaTypeNames.Application.Json).Produces(StatusCodes.Status303SeeOther).WithAnswerExample(example, status);

    /// <summary>The keys of forms lie beside the store, for the program's own eyes, so that a form outlives a restart. They are in no backup.</summary>
    private static DirectoryInfo KeyFolder(string store)
    {
        string folder = Path.Combine(store, "keys");
        const UnixFileMode own = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
        return OperatingSystem.IsWindows() ? Directory.CreateDirectory(folder) : Directory.CreateDirectory(folder, own);
    }
}

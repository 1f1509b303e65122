using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Web.Causes;
using Abaxial.Web.Hosting;
using Abaxial.Web.People;
using Abaxial.Web.Samples;
using Abaxial.Web.Shell;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web;

/// <summary>The clinic as a web application: what it is made of, one line a feature.</summary>
public static class Clinic
{
    /// <summary>Opens the store and puts the application together; it listens once it is started.</summary>
    /// <exception cref="InvalidDataException">The store was written by a newer version of this program, or is no ledger.</exception>
    /// <exception cref="IOException">The folder of the store cannot be written to.</exception>
    public static async Task<WebApplication> BuildAsync(ClinicOptions options, TimeProvider clock, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ApplicationName = typeof(Clinic).Assembly.GetName().Name, ContentRootPath = AppContext.BaseDirectory });
        var ledger = await Ledger.OpenAsync(options.Place, clock, cancel);
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton(clock);
        builder.Services.AddSingleton(_ => ledger); // by a function, so that it is disposed of with the application
        builder.Services.AddSingleton(BuiltIn.Solanum());
        builder.Services.AddSingleton<Weigher>();
        builder.AddHosting(options);
        builder.AddPeople(options);
        builder.AddShell();
        builder.AddSamples();

        var app = builder.Build();
        app.Services.GetRequiredService<Ledger>();
        app.UseHosting(options);
        app.UsePeople();
        app.UseLimits();
        app.MapHosting();
        app.MapPeople();
        app.MapShell();
        app.MapSamples();
        app.MapCauses();
        await app.PreparePeopleAsync(options, cancel);
        return app;
    }
}

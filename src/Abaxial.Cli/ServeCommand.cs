using System.CommandLine;
using Abaxial.Web;
using Microsoft.Extensions.Hosting;

namespace Abaxial.Cli;

/// <summary><c>abaxial serve</c>: the clinic, in the browser.</summary>
internal static class ServeCommand
{
    public static Command Create(Terminal terminal)
    {
        var store = StoreFolder.Option();
        var address = new Option<Uri>("--address") { Description = "The address to listen on.", HelpName = "URL", DefaultValueFactory = _ => new Uri("http://127.0.0.1:5171") };
        var command = new Command("serve", "Starts the clinic: a store's samples in the browser.") { store, address };
        command.SetAction((parsed, cancel) => RunAsync(terminal, new ClinicOptions { Store = terminal.PathOf(parsed.GetRequiredValue(store)), Address = parsed.GetRequiredValue(address) }, cancel));
        return command;
    }

    private static async Task<int> RunAsync(Terminal terminal, ClinicOptions options, CancellationToken cancel)
    {
        await using var app = await Clinic.BuildAsync(options, TimeProvider.System, cancel);
        await app.StartAsync(cancel);
        foreach (string url in app.Urls) await terminal.Error.WriteLineAsync($"The clinic is at {url}");
        await app.WaitForShutdownAsync(cancel);
        return ExitCode.Done;
    }
}

using System.CommandLine;
using Abaxial.Web;
using Abaxial.Web.Hosting;
using Abaxial.Web.Hosting.Demo;
using Abaxial.Web.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Abaxial.Cli;

/// <summary><c>abaxial serve</c>: the clinic, in the browser.</summary>
internal static class ServeCommand
{
    public static Command Create(Terminal terminal)
    {
        var config = new Option<string?>("--config") { Description = "A file with settings: a JSON object.", HelpName = "FILE" };
        var command = new Command("serve", "Starts the clinic: a store's samples in the browser. Settings may also be variables (ABAXIAL_PUBLIC_URL for --public-url) or stand in a file.") { config };
        var options = ClinicSettings.All.Where(setting => !setting.IsSecret).Select(setting => (setting.Name, Option: OptionOf(setting))).ToList();
        foreach (var (_, option) in options) command.Add(option);
        command.SetAction((parsed, cancel) => RunAsync(terminal, Read(terminal, parsed, options, config), cancel));
        return command;
    }

    private static Option OptionOf(ClinicSetting setting)
    {
        string name = $"--{setting.Name}";
        if (setting.Value is null) return new Option<bool>(name) { Description = setting.Description };
        return setting.IsList ? new Option<string[]>(name) { Description = setting.Description, HelpName = setting.Value } : new Option<string>(name) { Description = setting.Description, HelpName = setting.Value };
    }

    private static (ClinicOptions Options, bool HasStore) Read(Terminal terminal, ParseResult parsed, List<(string Name, Option Option)> options, Option<string?> config)
    {
        var values = new SettingValues(TimeProvider.System.GetUtcNow());
        foreach (var (name, option) in options)
        {
            if (parsed.GetResult(option) is { Implicit: false } said) values.Say(name, $"--{name}", said.Tokens.Count == 0 ? ["true"] : [.. said.Tokens.Select(token => token.Value)]);
        }

        values.AddVariables(Environment.GetEnvironmentVariable);
        if (parsed.GetValue(config) is { } file) values.AddFile(terminal.PathOf(file));
        var (read, problems) = ClinicSettings.Read(values);
        if (!problems.IsEmpty) throw new UsageException(string.Join("\n         ", problems.Select(problem => $"{problem.At}: found {problem.Found}; accepted: {string.Join(", or ", problem.Accepted)}.")));
        return (read with { Store = terminal.PathOf(read.Store) }, values.Has("store"));
    }

    private static async Task<int> RunAsync(Terminal terminal, (ClinicOptions Options, bool HasStore) asked, CancellationToken cancel)
    {
        if (!asked.Options.IsDemo) return await ListenAsync(terminal, asked.Options, cancel);
        string? temporary = asked.HasStore ? null : Directory.CreateTempSubdirectory("abaxial-demo-").FullName;
        try
        {
            var options = asked.Options with { Addresses = [.. asked.Options.Addresses.Select(address => Moved(terminal, address))] };
            if (temporary is not null) options = options with { Store = Path.Combine(temporary, "store"), Database = null };
            await FillAsync(options, cancel);
            return await ListenAsync(terminal, options, cancel);
        }
        finally
        {
            if (temporary is not null) Directory.Delete(temporary, recursive: true);
        }
    }

    private static async Task FillAsync(ClinicOptions options, CancellationToken cancel)
    {
        try
        {
            if (await DemoStore.IsOfClinicAsync(options.Place, cancel)) throw new UsageException($"the store of a clinic lies in {options.Place}: --demo would let everybody in.");
            await DemoStore.FillAsync(options.Place, cancel);
        }
        catch (Exception problem) when (problem is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            throw new UsageException(problem.Message);
        }
    }

    private static async Task<int> ListenAsync(Terminal terminal, ClinicOptions options, CancellationToken cancel)
    {
        if (options.Addresses.FirstOrDefault(address => !TakenPort.IsFree(address)) is { } taken) return Refuse(terminal, $"{ListeningRules.Shown(taken)} is taken by {TakenPort.HolderOf(taken.Port) ?? "another program"}");
        await using var app = await BuildAsync(options, cancel);
        try
        {
            await app.StartAsync(cancel);
        }
        catch (IOException problem)
        {
            return Refuse(terminal, problem.Message); // somebody was faster, or the address is not of this machine
        }

        await using (var output = terminal.Writer())
        {
            if (options.IsDemo) await output.WriteLineAsync("This is a demonstration: everything in it is invented, and visitors are signed in.");
            if (options.PublicUrl is { } known) await output.WriteLineAsync($"The clinic is at {ListeningRules.Shown(known)}");
            foreach (string url in app.Urls) await output.WriteLineAsync(options.PublicUrl is null ? $"The clinic is at {url}" : $"It listens on {url}");
            if (app.Services.GetRequiredService<SetUpCode>().Current is { } code) await output.WriteLineAsync($"It has no administrator yet. Open its page /set-up and type this code, which works once: {code}");
            await output.WriteLineAsync("Ctrl-C stops it.");
        }

        await app.WaitForShutdownAsync(cancel);
        return ExitCode.Done;
    }

    private static async Task<WebApplication> BuildAsync(ClinicOptions options, CancellationToken cancel)
    {
        try
        {
            return await Clinic.BuildAsync(options, TimeProvider.System, cancel);
        }
        catch (Exception problem) when (problem is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            throw new UsageException(problem.Message);
        }
    }

    private static Uri Moved(Terminal terminal, Uri address)
    {
        var free = TakenPort.NextFree(address) ?? throw new UsageException($"{ListeningRules.Shown(address)} and the next hundred ports are taken.");
        if (free.Port != address.Port) terminal.Error.WriteLine($"Port {address.Port} is taken by {TakenPort.HolderOf(address.Port) ?? "another program"}: the demonstration takes {free.Port}.");
        return free;
    }

    private static int Refuse(Terminal terminal, string why)
    {
        terminal.Error.WriteLine($"abaxial: the clinic cannot listen: {why.TrimEnd('.')}.");
        terminal.Error.WriteLine("It does not move to another address by itself: telephones and field devices keep the one that they were paired with, and what they have");
        terminal.Error.WriteLine("queued would not arrive. Stop the other program, or say another address with --address and pair the devices again.");
        return ExitCode.Unavailable;
    }
}

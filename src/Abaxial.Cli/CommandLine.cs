using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.IO.Pipes;
using Abaxial.Knowledge;

namespace Abaxial.Cli;

/// <summary>Parses the arguments, runs the command that they name, and turns whatever goes wrong into a message and an exit code.</summary>
internal static class CommandLine
{
    public static int Run(IReadOnlyList<string> args, Terminal terminal, params IEnumerable<Func<Terminal, Command>> commands)
    {
        try
        {
            return Invoke(args, terminal, commands);
        }
        catch (UsageException problem)
        {
            terminal.Error.WriteLine($"abaxial: {problem.Message}");
            return ExitCode.Usage;
        }
        catch (Exception problem) when (terminal.Out is PipeStream pipe && IsEndOfReader(problem, pipe))
        {
            return ExitCode.Done; // Whoever read the answers has enough of them.
        }
        catch (IOException problem)
        {
            terminal.Error.WriteLine($"abaxial: reading or writing failed: {problem.Message.ReplaceLineEndings(" ")}");
            return ExitCode.Fault;
        }
#pragma warning disable CA1031 // The last place that can keep a stack trace from the person at the terminal.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            terminal.Error.WriteLine($"abaxial: a fault of the program ({fault.GetType().Name}): {fault.Message.ReplaceLineEndings(" ")}");
            return ExitCode.Fault;
        }
        finally
        {
            terminal.Error.Flush();
        }
    }

    /// <summary>The reader of a pipe has gone: the system says so by "broken pipe" (32) or, where the pipe is a pair of sockets, by "connection reset" (104); later writes find the pipe closed.</summary>
    private static bool IsEndOfReader(Exception problem, PipeStream pipe) =>
        problem is IOException or InvalidOperationException
        && (!pipe.IsConnected || problem.HResult is 32 or 104 || problem.InnerException is System.Net.Sockets.SocketException);

    private static int Invoke(IReadOnlyList<string> args, Terminal terminal, IEnumerable<Func<Terminal, Command>> commands)
    {
        var root = new RootCommand("Weighs what was seen on a tomato or potato plant: is it late blight, what else could it be, what to look at next. Keeps samples in a ledger.");
        root.Directives.Clear();
        foreach (var create in commands) root.Add(create(terminal));
        Dress(root, terminal);

        // The parser takes a first [word] for a directive to itself; here it is no command.
        if (args is [['[', ..], ..]) args = ["--", .. args];
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0 && parsed.Action is not ExamplesAction) return Refuse(parsed, terminal.Error);
        using var output = terminal.Writer();
        return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null, Output = output, Error = terminal.Error });
    }

    private static int Refuse(ParseResult parsed, TextWriter error)
    {
        var command = parsed.CommandResult.Command;
        if (parsed.UnmatchedTokens.Count > 0) error.WriteLine($"abaxial: there is no command or option '{parsed.UnmatchedTokens[0]}'.");
        else if (command.Subcommands.Count > 0) error.WriteLine($"abaxial: say what to do: {string.Join(", ", command.Subcommands.Select(sub => sub.Name))}.");
        else error.WriteLine($"abaxial: {parsed.Errors[0].Message}");
        error.WriteLine($"See: {$"abaxial {PathOf(command)}".TrimEnd()} --help");
        return ExitCode.Usage;
    }

    /// <summary>Gives help its examples and the version its knowledge.</summary>
    private static void Dress(RootCommand root, Terminal terminal)
    {
        foreach (var option in root.Options)
        {
            if (option is HelpOption help) help.Action = new ExamplesAction((HelpAction)help.Action!);
            if (option is VersionOption version) version.Action = new VersionAction(terminal);
        }
    }

    /// <summary>The words that name a command, without the program's.</summary>
    public static string PathOf(Command command)
    {
        var names = new List<string>();
        for (Symbol? at = command; at is not (null or RootCommand); at = at.Parents.FirstOrDefault()) names.Insert(0, at.Name);
        return string.Join(' ', names);
    }

    private sealed class VersionAction(Terminal terminal) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            using var output = terminal.Writer();
            output.WriteLine($"abaxial {typeof(CommandLine).Assembly.GetName().Version?.ToString(3)}");
            output.WriteLine($"knowledge {BuiltIn.Solanum().Id}");
            return ExitCode.Done;
        }
    }
}

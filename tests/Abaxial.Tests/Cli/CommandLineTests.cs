using System.CommandLine;
using Abaxial.Cli;
using Abaxial.Knowledge;

namespace Abaxial.Tests.Cli;

public sealed class CommandLineTests
{
    [Fact]
    public void Version_names_the_program_and_its_knowledge()
    {
        using var cli = new CliRun();
        var result = cli.Run("--version");
        Assert.Equal(0, result.ExitCode);
        Assert.Equal([$"abaxial {typeof(CommandLine).Assembly.GetName().Version!.ToString(3)}", $"knowledge {BuiltIn.Solanum().Id}"], result.Lines);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("weigh", "--help")]
    [InlineData("knowledge", "--help")]
    [InlineData("knowledge", "check", "-h")]
    [InlineData("knowledge", "show", "--help")]
    [InlineData("knowledge", "diff", "--help")]
    [InlineData("knowledge", "trial", "--help")]
    public void Help_of_every_command_calls_the_program_by_its_name_and_gives_examples(params string[] args)
    {
        using var cli = new CliRun();
        var result = cli.Run(args);
        Assert.Equal(0, result.ExitCode);
        Assert.Empty(result.Error);
        Assert.Contains($"Usage:\n  {string.Join(' ', args[..^1].Prepend("abaxial"))}", result.Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains("Examples:", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("abaxial --help")]
    [InlineData("abaxial --help", "frobnicate")]
    [InlineData("abaxial knowledge --help", "knowledge")]
    [InlineData("abaxial knowledge show --help", "knowledge", "show")]
    [InlineData("abaxial --help", "[diagram]", "weigh")]
    public void An_unknown_or_missing_command_exits_with_64_and_points_to_the_help(string help, params string[] args)
    {
        using var cli = new CliRun();
        var result = cli.Run(args);
        Assert.Equal(64, result.ExitCode);
        Assert.Empty(result.Out);
        Assert.Contains($"See: {help}", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_of_the_program_exits_with_1_and_one_line_without_a_stack_trace()
    {
        using var error = new StringWriter { NewLine = "\n" };
        var terminal = new Terminal { In = Stream.Null, Out = Stream.Null, Error = error };
        int exitCode = CommandLine.Run(["break"], terminal, Breaking);
        Assert.Equal(1, exitCode);
        Assert.Equal("abaxial: a fault of the program (InvalidOperationException): Two lines of trouble.\n", error.ToString());
    }

    private static Command Breaking(Terminal terminal)
    {
        var command = new Command("break", "Fails.");
        command.SetAction(_ => terminal.In == Stream.Null ? throw new InvalidOperationException("Two lines\nof trouble.") : 0);
        return command;
    }
}

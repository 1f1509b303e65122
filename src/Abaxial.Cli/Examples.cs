using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Abaxial.Cli;

/// <summary>Examples that stand under the help of a command.</summary>
internal static class Examples
{
    private static readonly Dictionary<string, string[]> ByCommand = new(StringComparer.Ordinal)
    {
        [""] =
        [
            "abaxial weigh case.json                     the answer for people",
            "abaxial weigh case.json --json              one JSON document",
            "abaxial weigh - --json < cases.jsonl        a stream: a case a line in, an answer a line out, in order",
            "abaxial weather station.csv                 what the weather models say of each day",
            "abaxial knowledge show late-blight          what is known of a cause",
            "abaxial knowledge check knowledge/solanum   what is wrong, or how much there is",
        ],
        ["weigh"] =
        [
            "abaxial weigh case.json",
            "abaxial weigh case.json --flat-prior        as if every cause were equally common beforehand",
            "abaxial weigh monday/*.json --json          several cases, a line each, in the order given",
            "abaxial weigh - --json < cases.jsonl        a stream; a refused case is answered by a refusal in its place",
            "",
            "Exit code: 0 every case answered, 2 some refused, 64 usage or a file that cannot be read, 1 a fault of the program.",
        ],
        ["serve"] =
        [
            "abaxial serve                               the store in the folder store, for this machine alone",
            "abaxial serve --demo                        invented samples in a store that goes when it ends",
            "abaxial serve --address https://0.0.0.0:5171 --public-url https://clinic.example:5171 --certificate clinic.pfx",
            "abaxial serve --address http://10.0.0.5:5171 --public-url https://clinic.example --proxy 10.0.0.7",
            "",
            "Exit code: 0 stopped, 64 usage or a store that cannot be opened, 69 the port is taken, 1 a fault of the program.",
        ],
        ["weather"] =
        [
            "abaxial weather demo/stations/sallowmere.csv --from 2026-06-01",
            "abaxial weather station.csv.gz --zone Europe/Dublin --cultivar susceptible --sprayed 2026-07-01",
            "abaxial weather airport.csv --map airport.yaml --model hutton --model smith --json",
            "abaxial weather station.csv --set severity-wallin.edges=fahrenheit",
            "abaxial weather station.csv --prior --host tomato --noticed 2026-07-14    priorFactors for a case file",
            "abaxial weather station.csv --arrival lesions.yaml                        when it came",
            "abaxial weather station.csv --sprays sprays.csv --forecast ahead.csv      how protection stands",
            "",
            "Exit code: 0 done, 2 the record was refused, 64 usage or a file that cannot be read, 1 a fault of the program.",
        ],
        ["knowledge"] =
        [
            "abaxial knowledge check",
            "abaxial knowledge show pycnidia --host tomato",
        ],
        ["knowledge check"] =
        [
            "abaxial knowledge check                     the knowledge of this program",
            "abaxial knowledge check knowledge/solanum   a folder, with file and line of every problem",
        ],
        ["knowledge show"] =
        [
            "abaxial knowledge show late-blight          a cause and its rows, with sources",
            "abaxial knowledge show pycnidia             a character across all causes, for comparing",
        ],
        ["knowledge diff"] =
        [
            "abaxial knowledge diff built-in knowledge/solanum",
            "abaxial knowledge diff old new --cases cases",
        ],
        ["knowledge trial"] =
        [
            "abaxial knowledge trial                     the textbook cases in the folder trials",
            "abaxial knowledge trial trials --markdown > docs/trials.md",
        ],
        ["ledger"] =
        [
            "abaxial ledger import demo/cases/*.json --store store",
            "abaxial ledger list --store store",
            "abaxial ledger show 26-0001-D",
        ],
        ["ledger refresh"] =
        [
            "abaxial ledger refresh                      of the store in the folder store",
        ],
        ["ledger check"] =
        [
            "abaxial ledger check                        the store in the folder store",
            "",
            "Exit code: 0 all fits, 2 something does not, 64 usage or no store there.",
        ],
        ["backup"] =
        [
            "abaxial backup monday.tar --store store     while the store is in use",
        ],
        ["restore"] =
        [
            "abaxial restore monday.tar --store again    into a folder that is new or empty",
        ],
    };

    public static IEnumerable<string> Of(Command command) => ByCommand.GetValueOrDefault(CommandLine.PathOf(command), []);
}

/// <summary>Help, with examples under it.</summary>
internal sealed class ExamplesAction(HelpAction help) : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        var configuration = parseResult.InvocationConfiguration;
        var output = configuration.Output;
        using var text = new StringWriter();
        configuration.Output = text;
        int result = help.Invoke(parseResult);
        configuration.Output = output;
        output.Write(text.ToString().TrimEnd().Replace($"  {RootCommand.ExecutableName}", "  abaxial", StringComparison.Ordinal));
        output.WriteLine();
        var examples = Examples.Of(parseResult.CommandResult.Command).ToList();
        if (examples.Count == 0) return result;
        output.WriteLine();
        output.WriteLine("Examples:");
        foreach (string line in examples) output.WriteLine(line.Length == 0 ? "" : $"  {line}");
        return result;
    }
}

using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Benchmarks.Workload;

/// <summary>The knowledge with fewer or more causes of tomato than it has, to see what an answer costs as it grows.</summary>
internal static class KnowledgeOfSize
{
    /// <summary>Late blight and its twelve nearest.</summary>
    private static readonly HashSet<string> Nearest =
    [
        "late-blight", "early-blight", "brown-leaf-spot", "septoria-leaf-spot", "gray-mold", "leaf-mold", "bacterial-canker", "bacterial-spot", "bacterial-soft-rot",
        "spotted-wilt", "blossom-end-rot", "chemical-burn", "drought-heat-scorch",
    ];

    /// <summary>How many causes of tomato the knowledge has as it stands.</summary>
    public static int AsItStands { get; } = Read().Causes.Count(IsOfTomato);

    /// <summary>The thirteen nearest, all as they stand, or these with invented ones beside them that are copies of theirs with shifted chances.</summary>
    public static KnowledgeBase Of(int causes)
    {
        var document = Read();
        CauseDocument[] tomato = [.. document.Causes.Where(IsOfTomato)];
        var chosen = causes == Nearest.Count ? [.. tomato.Where(cause => Nearest.Contains(cause.Id))] : tomato.ToList();
        for (int copy = 0; chosen.Count < causes; copy++) chosen.Add(Shifted(tomato[copy % tomato.Length], copy));
        if (chosen.Count != causes) throw new ArgumentOutOfRangeException(nameof(causes), causes, $"Accepted: {Nearest.Count}, or {AsItStands} or more.");

        HashSet<string> ids = [.. chosen.Select(cause => cause.Id)];
        var pairs = document.Pairs with { ByCause = [.. document.Pairs.ByCause.Where(pair => pair.Causes.All(ids.Contains))] };
        var ofTomato = document with
        {
            Hosts = ["tomato"],
            Pairs = pairs,
            Causes = [.. chosen.Select(cause => cause with { Hosts = ["tomato"], Rows = cause.Rows.Where(row => IsOfTomato(row.Key, document)).ToDictionary() })],
        };
        return KnowledgeBuilder.Build(ofTomato, new string('0', 64)).OrThrow();
    }

    private static KnowledgeDocument Read() => JsonSerializer.Deserialize(BuiltIn.SolanumBytes(), KnowledgeJson.Default.KnowledgeDocument)!;

    private static bool IsOfTomato(CauseDocument cause) => cause.Hosts.Contains("tomato");

    /// <summary>Whether a row, by its key, is about a character that tomato has, and not of another host alone.</summary>
    private static bool IsOfTomato(string key, KnowledgeDocument document)
    {
        string[] hosts = document.Characters.First(character => character.Id == key.Split('/', '@')[0]).Hosts;
        return (hosts.Length == 0 || hosts.Contains("tomato")) && (!key.Contains('@', StringComparison.Ordinal) || key.EndsWith("@tomato", StringComparison.Ordinal));
    }

    private static CauseDocument Shifted(CauseDocument cause, int copy)
    {
        var random = new Random(copy);
        double Shift(double chance)
        {
            double odds = chance / (1 - chance) * Math.Exp((random.NextDouble() * 3) - 1.5);
            return odds / (1 + odds);
        }

        RowDocument ShiftedRow(RowDocument row) => row.Is is null
            ? row with { Mean = row.Mean * (0.8 + (0.4 * random.NextDouble())) }
            : row with { Is = row.Is.ToDictionary(state => state.Key, state => Shift(state.Value)) };
        return cause with { Id = $"{cause.Id}-copy-{copy}", Rows = cause.Rows.ToDictionary(row => row.Key, row => ShiftedRow(row.Value)) };
    }
}

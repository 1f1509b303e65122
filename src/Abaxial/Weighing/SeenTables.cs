using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>How often a clinic sees each cause of a host: the weight alone, and the factors by system, stage and month of the northern hemisphere (0 is January). One where a cause says nothing.</summary>
internal sealed class SeenTables
{
    public SeenTables(HostTable table)
    {
        var document = table.Knowledge.Document;
        Weights = [.. table.Causes.Select(cause => cause.Seen.Weight[table.Host])];
        BySystem = document.Systems.ToDictionary(system => system, system => table.Causes.Select(cause => cause.Seen.Systems.GetValueOrDefault(system, 1)).ToArray(), StringComparer.Ordinal);
        ByStage = document.Stages.ToDictionary(stage => stage, stage => table.Causes.Select(cause => cause.Seen.Stages.GetValueOrDefault(stage, 1)).ToArray(), StringComparer.Ordinal);
        ByMonth = [.. Enumerable.Range(0, 12).Select(month => table.Causes.Select(cause => cause.Seen.Months.Length == 12 ? cause.Seen.Months[month] : 1).ToArray())];
    }

    public double[] Weights { get; }

    public Dictionary<string, double[]> BySystem { get; }

    public Dictionary<string, double[]> ByStage { get; }

    public double[][] ByMonth { get; }
}

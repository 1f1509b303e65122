using Abaxial.Benchmarks.PlainMatrix;
using Abaxial.Benchmarks.Workload;
using Abaxial.Weighing;
using BenchmarkDotNet.Attributes;

namespace Abaxial.Benchmarks;

/// <summary>What an answer costs as the knowledge grows: tomato with its thirteen nearest causes, with all, and with a hundred.</summary>
public class GrowthBenchmarks
{
    private static readonly WeighOptions Bare = new() { Bands = false, NextLooks = false };

    private Weigher weigher = null!;
    private Case weighed = null!;
    private PlainTables plain = null!;

    [ParamsSource(nameof(Sizes))]
    public int Causes { get; set; }

    public static IEnumerable<int> Sizes => [13, KnowledgeOfSize.AsItStands, 100];

    [GlobalSetup]
    public void Prepare()
    {
        var knowledge = KnowledgeOfSize.Of(Causes);
        weigher = new Weigher(knowledge);
        weighed = IslandCases.Read("02-garden-septoria", knowledge);
        plain = PlainTables.Of(weigher.Explain(weighed, flatPrior: false, withContext: true));
        Agreement.Check(weigher.Weigh(weighed), plain);
    }

    [Benchmark(Description = "plain: chances, evidence, bands", Baseline = true)]
    public (double[][], (double, double)[]) PlainBands() => (plain.Evidence(), plain.Bands());

    [Benchmark(Description = "answer without bands and next looks")]
    public Answer BareAnswer() => weigher.Weigh(weighed, Bare);

    [Benchmark(Description = "whole answer")]
    public Answer WholeAnswer() => weigher.Weigh(weighed);
}

using Abaxial.Benchmarks.PlainMatrix;
using Abaxial.Benchmarks.Workload;
using Abaxial.Knowledge;
using Abaxial.Weighing;
using BenchmarkDotNet.Attributes;

namespace Abaxial.Benchmarks;

/// <summary>One answer on one core, beside the plain matrix version of the same tables, which knows no next looks.</summary>
public class AnswerBenchmarks
{
    private static readonly WeighOptions WithBands = new() { NextLooks = false };
    private static readonly WeighOptions Bare = new() { Bands = false, NextLooks = false };

    private Weigher weigher = null!;
    private Case weighed = null!;
    private PlainTables plain = null!;

    /// <summary>A tomato leaf and potato tubers with twelve looks each, and a potato leaf on which nothing is settled.</summary>
    [Params("02-garden-septoria", "14-pink-rot", "08-spray-burn-or-not")]
    public string Case { get; set; } = "";

    [GlobalSetup]
    public void Prepare()
    {
        var knowledge = BuiltIn.Solanum();
        weigher = new Weigher(knowledge);
        weighed = IslandCases.Read(Case, knowledge);
        plain = PlainTables.Of(weigher.Explain(weighed, flatPrior: false, withContext: true));
        Agreement.Check(weigher.Weigh(weighed), plain);
    }

    [Benchmark(Description = "plain: chances")]
    public double[] PlainChances() => plain.Marginals(plain.Weigh());

    [Benchmark(Description = "chances")]
    public double[] Chances()
    {
        var posterior = weigher.Explain(weighed, flatPrior: false, withContext: true);
        return posterior.Marginals(posterior.Probability);
    }

    [Benchmark(Description = "plain: chances, evidence")]
    public double[][] PlainEvidence() => plain.Evidence();

    [Benchmark(Description = "answer without bands and next looks")]
    public Answer BareAnswer() => weigher.Weigh(weighed, Bare);

    [Benchmark(Description = "plain: chances, evidence, bands", Baseline = true)]
    public (double[][], (double, double)[]) PlainBands() => (plain.Evidence(), plain.Bands());

    [Benchmark(Description = "answer without next looks")]
    public Answer AnswerWithBands() => weigher.Weigh(weighed, WithBands);

    [Benchmark(Description = "whole answer")]
    public Answer WholeAnswer() => weigher.Weigh(weighed);
}

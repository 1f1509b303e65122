using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Abaxial.Benchmarks;

/// <summary>How the benchmarks are run: short, in this process, with what is allocated.</summary>
internal static class Measuring
{
    public static IConfig Config => ManualConfig.CreateEmpty()
        .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance).WithIterationCount(5))
        .AddDiagnoser(MemoryDiagnoser.Default)
        .AddColumnProvider(DefaultColumnProviders.Instance)
        .AddColumn(StatisticColumn.Min)
        .HideColumns(Column.Job, Column.Toolchain, Column.IterationCount, Column.LaunchCount, Column.WarmupCount, Column.Gen0, Column.Gen1, Column.Gen2, Column.RatioSD, Column.Error, Column.AllocRatio)
        .AddExporter(MarkdownExporter.GitHub)
        .AddLogger(ConsoleLogger.Default)
        .WithOptions(ConfigOptions.DisableLogFile);
}

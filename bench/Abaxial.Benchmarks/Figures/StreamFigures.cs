using System.Diagnostics;
using Abaxial.Benchmarks.Workload;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Benchmarks.Figures;

/// <summary>A long stream of the island's cases on two cores: read, weighed in full, written.</summary>
internal static class StreamFigures
{
    private const int Cores = 2;
    private const int Rounds = 5;
    private const int CasesPerRound = 4_000;

    public static void Print()
    {
        var knowledge = BuiltIn.Solanum();
        var weigher = new Weigher(knowledge);
        byte[][] lines = IslandCases.Lines();
        Run(lines, knowledge, weigher, lines.Length * 40);
        Console.WriteLine(Machine.Describe());
        Console.WriteLine($"{Cores} cores, {lines.Length} cases over and over");
        Console.WriteLine("| answers so far | answers a second | processor time an answer (ms) | allocated an answer (KiB) | kept on the heap (MiB) | working set (MiB) |");
        Console.WriteLine("|---:|---:|---:|---:|---:|---:|");
        for (int round = 1; round <= Rounds; round++)
        {
            long allocated = GC.GetTotalAllocatedBytes(precise: true), start = Stopwatch.GetTimestamp();
            var busy = Environment.CpuUsage.TotalTime; // beside the clock: what it would take on a machine with nothing else to do
            Run(lines, knowledge, weigher, CasesPerRound);
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            busy = Environment.CpuUsage.TotalTime - busy;
            allocated = GC.GetTotalAllocatedBytes(precise: true) - allocated;
            double kept = GC.GetTotalMemory(forceFullCollection: true) / 1048576.0, held = Environment.WorkingSet / 1048576.0;
            Console.WriteLine($"| {round * CasesPerRound} | {Machine.Digits(CasesPerRound / seconds)} | {Machine.Digits(busy.TotalMilliseconds / CasesPerRound)} | {Machine.Digits(allocated / 1024.0 / CasesPerRound)} | {Machine.Digits(kept)} | {Machine.Digits(held)} |");
        }
    }

    private static void Run(byte[][] lines, KnowledgeBase knowledge, Weigher weigher, int cases) =>
        Parallel.For(0, cases, new ParallelOptions { MaxDegreeOfParallelism = Cores }, place => AnswerWriter.ToUtf8(weigher.Weigh(IslandCases.Read(lines[place % lines.Length], knowledge))));
}

using System.Text;
using Abaxial.Benchmarks.Workload;
using Abaxial.Knowledge;
using Abaxial.Weighing;
using BenchmarkDotNet.Attributes;

namespace Abaxial.Benchmarks;

/// <summary>Reading a case file and writing its answer.</summary>
public class TextBenchmarks
{
    private readonly KnowledgeBase knowledge = BuiltIn.Solanum();
    private readonly byte[] text = Encoding.UTF8.GetBytes(IslandCases.Text("02-garden-septoria"));
    private readonly byte[] refused = Encoding.UTF8.GetBytes(IslandCases.Text("02-garden-septoria").Replace("\"tomato\"", "\"vine\"", StringComparison.Ordinal));
    private Answer answer = null!;

    [GlobalSetup]
    public void Prepare() => answer = new Weigher(knowledge).Weigh(IslandCases.Read(text, knowledge));

    [Benchmark(Description = "read a case of 12 looks")]
    public CaseReading Read() => CaseReader.Read(text, knowledge);

    [Benchmark(Description = "refuse it for its host")]
    public CaseReading Refuse() => CaseReader.Read(refused, knowledge);

    [Benchmark(Description = "write its answer")]
    public byte[] Write() => AnswerWriter.ToUtf8(answer);

    [Benchmark(Description = "read the knowledge")]
    public KnowledgeBase Know() => BuiltIn.Solanum();
}

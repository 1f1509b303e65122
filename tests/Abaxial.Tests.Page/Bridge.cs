using System.Diagnostics;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Page;

/// <summary>What JavaScript can call.</summary>
[SupportedOSPlatform("browser")]
internal static partial class Bridge
{
    private static readonly KnowledgeBase Knowledge = BuiltIn.Solanum();
    private static readonly Weigher Weigher = new(Knowledge);

    /// <summary>Weighs a case: the answer, or the refusal as of the first case of a stream.</summary>
    [JSExport]
    internal static string Weigh(string caseJson)
    {
        var reading = CaseReader.Read(Encoding.UTF8.GetBytes(caseJson), Knowledge);
        return Encoding.UTF8.GetString(reading.IsRefused ? RefusalWriter.ToUtf8(1, reading.Problems) : AnswerWriter.ToUtf8(Weigher.Weigh(reading.Case)));
    }

    /// <summary>Milliseconds that weighing one case takes, on average of so many times after one that does not count; reading and writing are not in it.</summary>
    /// <exception cref="ArgumentException">The case is refused.</exception>
    [JSExport]
    internal static double MillisecondsPerAnswer(string caseJson, int times, bool bands, bool nextLooks)
    {
        var weighed = CaseReader.Read(Encoding.UTF8.GetBytes(caseJson), Knowledge).Case ?? throw new ArgumentException("The case is refused.", nameof(caseJson));
        var options = new WeighOptions { Bands = bands, NextLooks = nextLooks };
        Weigher.Weigh(weighed, options);
        long start = Stopwatch.GetTimestamp();
        for (int time = 0; time < times; time++) Weigher.Weigh(weighed, options);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds / times;
    }
}

using System.Text;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Browser.Tests;

/// <summary>The library as it runs in this process, not in the browser.</summary>
internal static class NativeLibrary
{
    public static KnowledgeBase Knowledge { get; } = BuiltIn.Solanum();

    private static readonly Weigher Weigher = new(Knowledge);

    /// <summary>The bytes of the answer, or of the refusal as of the first case of a stream.</summary>
    public static byte[] Weigh(string caseJson)
    {
        var reading = CaseReader.Read(Encoding.UTF8.GetBytes(caseJson), Knowledge);
        return reading.IsRefused ? RefusalWriter.ToUtf8(1, reading.Problems) : AnswerWriter.ToUtf8(Weigher.Weigh(reading.Case));
    }
}

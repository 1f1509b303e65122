using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Data.Search;

/// <summary>The knowledge that samples are read and weighed with where a store keeps a row of them.</summary>
/// <param name="Knowledge">The knowledge.</param>
/// <param name="Weigher">Weighs with it.</param>
public sealed record SampleReader(KnowledgeBase Knowledge, Weigher Weigher)
{
    private static readonly Lazy<SampleReader> Solanum = new(() => Of(Abaxial.Knowledge.BuiltIn.Solanum()));

    /// <summary>The knowledge that was compiled into the program, read once.</summary>
    public static SampleReader BuiltIn => Solanum.Value;

    public static SampleReader Of(KnowledgeBase knowledge) => new(knowledge, new Weigher(knowledge));
}

using System.Collections.Immutable;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>Reads the looks of a case file, and settles what was measured where the file leaves that to the spores that were seen.</summary>
internal static class LooksReader
{
    public static ImmutableArray<Look> Read(CaseMembers parent, KnowledgeBase knowledge, string? host)
    {
        if (parent.List("looks", isRequired: true) is not { } list) return [];
        string at = parent.Below("looks");
        if (list.GetArrayLength() > CaseLimits.Looks)
        {
            parent.Problems.Add(at, $"{list.GetArrayLength()} looks", $"at most {CaseLimits.Looks} looks");
            return [];
        }

        var reader = new LookReader(knowledge, host, parent.Problems);
        var looks = ImmutableArray.CreateBuilder<Look?>();
        foreach (var item in list.EnumerateArray())
        {
            looks.Add(reader.Read(item, CaseProblems.Below(at, looks.Count)));
            if (parent.Problems.IsFull) return [];
        }

        return SettleFacets(looks.ToImmutable(), at, host, parent.Problems);
    }

    private static ImmutableArray<Look> SettleFacets(ImmutableArray<Look?> looks, string at, string? host, CaseProblems problems)
    {
        var settled = ImmutableArray.CreateBuilder<Look>(looks.Length);
        var recordedOf = new Dictionary<Character, int[]>();
        bool isWhole = looks.All(look => look is not null);
        for (int i = 0; i < looks.Length; i++)
        {
            if (looks[i] is not { } look) continue;
            if (look is not { Facet: null, Character: { OfOnly: null, OfCharacter: { } kinds } })
            {
                settled.Add(look);
                continue;
            }

            if (!recordedOf.TryGetValue(kinds, out int[]? recorded)) recordedOf.Add(kinds, recorded = Recorded(looks, kinds));
            if (recorded.Length == 1) look = look with { Facet = kinds.States[recorded[0]] };
            else if (isWhole && !look.IsUnsure) problems.AddMissing($"{at}/{i}/of", recorded.Length > 1 ? [.. recorded.Select(kind => kinds.States[kind])] : LookReader.Kinds(kinds, host));
            settled.Add(look);
        }

        return settled.ToImmutable();
    }

    /// <summary>The kinds that any look says were seen.</summary>
    private static int[] Recorded(ImmutableArray<Look?> looks, Character kinds) =>
        [.. looks.Where(look => look?.Character == kinds).SelectMany(look => look!.States).Where(state => state != kinds.EmptyState).Distinct().Order()];
}

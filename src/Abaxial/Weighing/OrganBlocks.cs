using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>Finds, for every organ of a host, how a case speaks of it.</summary>
internal static class OrganBlocks
{
    public static List<OrganBlock> Of(CaseReadings readings, Hypotheses hypotheses)
    {
        var table = hypotheses.Table;
        var organs = table.Knowledge.FindCharacter(CaseReadings.OrgansAffected)!;
        var question = table.Find(organs);
        var reports = readings.Find(CaseReadings.OrgansAffected)?.Readings[0];
        var only = table.Knowledge.Document.OnlyOrgan;
        string? onlyOrgan = OnlyOrgan(readings.Weighed, only);
        var blocks = new List<OrganBlock>();
        foreach (int state in question.States)
        {
            string organ = organs.States[state];
            var strands = readings.Strands.FindAll(strand => strand.Organ == organ);
            bool shown = strands.Exists(strand => strand.Readings.Exists(one => one.ShowsSomething));
            bool reported = reports is not null && reports.Named[state];
            bool counts = reports is not null && (onlyOrgan is null || organ == onlyOrgan || reported);
            var block = new OrganBlock
            {
                Organ = organ,
                State = state,
                Attacks = Attacks(question, state, table, organ == onlyOrgan ? only : null),
                ReportedIfNot = counts ? reports!.Absent[state] : 1,
                ReportedIfSo = counts ? reports!.Present[state] : 1,
                LooksIfNot = shown ? 0 : LooksIfSound(strands),
                IsAffected = shown || reported,
            };
            block.Strands.AddRange(strands);
            blocks.Add(block);
        }

        return blocks;
    }

    /// <summary>The same organ with fewer looks at it.</summary>
    public static OrganBlock With(OrganBlock block, List<Strand> strands)
    {
        bool shown = strands.Exists(strand => strand.Readings.Exists(one => one.ShowsSomething));
        var reduced = new OrganBlock
        {
            Organ = block.Organ,
            State = block.State,
            Attacks = block.Attacks,
            ReportedIfNot = block.ReportedIfNot,
            ReportedIfSo = block.ReportedIfSo,
            LooksIfNot = shown ? 0 : LooksIfSound(strands),
            IsAffected = block.IsAffected,
        };
        reduced.Strands.AddRange(strands);
        return reduced;
    }

    /// <summary>The one organ that a sample of this system or stage has; null where there are several.</summary>
    public static string? OnlyOrgan(Case weighed, OnlyOrganDocument only) =>
        Of(only.Systems, weighed.System, weighed.Host) ?? Of(only.Stages, weighed.Stage, weighed.Host);

    private static string? Of(Dictionary<string, Dictionary<string, string>> organs, string? place, string host) =>
        place is null ? null : organs.GetValueOrDefault(place)?.GetValueOrDefault(host);

    private static double[] Attacks(Question question, int state, HostTable table, OnlyOrganDocument? only)
    {
        var attacks = new double[table.Causes.Length + 1];
        for (int cause = 0; cause < attacks.Length; cause++)
        {
            double chance = question.Chance(cause, state);
            // The sample came because that organ looked ill: a cause that can attack it has.
            attacks[cause] = only is not null && chance >= only.FromChance ? only.Chance : chance;
        }

        return attacks;
    }

    /// <summary>P(looks | the organ is sound), all of them having been answered with the empty state.</summary>
    private static double LooksIfSound(List<Strand> strands)
    {
        double product = 1;
        foreach (var strand in strands)
        {
            foreach (var one in strand.Readings)
            {
                if (one.IsStateWise)
                {
                    foreach (int state in one.Question.States) product *= one.Absent[state];
                }
                else
                {
                    product *= one.Present[strand.Character.EmptyState];
                }
            }
        }

        return product;
    }
}

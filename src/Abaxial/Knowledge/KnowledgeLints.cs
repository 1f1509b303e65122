namespace Abaxial.Knowledge;

/// <summary>What must hold of the content as a whole before it may be used.</summary>
internal static class KnowledgeLints
{
    public static IEnumerable<KnowledgeProblem> Run(KnowledgeBase knowledge)
    {
        foreach (string host in knowledge.Document.Hosts)
        {
            if (!knowledge.Subject.Hosts.Contains(host)) yield return new KnowledgeProblem($"causes/{knowledge.Subject.Id}", $"{host} does not have it.");
            var table = new HostTable(knowledge, host);
            int subject = table.IndexOf(knowledge.Subject);
            for (int cause = 0; cause < table.Causes.Length; cause++)
            {
                if (cause != subject && !Differ(table, cause, subject)) yield return new KnowledgeProblem($"causes/{table.Causes[cause].Id}", $"On {host} no character tells it from {knowledge.Subject.Id}.");
                for (int other = 0; other < cause; other++)
                {
                    if (!Differ(table, cause, other)) yield return new KnowledgeProblem($"causes/{table.Causes[cause].Id}", $"On {host} it has the same tables as {table.Causes[other].Id}.");
                }
            }
        }
    }

    /// <summary>Some row differs by a factor of two in some state, or some range by one standard deviation.</summary>
    private static bool Differ(HostTable table, int one, int other)
    {
        foreach (var question in table.Questions)
        {
            if (question.Character.IsMeasured)
            {
                if (question.Ranges[one] is { } a && question.Ranges[other] is { } b && Math.Abs(a.Mean - b.Mean) > Math.Max(a.Between, b.Between)) return true;
                continue;
            }

            for (int state = 0; state < question.StateCount; state++)
            {
                double a = question.Chance(one, state), b = question.Chance(other, state);
                if (a > 2 * b || b > 2 * a) return true;
            }
        }

        return false;
    }
}

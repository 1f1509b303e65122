using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Panel.Drawings;
using Abaxial.Speaking;

namespace Abaxial.Web.Causes;

/// <summary>A drawing of something that a cause shows often.</summary>
public sealed record Shown(Row Row, int State)
{
    public string StateId => Row.Character.States[State];
}

/// <summary>A cause made ready for its page.</summary>
public sealed class CauseShown(Cause cause, KnowledgeBase knowledge)
{
    /// <summary>What is drawn at the head of the page is there at least this often.</summary>
    private const double Often = 0.5;
    private const int MostDrawn = 8;

    /// <summary>Circumstances: told apart from what is seen on the plant.</summary>
    private static readonly string[] Weather = ["recent-weather", "watering"];

    private static readonly string[] Circumstances = ["organs-affected", "field-pattern", "leaf-position", .. Weather];

    public Cause Cause => cause;

    /// <summary>What the weather and water must be like.</summary>
    public IEnumerable<Row> WeatherRows => cause.Rows.Where(row => Weather.Contains(row.Character.Id, StringComparer.Ordinal));

    /// <summary>All other rows, by the organ that they describe, in the order of the characters.</summary>
    public IEnumerable<IGrouping<string, Row>> RowsByOrgan => cause.Rows
        .Where(row => !Weather.Contains(row.Character.Id, StringComparer.Ordinal))
        .OrderBy(row => row.Character.Index)
        .GroupBy(row => row.Character.Organ ?? "");

    /// <summary>The drawings that show the cause: what it shows of the organs that it attacks, in the order of the characters.</summary>
    public ImmutableArray<Shown> Drawn
    {
        get
        {
            var organs = cause.Rows.FirstOrDefault(row => row.Character.Id == "organs-affected");
            return
            [
                .. cause.Rows
                    .Where(row => row.Character is { IsMeasured: false } && !Circumstances.Contains(row.Character.Id, StringComparer.Ordinal) && IsAttacked(row.Character.Organ, organs) && MeansSomething(row))
                    .OrderBy(row => row.Character.Index)
                    .SelectMany(row => RowWords.States(row, knowledge).Take(1).Where(state => row.Chances[state] >= Often && state != row.Character.EmptyState && !IsAbsence(row.Character.States[state])).Select(state => new Shown(row, state)))
                    .Where(shown => StateDrawings.Find(shown.Row.Character.Id, shown.StateId) is not null)
                    .DistinctBy(shown => (shown.Row.Character, shown.State))
                    .Take(MostDrawn),
            ];
        }
    }

    /// <summary>The publications that its rows name, each with how many rows name it.</summary>
    public ImmutableArray<(Source Source, int Rows)> Sources =>
        [.. cause.Rows.SelectMany(row => row.Sources).CountBy(source => source).Select(pair => (pair.Key, pair.Value)).OrderBy(pair => pair.Key.Authors, StringComparer.Ordinal).ThenBy(pair => pair.Key.Title, StringComparer.Ordinal)];

    private static bool IsAbsence(string state) => state is "absent" or "none" or "no";

    /// <summary>A look that means something only where another showed something is drawn only where that one commonly does.</summary>
    private bool MeansSomething(Row row) => row.Character.WhenParent is not { } parent
        || (cause.Rows.FirstOrDefault(other => other.Character == parent) is { } shows && row.Character.WhenStates.Sum(state => shows.Chances[state]) >= Often);

    private static bool IsAttacked(string? organ, Row? organs) => organ is null || organs is null || (organs.Character.StateIndex(organ) is >= 0 and var place && organs.Chances[place] >= Often / 2);
}

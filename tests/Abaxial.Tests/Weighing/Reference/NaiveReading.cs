using System.Globalization;
using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>The chance of a reading given what is truly there, straight from the reading tables.</summary>
internal sealed class NaiveReading(KnowledgeDocument document, NaiveLook[] counted)
{
    private readonly ReadingDocument tables = document.Reading;
    private readonly Dictionary<(int Look, string State, bool IsThere), double> known = [];

    /// <summary>The chance of naming another than the true state of a one-state character.</summary>
    public double Error(NaiveLook look) => Math.Min(tables.Most.Error!.Value, tables.Observers[look.By] * (Own(look)?.Error ?? tables.Ways[look.How].Error!.Value));

    /// <summary>The chance that a look names this state, or that it does not, as it did.</summary>
    public double OfState(NaiveLook look, string state, bool isThere)
    {
        if (!known.TryGetValue((look.Place, state, isThere), out double chance)) known.Add((look.Place, state, isThere), chance = WorkOut(look, state, isThere));
        return chance;
    }

    private double WorkOut(NaiveLook look, string state, bool isThere)
    {
        double named = isThere ? 1 - ((1 - Detects(look, state)) * (1 - NamesFalsely(look, state))) : NamesFalsely(look, state);
        return look.States.Contains(state) ? named : 1 - named;
    }

    /// <summary>The chance that a look names this state because it is there.</summary>
    public double Detects(NaiveLook look, string state)
    {
        double miss = Math.Min(tables.Most.Miss!.Value, tables.Observers[look.By] * (Own(look)?.Miss ?? tables.Ways[look.How].Miss!.Value));
        double shows = Shows(look, state);
        if (tables.Hides.States.Contains(state) && look.Surface == "moist-chamber")
        {
            foreach (string over in look.States.Where(tables.Overgrowth.ContainsKey)) shows *= Curve(tables.Overgrowth[over].Leaves, HoursOf(look));
        }

        return shows * (1 - miss);
    }

    /// <summary>The chance that a look names this state though it is not there: by mistake, or because it grew on dead tissue in the chamber.</summary>
    public double NamesFalsely(NaiveLook look, string state)
    {
        double mistaken = Mistakes(look);
        double grows = look.Surface == "moist-chamber" && tables.Overgrowth.TryGetValue(state, out var over) ? Curve(over.Chance, HoursOf(look)) : 0;
        return 1 - ((1 - mistaken) * (1 - grows));
    }

    private double Mistakes(NaiveLook look)
    {
        if (look.Facet is not null && tables.StreamingFrom.TryGetValue(look.Facet, out var from) && from.False is { } given) return given;
        bool isCertain = look.Character.Sign && tables.CertainSigns.Observers.Contains(look.By) && !tables.CertainSigns.NotWays.Contains(look.How);
        return isCertain ? 0 : Math.Min(tables.Most.False!.Value, tables.Observers[look.By] * (Own(look)?.False ?? tables.Ways[look.How].False!.Value));
    }

    private NoiseDocument? Own(NaiveLook look) => tables.Characters.TryGetValue(look.Character.Id, out var ways) ? ways.GetValueOrDefault(look.How) : null;

    private double Shows(NaiveLook look, string state)
    {
        if (look.Surface is not { } surface) return 1;
        var row = tables.Shows.TryGetValue(state, out var own) && own.ContainsKey(surface) ? own : tables.Shows["otherwise"];
        var cell = row[surface];
        double hours = HoursOf(look) / (tables.Hides.States.Contains(state) ? tables.Slower.GetValueOrDefault(look.Character.Id, 1) : 1);
        double shown = cell.ValueKind == JsonValueKind.Number
            ? cell.GetDouble()
            : Curve(cell.EnumerateObject().ToDictionary(point => point.Name, point => point.Value.GetDouble()), hours);
        return tables.Hides.States.Contains(state) ? shown * Left(surface == "moist-chamber" ? tables.Hides.InChamber : tables.Hides.Otherwise) : shown;
    }

    /// <summary>What the tissue went through leaves this share of white growth to be seen.</summary>
    private double Left(Dictionary<string, Dictionary<string, double>> hides) => counted
        .SelectMany(look => look.States.Select(state => hides.TryGetValue(look.Character.Id, out var states) ? states.GetValueOrDefault(state, 1) : 1))
        .Append(1)
        .Min();

    private double HoursOf(NaiveLook look) => look.Hours ?? tables.ChamberHours;

    /// <summary>Linear between the points, level beyond them.</summary>
    private static double Curve(Dictionary<string, double> values, double hours)
    {
        var points = values.Select(pair => (Hours: double.Parse(pair.Key, CultureInfo.InvariantCulture), pair.Value)).OrderBy(point => point.Hours).ToList();
        if (hours <= points[0].Hours) return points[0].Value;
        for (int next = 1; next < points.Count; next++)
        {
            var (to, at) = (points[next], points[next - 1]);
            if (hours <= to.Hours) return at.Value + ((to.Value - at.Value) * ((hours - at.Hours) / (to.Hours - at.Hours)));
        }

        return points[^1].Value;
    }
}

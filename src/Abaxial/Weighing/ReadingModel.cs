using System.Globalization;
using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>Chances of misreading: naming another state, missing one that is there, naming one that is not.</summary>
internal readonly record struct Noise(double Error, double Miss, double False);

/// <summary>How much of white growth can be seen in this sample, in a chamber and outside it, for what the tissue went through.</summary>
internal readonly record struct Hiding(double InChamber, double Otherwise);

/// <summary>
/// How a look shows what is there: P(reading | true state) by way, observer, surface, hours in the chamber and state of the tissue, from the knowledge's
/// reading tables. It does not depend on the cause, so that readings are independent given the true state.
/// </summary>
internal sealed class ReadingModel
{
    private readonly ReadingDocument document;
    private readonly Dictionary<string, Curve[]> shows;
    private readonly Dictionary<string, (Curve Chance, Curve Leaves)> overgrowth;

    public ReadingModel(KnowledgeBase knowledge)
    {
        document = knowledge.Document.Reading;
        shows = document.Shows.ToDictionary(pair => pair.Key, pair => ReadSurfaces(pair.Value), StringComparer.Ordinal);
        overgrowth = document.Overgrowth.ToDictionary(pair => pair.Key, pair => (new Curve(pair.Value.Chance), new Curve(pair.Value.Leaves)), StringComparer.Ordinal);
    }

    /// <summary>The noise of a way and an observer for one character.</summary>
    public Noise NoiseOf(Character character, Way way, Observer observer, string? facet)
    {
        var usual = document.Ways[way.Word()];
        var own = document.Characters.GetValueOrDefault(character.Id)?.GetValueOrDefault(way.Word());
        var from = facet is null || character.IsMeasured ? null : document.StreamingFrom.GetValueOrDefault(facet);
        double worse = document.Observers[observer.Word()];
        bool certain = character.IsSign
            && document.CertainSigns.Observers.Contains(observer.Word(), StringComparer.Ordinal)
            && !document.CertainSigns.NotWays.Contains(way.Word(), StringComparer.Ordinal);
        double falsely = from?.False ?? (certain ? 0 : Math.Min(document.Most.False!.Value, worse * (own?.False ?? usual.False!.Value)));
        return new Noise(
            Math.Min(document.Most.Error!.Value, worse * (own?.Error ?? usual.Error!.Value)),
            Math.Min(document.Most.Miss!.Value, worse * (own?.Miss ?? usual.Miss!.Value)),
            falsely);
    }

    /// <summary>How much of a growth can be seen on a surface; 1 for characters that list no surface.</summary>
    public double Shows(Character character, int state, Surface? surface, double? hours, Hiding hiding)
    {
        if (surface is not { } on) return 1;
        string word = character.States[state];
        var curve = (shows.GetValueOrDefault(word) ?? shows["otherwise"])[(int)on] ?? shows["otherwise"][(int)on];
        if (!IsMasked(word)) return curve.At(HoursIn(hours));
        double effective = HoursIn(hours) / document.Slower.GetValueOrDefault(character.Id, 1);
        return curve.At(effective) * (on == Surface.MoistChamber ? hiding.InChamber : hiding.Otherwise);
    }

    /// <summary>The chance that a growth comes up in a chamber on dead tissue whatever its cause, and the share of white growth still seen under it.</summary>
    public (double Chance, double Leaves) Overgrowth(string state, Surface? surface, double? hours)
    {
        if (surface != Surface.MoistChamber || !overgrowth.TryGetValue(state, out var curves)) return (0, 1);
        return (curves.Chance.At(HoursIn(hours)), curves.Leaves.At(HoursIn(hours)));
    }

    /// <summary>Whether this is the white growth that comes slowly on some organs, and that drought, sprays and overgrowth can hide.</summary>
    public bool IsMasked(string state) => document.Hides.States.Contains(state, StringComparer.Ordinal);

    /// <summary>Whether some state of this character hides white growth.</summary>
    public bool Hides(Character character) => document.Hides.InChamber.ContainsKey(character.Id) || document.Hides.Otherwise.ContainsKey(character.Id);

    /// <summary>What the sample's condition and sprays do to white growth: the strongest that is recorded counts.</summary>
    public Hiding HidingOf(IEnumerable<Look> looks)
    {
        double inChamber = 1, otherwise = 1;
        foreach (var look in looks)
        {
            foreach (int state in look.States)
            {
                string word = look.Character.States[state];
                inChamber = Math.Min(inChamber, document.Hides.InChamber.GetValueOrDefault(look.Character.Id)?.GetValueOrDefault(word, 1) ?? 1);
                otherwise = Math.Min(otherwise, document.Hides.Otherwise.GetValueOrDefault(look.Character.Id)?.GetValueOrDefault(word, 1) ?? 1);
            }
        }

        return new Hiding(inChamber, otherwise);
    }

    private double HoursIn(double? hours) => hours ?? document.ChamberHours;

    private static Curve[] ReadSurfaces(Dictionary<string, JsonElement> surfaces) =>
        [.. Vocabulary.Surfaces.Select(word => surfaces.TryGetValue(word, out var value) ? new Curve(value) : null!)];

    /// <summary>A value by hours: linear between the points given, level beyond them, one value where no hours matter.</summary>
    private sealed class Curve
    {
        private readonly (double Hours, double Value)[] points;

        public Curve(Dictionary<string, double> values) =>
            points = [.. values.Select(pair => (double.Parse(pair.Key, CultureInfo.InvariantCulture), pair.Value)).OrderBy(point => point.Item1)];

        public Curve(JsonElement element) =>
            points = element.ValueKind == JsonValueKind.Number
                ? [(0, element.GetDouble())]
                : [.. element.EnumerateObject().Select(field => (double.Parse(field.Name, CultureInfo.InvariantCulture), field.Value.GetDouble())).OrderBy(point => point.Item1)];

        public double At(double hours)
        {
            int next = Array.FindIndex(points, point => point.Hours >= hours);
            if (next < 0) return points[^1].Value;
            if (next == 0) return points[0].Value;
            (double h0, double v0) = points[next - 1];
            (double h1, double v1) = points[next];
            return v0 + ((v1 - v0) * (hours - h0) / (h1 - h0));
        }
    }
}

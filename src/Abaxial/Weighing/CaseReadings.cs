using System.Collections.Immutable;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>
/// A case's looks, folded into readings: sorted, the same look counted once, those that carry nothing left out, children of an otherwise answered parent set aside.
/// </summary>
internal sealed class CaseReadings
{
    public const string OrgansAffected = "organs-affected";

    private readonly HostTable table;
    private readonly ReadingModel model;

    public CaseReadings(Case weighed, HostTable table, ReadingModel model, Func<Character, bool>? leaveOut = null)
    {
        this.table = table;
        this.model = model;
        Weighed = weighed;
        var counted = Fold(weighed.Looks).Where(look => leaveOut is null || !leaveOut(look.Look.Character)).ToArray();
        Hiding = model.HidingOf(counted.Select(look => look.Look));
        foreach (var look in counted)
        {
            Counted.Add(look);
            if (ParentOf(look.Look, counted) is { SaysOtherwise: true }) SetAside.Add(look);
            else Read(look);
        }
    }

    public Case Weighed { get; }

    public Hiding Hiding { get; }

    /// <summary>Looks that carry evidence or would, in canonical order.</summary>
    public List<CountedLook> Counted { get; } = [];

    /// <summary>Looks whose parent was answered otherwise: they move nothing.</summary>
    public List<CountedLook> SetAside { get; } = [];

    public List<Strand> Strands { get; } = [];

    public Strand? Find(string character) => Strands.Find(strand => strand.Character.Id == character);

    /// <summary>Sorts the looks and counts the same look once; unsure ones and void states carry nothing.</summary>
    public static ImmutableArray<CountedLook> Fold(ImmutableArray<Look> looks)
    {
        var order = Enumerable.Range(0, looks.Length).Where(place => Carries(looks[place])).ToArray();
        Array.Sort(order, (a, b) => Compare(looks[a], looks[b]) is var by && by != 0 ? by : a.CompareTo(b));
        var folded = new List<(Look Look, List<int> Places)>();
        foreach (int place in order)
        {
            var same = folded.Find(other => other.Look.IsSameAs(looks[place]));
            if (same.Look is null) folded.Add((looks[place], [place]));
            else same.Places.Add(place);
        }

        return [.. folded.Select(entry => new CountedLook(entry.Look, [.. entry.Places.Order()]))];
    }

    private static bool Carries(Look look) => !look.IsUnsure && !look.States.Any(state => look.Character.Voids[state]);

    private static int Compare(Look a, Look b)
    {
        int by = a.Character.Index.CompareTo(b.Character.Index);
        if (by == 0) by = string.CompareOrdinal(a.Facet, b.Facet);
        if (by == 0) by = a.How.CompareTo(b.How);
        if (by == 0) by = Nullable.Compare(a.Surface, b.Surface);
        if (by == 0) by = b.By.CompareTo(a.By);
        if (by == 0) by = string.CompareOrdinal(a.Person, b.Person);
        if (by == 0) by = CompareLists(a.States, b.States);
        if (by == 0) by = CompareLists(a.Values, b.Values);
        return by == 0 ? Nullable.Compare(b.Hours, a.Hours) : by; // of two that count once, the longer chamber stands
    }

    private static int CompareLists<T>(ImmutableArray<T> a, ImmutableArray<T> b)
        where T : IComparable<T> => a.AsSpan().SequenceCompareTo(b.AsSpan());

    /// <summary>Whether a look's parent was recorded, and whether it was answered otherwise. A measurement hangs on its kind having been seen.</summary>
    private static (bool Recorded, bool SaysOtherwise) ParentOf(Look look, CountedLook[] counted)
    {
        var (parent, states) = Needs(look.Character, look.Facet);
        if (parent is null) return (false, false);
        var answers = counted.Where(other => other.Look.Character == parent).ToArray();
        if (answers.Length == 0) return (false, false);
        return (true, !answers.Any(answer => answer.Look.States.Any(state => states.Contains(state))));
    }

    /// <summary>The parent of a question and the states of it under which the question means something.</summary>
    internal static (Character? Parent, ImmutableArray<int> States) Needs(Character character, string? facet)
    {
        if (character.WhenParent is not null) return (character.WhenParent, character.WhenStates);
        if (character is { IsMeasured: true, OfCharacter: { } kinds }) return (kinds, [kinds.StateIndex(facet ?? character.OfOnly ?? "")]);
        return (null, []);
    }

    private void Read(CountedLook counted)
    {
        var look = counted.Look;
        var strand = Strands.Find(other => other.Character == look.Character);
        if (strand is null) Strands.Add(strand = new Strand(look.Character));
        var question = table.Find(look.Character, look.Facet);
        var readings = strand.Readings.Find(other => other.Question == question);
        if (readings is null) strand.Readings.Add(readings = new QuestionReadings(question));
        readings.Looks.Add(counted);
        if (look.Character.IsMeasured)
        {
            double sum = (readings.SampleMean * readings.SampleSize) + look.Values.Sum();
            readings.SampleSize += look.Values.Length;
            readings.SampleMean = sum / readings.SampleSize;
            readings.HasSampleMean = true;
            readings.ShowsSomething = true;
            return;
        }

        Multiply(readings, look);
    }

    /// <summary>Multiplies the readings by one more look.</summary>
    private void Multiply(QuestionReadings readings, Look look)
    {
        var character = look.Character;
        var noise = model.NoiseOf(character, look.How, look.By, look.Facet);
        bool empty = look.States.Contains(character.EmptyState);
        if (!empty) readings.ShowsSomething = true;
        for (int state = 0; state < character.States.Length; state++) readings.Named[state] |= empty || look.States.Contains(state);
        if (readings.IsStateWise)
        {
            foreach (int state in readings.Question.States)
            {
                var (detects, falsely) = Detection(look, state, noise);
                bool named = look.States.Contains(state);
                double ifPresent = (1 - detects) * (1 - falsely);
                readings.Present[state] *= named ? 1 - ifPresent : ifPresent;
                readings.Absent[state] *= named ? falsely : 1 - falsely;
                double most = Math.Max(readings.Present[state], readings.Absent[state]);
                readings.Present[state] /= most;
                readings.Absent[state] /= most;
            }

            return;
        }

        var states = readings.Question.States;
        double top = 0;
        foreach (int state in states)
        {
            readings.Present[state] *= state == look.States[0] ? 1 - noise.Error : noise.Error / (states.Length - 1);
            top = Math.Max(top, readings.Present[state]);
        }

        foreach (int state in states) readings.Present[state] /= top;
    }

    /// <summary>The chance that a look names a state that is there, and that it names it where it is not.</summary>
    public (double Detects, double Falsely) Detection(Look look, int state, Noise noise)
    {
        if (look.Surface is null) return (1 - noise.Miss, noise.False);
        var character = look.Character;
        string word = character.States[state];
        double shows = model.Shows(character, state, look.Surface, look.Hours, Hiding);
        if (model.IsMasked(word))
        {
            foreach (int other in look.States) shows *= model.Overgrowth(character.States[other], look.Surface, look.Hours).Leaves;
        }

        double grows = model.Overgrowth(word, look.Surface, look.Hours).Chance;
        return (shows * (1 - noise.Miss), 1 - ((1 - noise.False) * (1 - grows)));
    }
}

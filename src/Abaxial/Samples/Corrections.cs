using System.Collections.Immutable;

namespace Abaxial.Samples;

/// <summary>Works out what holds in the place of each entry, corrections of corrections included.</summary>
internal sealed class Corrections
{
    private readonly ImmutableArray<Said> said;
    private readonly Dictionary<EntryId, int> indexOf = [];
    private readonly ILookup<EntryId, int> correctionsOf;
    private readonly Dictionary<EntryId, Outcome> outcomes = [];

    private Corrections(ImmutableArray<Entry> ordered)
    {
        said = [.. ordered.Select(entry => new Said(entry, PayloadReader.Read(entry)))];
        for (int i = 0; i < said.Length; i++) indexOf.Add(said[i].Entry.Id, i);
        correctionsOf = said.Select((item, index) => (item, index)).Where(pair => Applies(pair.item, pair.index)).ToLookup(pair => ((Correction)pair.item.Reading.Payload!).Replaces, pair => pair.index);

        // Corrections stand after what they replace, so from the last entry backwards everything an outcome rests on is known.
        for (int i = said.Length - 1; i >= 0; i--) outcomes.Add(said[i].Entry.Id, OutcomeOf(said[i]));
    }

    /// <summary>The timeline of entries in their order.</summary>
    public static ImmutableArray<(TimelineItem Item, Entry HeldBy)> Of(ImmutableArray<Entry> ordered)
    {
        var corrections = new Corrections(ordered);
        return [.. corrections.said.Select((item, index) => corrections.ItemOf(item, index))];
    }

    /// <summary>A correction has an effect where what it replaces stands before it and is of the kind that it names. What is of no known kind can be struck too.</summary>
    private bool Applies(Said item, int index)
    {
        if (item.Reading.Payload is not Correction correction || !indexOf.TryGetValue(correction.Replaces, out int replaced) || replaced >= index) return false;
        string kind = said[replaced].Reading.Payload is Correction other ? other.Of : said[replaced].Entry.Kind;
        return kind == correction.Of && kind != EntryKind.PersonErased;
    }

    private Outcome OutcomeOf(Said item)
    {
        var own = item.Reading.Payload is Correction correction
            ? new Outcome(item.Entry, correction.Replacement, correction.Payload is null, null)
            : new Outcome(item.Entry, item.Reading.Payload, false, null);
        foreach (int index in correctionsOf[item.Entry.Id].Reverse())
        {
            var by = said[index].Entry;
            if (IsUndone(by.Id)) continue;
            var there = outcomes[by.Id];
            return there with { By = by.Id };
        }

        return own;
    }

    /// <summary>Whether a correction was itself struck.</summary>
    private bool IsUndone(EntryId correction) => outcomes[correction] is { IsStruck: true, By: not null };

    private (TimelineItem, Entry) ItemOf(Said item, int index)
    {
        var outcome = outcomes[item.Entry.Id];
        bool isCorrection = item.Reading.Payload is Correction;
        var state = outcome.By is not null ? (outcome.IsStruck ? ItemState.Struck : ItemState.Corrected)
            : item.Reading.Payload is null || item.Reading.IsNewer ? ItemState.NotUnderstood
            : isCorrection && !Applies(item, index) ? ItemState.WithoutEffect
            : ItemState.Stands;
        return (new TimelineItem
        {
            Entry = item.Entry,
            State = state,
            By = outcome.By,
            Said = item.Reading.Payload,
            Holds = isCorrection || outcome.IsStruck ? null : outcome.Payload,
            Problems = item.Reading.Problems,
        }, outcome.Entry);
    }

    private sealed record Said(Entry Entry, PayloadReading Reading);

    /// <summary>What holds in an entry's place, which entry says so, and which correction brought that about.</summary>
    private sealed record Outcome(Entry Entry, Payload? Payload, bool IsStruck, EntryId? By);
}

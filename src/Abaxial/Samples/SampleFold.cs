using System.Collections.Immutable;
using System.Text;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>Folds the entries of a sample into what it comes to.</summary>
public static class SampleFold
{
    /// <summary>Folds entries, whatever order they come in and however often.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="entries">Entries of that sample.</param>
    /// <param name="knowledge">What looks are read with.</param>
    /// <exception cref="ArgumentException">An entry is of another sample.</exception>
    public static SampleView Of(EntryId sample, IEnumerable<Entry> entries, KnowledgeBase knowledge)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(knowledge);
        var ordered = SampleOrder.Of(entries);
        if (ordered.FirstOrDefault(entry => entry.Sample != sample) is { } stranger) throw new ArgumentException($"Entry {stranger.Id} is of sample {stranger.Sample}.", nameof(entries));
        var history = Corrections.Of(ordered);

        var view = new SampleView { Sample = sample, Timeline = [.. history.Select(pair => pair.Item)], Heads = SampleOrder.HeadsOf(ordered) };
        var held = history.Where(pair => pair.Item.Holds is not null).Select(pair => new Held(pair.Item.Entry, pair.HeldBy, pair.Item.Holds!)).ToList();
        foreach (var next in held) view = Add(view, next);
        return view with
        {
            Cases = view.TakenIn is null ? [] : CasesOf(view.TakenIn, held, knowledge),
            Photographs = PhotographsOf(held),
            Erased = [.. held.Select(next => next.Payload).OfType<PersonErased>().Select(erased => erased.Person).Distinct().Order(StringComparer.Ordinal)],
        };
    }

    private static SampleView Add(SampleView view, Held next) => next.Payload switch
    {
        TakenIn takenIn => view with { TakenIn = takenIn },
        Numbered numbered => view with { Number = numbered.Number },
        DiagnosisSigned signed => view with { Diagnoses = view.Diagnoses.Add(new SignedDiagnosis(next.Entry.Id, next.HeldBy.Author, next.HeldBy.Made, signed)) },
        MessageNoted message => view with { Messages = view.Messages.Add(new NotedMessage(next.Entry.Id, next.Entry.Made, message)) },
        HandedOver handed => view with { With = handed.To, SnoozedUntil = null },
        Snoozed snoozed => view with { SnoozedUntil = snoozed.Until },
        Closed closed => view with { ClosedBecause = closed.Why, SnoozedUntil = null },
        Reopened => view with { ClosedBecause = null },
        _ => view,
    };

    private static ImmutableArray<SampleCase> CasesOf(TakenIn takenIn, List<Held> held, KnowledgeBase knowledge)
    {
        var looks = held.Where(next => next.Payload is LookMade).ToLookup(next => ((LookMade)next.Payload).Case);
        var factors = held.Select(next => next.Payload).OfType<PriorFactorStated>().ToLookup(factor => factor.Case);
        var numbers = looks.Select(group => group.Key).Concat(factors.Select(group => group.Key)).Append(1).Distinct().Order();
        return
        [
            .. numbers.Select(number =>
            {
                string json = CaseJson(takenIn, factors[number], looks[number].Select(look => ((LookMade)look.Payload).Observation));
                return new SampleCase(number, CaseReader.Read(Encoding.UTF8.GetBytes(json), knowledge), [.. looks[number].Select(look => look.Entry.Id)]);
            }),
        ];
    }

    /// <summary>The case file that a plant or lot would amount to of which these things are said.</summary>
    internal static string CaseOf(TakenIn takenIn, IReadOnlyCollection<Payload> said) =>
        CaseJson(takenIn, said.OfType<PriorFactorStated>(), said.OfType<LookMade>().Select(look => look.Observation));

    /// <summary>The case file that a plant or lot amounts to.</summary>
    private static string CaseJson(TakenIn takenIn, IEnumerable<PriorFactorStated> factors, IEnumerable<string> looks)
    {
        var stated = factors.Select(factor => factor.ToCaseJson()).ToList();
        string? place = takenIn.Area is { } area ? (area with { Name = null }).ToJson() : null;
        return CanonicalJson.OfObject(
            ("format", CanonicalJson.Of(CaseReader.Format)),
            ("host", CanonicalJson.Of(takenIn.Host)),
            ("system", takenIn.System is null ? null : CanonicalJson.Of(takenIn.System)),
            ("stage", takenIn.Stage is null ? null : CanonicalJson.Of(takenIn.Stage)),
            ("purpose", takenIn.Purpose is null ? null : CanonicalJson.Of(takenIn.Purpose)),
            ("noticed", takenIn.Noticed is { } day ? CanonicalJson.Of(day.ToString("O", System.Globalization.CultureInfo.InvariantCulture)) : null),
            ("place", place),
            ("priorFactors", stated.Count == 0 ? null : CanonicalJson.OfArray(stated)),
            ("looks", CanonicalJson.OfArray(looks)));
    }

    private static ImmutableArray<Photograph> PhotographsOf(List<Held> held)
    {
        var photographs = new List<Photograph>();
        foreach (var next in held)
        {
            // The same photograph sent twice is one photograph.
            if (next.Payload is PhotographAdded added && photographs.TrueForAll(known => known.Added.Sha256 != added.Sha256)) photographs.Add(new Photograph(next.Entry.Id, added, null, null));
        }

        foreach (var mark in held.Select(next => next.Payload).OfType<PhotographMarked>())
        {
            int index = photographs.FindIndex(known => known.Added.Sha256 == mark.Sha256);
            if (index >= 0) photographs[index] = photographs[index] with { Side = mark.Side ?? photographs[index].Side, MicrometersPerPixel = mark.MicrometersPerPixel ?? photographs[index].MicrometersPerPixel };
        }

        return [.. photographs];
    }

    /// <summary>Something that holds: the entry in whose place it stands, and the one that says it.</summary>
    private sealed record Held(Entry Entry, Entry HeldBy, Payload Payload);
}

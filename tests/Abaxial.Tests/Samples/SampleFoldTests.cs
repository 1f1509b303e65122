using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Weighing;

namespace Abaxial.Tests.Samples;

public sealed class SampleFoldTests
{
    private static readonly KnowledgeBase Knowledge = BuiltIn.Solanum();

    private readonly PaperDevice bench = new("bench");
    private readonly List<Entry> entries = [];
    private readonly EntryId sample;

    public SampleFoldTests()
    {
        var taken = bench.Write(PaperDevice.Tomato);
        entries.Add(taken);
        sample = taken.Id;
    }

    [Fact]
    public void A_sample_comes_to_a_case_that_the_engine_weighs()
    {
        var look = Add(PaperDevice.Look("pycnidia", "present"));
        Add(new PriorFactorStated(1, "late-blight", 2, "wet weather"));
        var part = Assert.Single(Fold().Cases);
        Assert.Empty(part.Reading.Problems);
        Assert.Equal([look.Id], part.Looks);
        Assert.Equal("late-blight", Assert.Single(part.Reading.Case!.PriorFactors).Cause.Id);
        Assert.Equal(44, part.Reading.Case.Place!.Latitude);
        Assert.Equal("septoria-leaf-spot", new Weigher(Knowledge).Weigh(part.Reading.Case).Causes[0].Cause.Id);
    }

    [Fact]
    public void Plants_of_one_sample_are_cases_of_their_own()
    {
        Add(PaperDevice.Look("pycnidia", "present", number: 3));
        Add(PaperDevice.Look("pycnidia", "absent"));
        Assert.Equal([1, 3], Fold().Cases.Select(part => part.Number));
    }

    [Fact]
    public void A_look_that_the_knowledge_does_not_know_refuses_the_case_and_stays()
    {
        Add(PaperDevice.Look("of-another-year", "present"));
        var view = Fold();
        Assert.Equal("/looks/0/character", Assert.Single(Assert.Single(view.Cases).Reading.Problems).At);
        Assert.Equal(ItemState.Stands, view.Timeline[1].State);
    }

    [Fact]
    public void A_corrected_look_counts_as_corrected_and_both_stay()
    {
        var look = Add(PaperDevice.Look("pycnidia", "absent"));
        var correction = Add(Correction.With(look.Id, "lens was dirty", PaperDevice.Look("pycnidia", "present")));
        var view = Fold();
        Assert.Equal("present", State(view));
        Assert.Equal((ItemState.Corrected, correction.Id), (view.Timeline[1].State, view.Timeline[1].By));
        Assert.Equal(PaperDevice.Look("pycnidia", "absent"), view.Timeline[1].Said);
        Assert.Equal(ItemState.Stands, view.Timeline[2].State);
    }

    [Fact]
    public void A_struck_look_counts_no_more()
    {
        var look = Add(PaperDevice.Look("pycnidia", "absent"));
        Add(Correction.Striking(look.Id, EntryKind.Look, "wrong sample"));
        var view = Fold();
        Assert.Empty(view.Cases[0].Looks);
        Assert.Equal(ItemState.Struck, view.Timeline[1].State);
        Assert.Null(view.Timeline[1].Holds);
    }

    [Fact]
    public void A_struck_correction_is_as_if_it_had_not_been_made()
    {
        var look = Add(PaperDevice.Look("pycnidia", "absent"));
        var first = Add(Correction.With(look.Id, "lens was dirty", PaperDevice.Look("pycnidia", "present")));
        var second = Add(Correction.With(look.Id, "looked again", PaperDevice.Look("pycnidia", "present")));
        Add(Correction.Striking(second.Id, EntryKind.Look, "that was another leaf"));
        var view = Fold();
        Assert.Equal(first.Id, view.Timeline[1].By);
        Assert.Equal(ItemState.Struck, view.Timeline[3].State);
    }

    [Fact]
    public void A_strike_that_is_struck_lets_the_look_stand_again()
    {
        var look = Add(PaperDevice.Look("pycnidia", "absent"));
        var strike = Add(Correction.Striking(look.Id, EntryKind.Look, "wrong sample"));
        Add(Correction.Striking(strike.Id, EntryKind.Look, "it was the right one"));
        var view = Fold();
        Assert.Equal(ItemState.Stands, view.Timeline[1].State);
        Assert.Equal("absent", State(view));
    }

    [Fact]
    public void A_corrected_correction_says_what_holds()
    {
        var look = Add(PaperDevice.Look("pycnidia", "absent"));
        var first = Add(Correction.Striking(look.Id, EntryKind.Look, "wrong sample"));
        Add(Correction.With(first.Id, "only the state was wrong", PaperDevice.Look("pycnidia", "present")));
        var view = Fold();
        Assert.Equal("present", State(view));
        Assert.Equal((ItemState.Corrected, first.Id), (view.Timeline[1].State, view.Timeline[1].By));
    }

    [Fact]
    public void A_correction_of_another_kind_or_of_what_is_not_before_it_has_no_effect()
    {
        var look = Add(PaperDevice.Look("pycnidia", "absent"));
        Add(Correction.Striking(look.Id, EntryKind.Diagnosis, "wrong kind"));
        Add(Correction.Striking(EntryId.Parse("01ARZ3NDEKTSV4RRFFQ69G5FAV"), EntryKind.Look, "never came"));
        var view = Fold();
        Assert.Equal([ItemState.Stands, ItemState.Stands, ItemState.WithoutEffect, ItemState.WithoutEffect], view.Timeline.Select(item => item.State));
    }

    [Fact]
    public void What_a_newer_version_wrote_is_kept_and_shown_as_not_understood()
    {
        var later = bench.Write("pollen-count", 1, """{"grains":12}""", sample, [sample], 1);
        var newer = bench.Write(EntryKind.Look, 2, """{"hologram":true}""", sample, [later.Id], 2);
        entries.AddRange([later, newer]);
        var view = Fold();
        Assert.Equal([ItemState.Stands, ItemState.NotUnderstood, ItemState.NotUnderstood], view.Timeline.Select(item => item.State));
        Assert.Equal("""{"grains":12}""", view.Timeline[1].Entry.Payload);
        Assert.Empty(view.Cases[0].Looks);
    }

    [Fact]
    public void What_is_refused_is_kept_and_shown_with_its_problems()
    {
        entries.Add(bench.Write(EntryKind.Closed, 1, "{}", sample, [sample], 1));
        var view = Fold();
        Assert.Equal(ItemState.NotUnderstood, view.Timeline[1].State);
        Assert.Equal("/why", Assert.Single(view.Timeline[1].Problems).At);
        Assert.Null(view.ClosedBecause);
    }

    [Fact]
    public void A_photograph_carries_its_marks_and_counts_once()
    {
        string hash = new('a', 64);
        Add(new PhotographAdded(hash, "image/jpeg", 12));
        Add(new PhotographMarked { Sha256 = hash, Side = "upper" });
        Add(new PhotographMarked { Sha256 = hash, Side = "lower", MicrometersPerPixel = 5 });
        Add(new PhotographAdded(hash, "image/jpeg", 12));
        var photograph = Assert.Single(Fold().Photographs);
        Assert.Equal(("lower", 5), (photograph.Side, photograph.MicrometersPerPixel));
    }

    [Fact]
    public void Who_has_it_and_whether_it_is_put_aside_or_closed_follow_the_last_entry()
    {
        var until = new DateTimeOffset(2026, 7, 20, 8, 0, 0, TimeSpan.Zero);
        Add(new Numbered(SampleNumber.From(26, 142)));
        Add(new HandedOver("d-02"));
        Add(new Snoozed(until));
        var view = Fold();
        Assert.Equal((SampleNumber.From(26, 142), "d-02", until, null), (view.Number, view.With, view.SnoozedUntil, view.ClosedBecause));
        Add(new Closed("answered"));
        Assert.Equal((null, "answered"), (Fold().SnoozedUntil, Fold().ClosedBecause));
        Add(new Reopened("a second letter"));
        Assert.Null(Fold().ClosedBecause);
    }

    [Fact]
    public void A_signed_diagnosis_stands_beside_what_the_engine_said()
    {
        Add(PaperDevice.Diagnosis("septoria-leaf-spot"));
        var signed = Assert.Single(Fold().Diagnoses);
        Assert.Equal(("d-01", "septoria-leaf-spot"), (signed.By, signed.Diagnosis.Engine.Leader));
    }

    [Fact]
    public void An_erased_person_is_named_and_erasing_cannot_be_taken_back()
    {
        var erased = Add(new PersonErased("g-11"));
        entries.Add(bench.Write(EntryKind.Correction, 1, $$"""{"of":"person-erased","replaces":"{{erased.Id}}","why":"no"}""", sample, [erased.Id], 9));
        var view = Fold();
        Assert.Equal(["g-11"], view.Erased);
        Assert.Equal(ItemState.NotUnderstood, view.Timeline[2].State);
    }

    [Fact]
    public void An_entry_of_another_sample_is_not_folded_in() =>
        Assert.Throws<ArgumentException>(() => SampleFold.Of(sample, [.. entries, bench.Write(PaperDevice.Tomato)], Knowledge));

    [Fact]
    public void Entries_that_name_each_other_in_a_circle_stand_last_and_are_all_there()
    {
        var one = bench.Write(PaperDevice.Look("pycnidia", "absent"), sample, [sample], 1);
        var two = new PaperDevice("pocket").Write(PaperDevice.Look("pycnidia", "present"), sample, [one.Id], 2);
        entries.AddRange([one with { Heads = [two.Id] }, two]);
        Assert.Equal(3, Fold().Timeline.Length);
        Assert.Equal(sample, Fold().Timeline[0].Entry.Id);
    }

    [Fact]
    public void A_deep_pile_of_corrections_is_folded()
    {
        var last = Add(PaperDevice.Look("pycnidia", "absent"));
        for (int i = 0; i < 2_000; i++) last = Add(Correction.Striking(last.Id, EntryKind.Look, "again"));
        Assert.Equal(ItemState.Stands, Fold().Timeline[1].State);
    }

    private Entry Add(Payload payload)
    {
        var entry = bench.Write(payload, sample, [entries[^1].Id], entries.Count);
        entries.Add(entry);
        return entry;
    }

    private SampleView Fold() => SampleFold.Of(sample, entries, Knowledge);

    private static string State(SampleView view)
    {
        var look = Assert.Single(view.Cases[0].Reading.Case!.Looks);
        return look.Character.States[look.States[0]];
    }
}

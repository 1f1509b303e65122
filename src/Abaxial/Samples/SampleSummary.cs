using System.Collections.Immutable;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>A sample in one line: what a list shows of it and sorts it by. It is worked out from the fold and the answers, and never the truth.</summary>
public sealed record SampleSummary
{
    public required EntryId Sample { get; init; }

    /// <summary>The number that people call it by; null where it has none yet.</summary>
    public SampleNumber? Number { get; init; }

    /// <summary>The host; null where what was taken in has not arrived.</summary>
    public string? Host { get; init; }

    public string? System { get; init; }

    public string? Purpose { get; init; }

    /// <summary>What the area is called; null where it has no name.</summary>
    public string? Area { get; init; }

    /// <summary>Id of the person who sent it.</summary>
    public string? Submitter { get; init; }

    /// <summary>Id of the person who took it in; null where that entry has not arrived.</summary>
    public string? TakenBy { get; init; }

    /// <summary>Id of the person who has to act on it.</summary>
    public string? With { get; init; }

    /// <summary>The moment it was taken in; where that entry has not arrived, the moment in the sample's id.</summary>
    public required DateTimeOffset Taken { get; init; }

    /// <summary>The moment by which an answer was promised.</summary>
    public DateTimeOffset? Promised { get; init; }

    /// <summary>The moment until which it is put aside.</summary>
    public DateTimeOffset? SnoozedUntil { get; init; }

    public required bool IsOpen { get; init; }

    /// <summary>The worst standing of late blight among its plants or lots; null where none could be weighed.</summary>
    public Standing? Standing { get; init; }

    /// <summary>The highest probability of late blight among its plants or lots; null where none could be weighed.</summary>
    public double? LateBlight { get; init; }

    /// <summary>Id of the most probable cause of the plant or lot on which late blight is most probable.</summary>
    public string? Leader { get; init; }

    /// <summary>The leader's probability in whole percent.</summary>
    public int? LeaderPercent { get; init; }

    /// <summary>The primary causes of the diagnosis that holds of each plant or lot, each once; a cause that is not listed is not among them.</summary>
    public ImmutableArray<string> Diagnosed { get; init; } = [];

    public required int Photographs { get; init; }

    /// <summary>Hash of the first photograph.</summary>
    public string? FirstPhotograph { get; init; }

    /// <summary>Looks that hold, over all plants and lots.</summary>
    public required int Looks { get; init; }

    /// <summary>
    /// What it costs to leave the sample as it is: the largest expected loss of the best act among its plants and lots, in false alarms in a market field. Zero where it is
    /// closed, or could not be weighed.
    /// </summary>
    public required double Waiting { get; init; }

    /// <summary>Weighs every plant or lot of a sample; null stands where the knowledge refuses one.</summary>
    public static ImmutableArray<Answer?> AnswersOf(SampleView view, Weigher weigher)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(weigher);
        return [.. view.Cases.Select(one => one.Reading.Case is { } weighed ? weigher.Weigh(weighed, new WeighOptions { NextLooks = false }) : null)];
    }

    /// <summary>Sums a sample up.</summary>
    /// <param name="view">The sample.</param>
    /// <param name="answers">The answer to each of its plants or lots, in their order; see <see cref="AnswersOf"/>.</param>
    public static SampleSummary Of(SampleView view, ImmutableArray<Answer?> answers)
    {
        ArgumentNullException.ThrowIfNull(view);
        var weighed = answers.OfType<Answer>().ToList();
        var worst = weighed.MaxBy(answer => answer.LateBlight.Probability);
        var taken = view.Timeline.FirstOrDefault(item => item.Entry.Id == view.Sample)?.Entry;
        bool isOpen = view.ClosedBecause is null;
        return new SampleSummary
        {
            Sample = view.Sample,
            Number = view.Number,
            Host = view.TakenIn?.Host,
            System = view.TakenIn?.System,
            Purpose = view.TakenIn?.Purpose,
            Area = view.TakenIn?.Area?.Name,
            Submitter = view.TakenIn?.Submitter,
            TakenBy = taken?.Author,
            With = view.With,
            Taken = taken?.Made ?? MomentOf(view.Sample),
            Promised = view.TakenIn?.Promised,
            SnoozedUntil = view.SnoozedUntil,
            IsOpen = isOpen,
            Standing = worst is null ? null : weighed.Max(answer => answer.Standing),
            LateBlight = worst?.LateBlight.Probability,
            Leader = worst?.Causes[0].Cause.Id,
            LeaderPercent = worst is null ? null : (int)Math.Floor((100 * worst.Causes[0].Probability) + 0.5),
            Diagnosed = DiagnosedOf(view),
            Photographs = view.Photographs.Length,
            FirstPhotograph = view.Photographs.IsEmpty ? null : view.Photographs[0].Added.Sha256,
            Looks = view.Cases.Sum(one => one.Looks.Length),
            Waiting = isOpen && worst is not null ? weighed.Max(answer => answer.LossNow) : 0,
        };
    }

    private static ImmutableArray<string> DiagnosedOf(SampleView view) =>
        [.. view.Diagnoses.GroupBy(signed => signed.Diagnosis.Case).OrderBy(group => group.Key).SelectMany(group => group.Last().Diagnosis.Primary).Distinct(StringComparer.Ordinal)];

    private static DateTimeOffset MomentOf(EntryId id) => DateTimeOffset.FromUnixTimeMilliseconds(Math.Min(id.UnixMilliseconds, DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()));
}

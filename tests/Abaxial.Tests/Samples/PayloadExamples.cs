using Abaxial.Samples;

namespace Abaxial.Tests.Samples;

/// <summary>One payload of each kind, with everything in it.</summary>
internal static class PayloadExamples
{
    private static readonly string Hash = new('a', 64);
    private static readonly EntryId Other = EntryId.Parse("01ARZ3NDEKTSV4RRFFQ69G5FAV");
    private static readonly DateTimeOffset Moment = new(2026, 7, 14, 9, 30, 0, TimeSpan.FromHours(2));

    public static IReadOnlyList<Payload> All { get; } =
    [
        PaperDevice.Tomato with { Cultivar = "Ondrelay Early", Purpose = "market", Place = new Seal("g-11", Hash), Says = new Seal("g-11", Hash), Submitter = "g-11", Promised = Moment },
        new Numbered(SampleNumber.From(26, 142)),
        PaperDevice.Look("pycnidia", "present"),
        new PriorFactorStated(2, "late-blight", 2.5, "21 days of weather"),
        new PhotographAdded(Hash, "image/jpeg", 1_234),
        new PhotographMarked { Sha256 = Hash, Side = "lower", MicrometersPerPixel = 12.5 },
        PaperDevice.Diagnosis("late-blight") with { Secondary = ["gray-mold"], Unlisted = "a spray of the neighbour's", ProvenBy = "PCR", Disagreement = "none" },
        new MessageNoted("in", new Seal("g-11", Hash)),
        new HandedOver("d-01"),
        new Snoozed(Moment),
        new Closed("answered"),
        new Reopened("a second letter"),
        Correction.With(Other, "the other side", PaperDevice.Look("pycnidia", "absent")),
        new PersonErased("g-11"),
    ];
}

using System.Security.Cryptography;
using Abaxial.Data;
using Abaxial.Samples;

namespace Abaxial.Load;

/// <summary>Makes a small store with one of everything in it: what the tests keep of each released version (tests/stores).</summary>
internal static class OneOfEverything
{
    public static async Task<int> RunAsync(string folder)
    {
        using var ledger = await Ledger.OpenAsync(folder, TimeProvider.System);
        return (await FillAsync(ledger)).IsWrittenOver ? 0 : 2;
    }

    /// <summary>Writes one of everything into a store.</summary>
    public static async Task<Erased> FillAsync(Ledger ledger)
    {
        var place = Seal("g-11", """{"latitude":44.06,"longitude":-31.12}""");
        var says = Seal("g-11", "The tunnel smells, and the lower leaves went over the week end.");
        var takenIn = new TakenIn { Host = "tomato", System = "high-tunnel", Area = new Area("Kestle Bight", 44, -31, 80_000), Place = place.Seal(), Says = says.Seal(), Submitter = "g-11" };
        var taken = await ledger.TakeInAsync(new EntryDraft { Author = "s-02", Payload = takenIn, Texts = [place, says] }, [new PriorFactorStated(1, "late-blight", 2, "21 days of weather")]);
        var sample = taken.Entry!.Id;
        var photograph = await ledger.AddPhotographAsync(new MemoryStream("not a photograph, but bytes"u8.ToArray()));
        await AppendAsync(ledger, sample, new PhotographAdded(photograph.Sha256!, "image/jpeg", photograph.Bytes));
        await AppendAsync(ledger, sample, new PhotographMarked { Sha256 = photograph.Sha256!, Side = "lower", MicrometersPerPixel = 12.5 });
        var look = await AppendAsync(ledger, sample, new LookMade(1, """{"by":"diagnostician","character":"pycnidia","how":"hand-lens","state":"absent"}"""));
        var correction = await AppendAsync(ledger, sample, Correction.With(look.Id, "looked again", new LookMade(1, """{"by":"diagnostician","character":"pycnidia","how":"hand-lens","state":"present"}""")));
        await AppendAsync(ledger, sample, Correction.Striking(correction.Id, EntryKind.Look, "that was another leaf"));
        await AppendAsync(ledger, sample, new DiagnosisSigned { Case = 1, Primary = ["septoria-leaf-spot"], Engine = new EngineSaid("solanum 2026.1 00000000", "unlikely", "septoria-leaf-spot") });
        var message = Seal("g-12", "When will the answer come?");
        await AppendAsync(ledger, sample, new MessageNoted("in", message.Seal()), message);
        await AppendAsync(ledger, sample, new HandedOver("d-01"));
        await AppendAsync(ledger, sample, new Snoozed(TimeProvider.System.GetUtcNow().AddDays(1)));
        await AppendAsync(ledger, sample, new Closed("answered"));
        await AppendAsync(ledger, sample, new Reopened("a second letter"));
        return await ledger.EraseAsync("g-11", "a-01");
    }

    private static SealedText Seal(string person, string text) => new(person, RandomNumberGenerator.GetBytes(SealedText.SaltLength), text);

    private static async Task<Entry> AppendAsync(Ledger ledger, EntryId sample, Payload payload, params SealedText[] texts)
    {
        var appended = await ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "d-01", Payload = payload, Texts = [.. texts] });
        return appended.Entry ?? throw new InvalidOperationException(string.Join("; ", appended.Problems));
    }
}

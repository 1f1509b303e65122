using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>Writes entries within one transaction, which must be the only one that writes.</summary>
internal sealed class LedgerWriting(LedgerContext context, TimeProvider clock)
{
    /// <summary>A moment so long ago was not written down as it happened.</summary>
    private static readonly TimeSpan Later = TimeSpan.FromMinutes(1);

    private readonly HashSet<string> touched = new(StringComparer.Ordinal);

    /// <summary>The row of the last entry, once it was asked for.</summary>
    private long? lastRow;

    /// <summary>The samples that got entries, or lost or got texts: their rows are to be written anew.</summary>
    public IReadOnlySet<string> Touched => touched;

    /// <summary>The kinds of the entries that it wrote.</summary>
    public List<string> Written { get; } = [];

    /// <summary>Texts about a person were deleted.</summary>
    public bool HasForgotten { get; private set; }

    /// <summary>Writes a draft as the next entry of this store's own chain.</summary>
    public async Task<Appended> AppendAsync(EntryDraft draft, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        string json = draft.Payload.ToJson();
        if (draft.Id is { } known && await context.Entries.AsNoTracking().FirstOrDefaultAsync(row => row.Id == known.ToString(), cancel) is { } there) return SameOrRefused(draft, json, Parsed(there.Text));
        if (await RefusalAsync(draft, json, cancel) is { } refusal) return refusal;

        var id = draft.Id ?? NewId(now);
        var sample = draft.Sample ?? id;
        string device = (await context.Store.AsNoTracking().SingleAsync(cancel)).Device;
        var end = await context.Chains.FindAsync([device], cancel);
        var made = draft.Made ?? now;
        var entry = new Entry
        {
            Id = id,
            Sample = sample,
            Author = draft.Author,
            Made = made,
            EnteredLater = now - made > Later ? now : null,
            Device = device,
            Place = (end?.Place ?? 0) + 1,
            Previous = end?.Hash ?? Entry.NothingBefore,
            Kind = draft.Payload.Kind,
            Version = draft.Payload.Version,
            Payload = json,
            Heads = draft.Heads is { } seen ? [.. seen.Distinct().Order()] : await HeadsOfAsync(sample, cancel),
        };
        if (EntryReader.Read(Encoding.UTF8.GetBytes(entry.Canonical())) is { IsRefused: true } unreadable) return new Appended { Problems = unreadable.Problems };
        await AddAsync(entry, draft.Payload, now, cancel);
        await context.SaveChangesAsync(cancel);
        foreach (var text in draft.Texts) await KeepAsync(text, cancel);
        return new Appended { Entry = entry };
    }

    /// <summary>Gives a sample the next number of the year.</summary>
    public async Task<Appended> NumberAsync(EntryId sample, string author, CancellationToken cancel)
    {
        int year = clock.GetUtcNow().Year % 100;
        int last = await context.Numbers.Where(row => row.Year == year).MaxAsync(row => (int?)row.Running, cancel) ?? 0;
        return await AppendAsync(new EntryDraft { Sample = sample, Author = author, Payload = new Numbered(SampleNumber.From(year, last + 1)) }, cancel);
    }

    /// <summary>Takes an entry of another device in; whatever order they come in, the union is the same.</summary>
    public async Task<Appended> MergeAsync(ReadOnlyMemory<byte> utf8, CancellationToken cancel)
    {
        var reading = EntryReader.Read(utf8.Span);
        if (reading.IsRefused) return new Appended { Problems = reading.Problems };
        var entry = reading.Entry;
        string id = entry.Id.ToString(), hash = entry.ComputeHash();
        if (await context.Entries.AsNoTracking().FirstOrDefaultAsync(row => row.Id == id, cancel) is { } there)
        {
            return there.Hash == hash ? new Appended { Entry = entry, WasThere = true } : Appended.Refuse("/id", id, "an id that no other entry has");
        }

        var around = await context.Entries.AsNoTracking().Where(row => row.Device == entry.Device && row.Place >= entry.Place - 1 && row.Place <= entry.Place + 1).ToListAsync(cancel);
        if (around.Any(row => row.Place == entry.Place)) return Appended.Refuse("/place", $"{entry.Place}", $"a place of the chain of '{entry.Device}' at which no other entry stands");
        if (around.Any(row => row.Place == entry.Place - 1 && row.Hash != entry.Previous)) return Appended.Refuse("/previous", entry.Previous, "the hash of the entry before it");
        if (around.Any(row => row.Place == entry.Place + 1 && Parsed(row.Text).Previous != hash)) return Appended.Refuse("", hash, "the entry that the one after it follows");

        var payload = PayloadReader.Read(entry).Payload;
        await AddAsync(entry, payload, clock.GetUtcNow(), cancel);
        await context.SaveChangesAsync(cancel);
        if (payload is PersonErased erased) await ForgetAsync(erased.Person, cancel);
        context.ChangeTracker.Clear(); // a long merge must not grow with what it has written
        return new Appended { Entry = entry };
    }

    /// <summary>Notes a photograph that lies in the folder.</summary>
    /// <returns>Whether it had not been noted yet, and whether anything of what is noted changed.</returns>
    public async Task<(bool IsNew, bool IsChanged)> NoteAsync(PhotographAdding adding, PhotographJudgement judgement, CancellationToken cancel)
    {
        var row = await context.Photographs.FindAsync([adding.Sha256], cancel);
        bool isNew = row is null;
        if (row is null)
        {
            row = new PhotographRow { Sha256 = adding.Sha256!, Bytes = adding.Bytes, Received = Receipt.Moment(clock.GetUtcNow()) };
            context.Photographs.Add(row);
        }

        if (judgement.MediaType is not null) (row.MediaType, row.Width, row.Height) = (judgement.MediaType, judgement.Width, judgement.Height);
        row.Receipt = Receipt.Of(row);
        return (isNew, await context.SaveChangesAsync(cancel) > 0);
    }

    /// <summary>Keeps a text, unless its person was erased.</summary>
    public async Task<bool> KeepAsync(SealedText text, CancellationToken cancel)
    {
        if (await context.Erasures.AnyAsync(row => row.Person == text.Person, cancel)) return false;
        string seal = text.Seal().Sha256;
        if (await context.SealedTexts.FindAsync([seal], cancel) is not null) return true;
        touched.UnionWith(await context.SampleSeals.Where(row => row.Sha256 == seal).Select(row => row.Sample).ToListAsync(cancel)); // whose entries were here first
        context.SealedTexts.Add(new SealedRow { Sha256 = seal, Person = text.Person, Salt = text.Salt.ToArray(), Text = text.Text });
        await context.SaveChangesAsync(cancel);
        return true;
    }

    /// <summary>Deletes the texts about a person, and notes that none may come back.</summary>
    /// <returns>How many were deleted.</returns>
    public async Task<int> ForgetAsync(string person, CancellationToken cancel)
    {
        if (await context.Erasures.FindAsync([person], cancel) is null)
        {
            context.Erasures.Add(new ErasureRow { Person = person });
            await context.SaveChangesAsync(cancel);
        }

        touched.UnionWith(await context.SampleSeals.Where(row => row.Person == person).Select(row => row.Sample).Distinct().ToListAsync(cancel));
        await context.PersonWords.Where(row => row.Person == person).ExecuteDeleteAsync(cancel);
        HasForgotten = true;
        return await context.SealedTexts.Where(row => row.Person == person).ExecuteDeleteAsync(cancel);
    }

    /// <summary>The samples that hold a seal of a person and do not say yet that the person was erased.</summary>
    public async Task<ImmutableArray<EntryId>> SamplesOfAsync(string person, CancellationToken cancel)
    {
        string seal = $"{{\"person\":{CanonicalJson.Of(person)},\"sha256\":", erased = $"\"payload\":{new PersonErased(person).ToJson()}";
        var holding = await context.Entries.Where(row => row.Text.Contains(seal)).Select(row => row.Sample).Distinct().ToListAsync(cancel);
        var told = await context.Entries.Where(row => row.Kind == EntryKind.PersonErased && row.Text.Contains(erased)).Select(row => row.Sample).Distinct().ToListAsync(cancel);
        return [.. holding.Except(told).Order(StringComparer.Ordinal).Select(EntryId.Parse)];
    }

    private async Task AddAsync(Entry entry, Payload? payload, DateTimeOffset now, CancellationToken cancel)
    {
        string text = entry.Canonical(), hash = Entry.HashOf(text);
        Written.Add(entry.Kind);
        touched.Add(entry.Sample.ToString());
        lastRow ??= await context.Entries.MaxAsync(there => (long?)there.Row, cancel) ?? 0;
        var row = new EntryRow
        {
            Row = (lastRow += 1).Value,
            Id = entry.Id.ToString(),
            Sample = entry.Sample.ToString(),
            Device = entry.Device,
            Place = entry.Place,
            Kind = entry.Kind,
            Text = text,
            Hash = hash,
            Received = Receipt.Moment(now),
        };
        row.Receipt = Receipt.Of(row);
        context.Entries.Add(row);
        if (await context.Chains.FindAsync([entry.Device], cancel) is not { } end) context.Chains.Add(new ChainRow { Device = entry.Device, Place = entry.Place, Hash = hash });
        else if (end.Place < entry.Place) (end.Place, end.Hash) = (entry.Place, hash);

        await PhotographUse.NoteAsync(context, entry, payload, cancel);
        if ((payload is Correction { Replacement: { } replacement } ? replacement : payload) is not Numbered { Number: var number }) return;
        string written = number.ToString(), sample = entry.Sample.ToString();
        if (await context.Numbers.FindAsync([written, sample], cancel) is null) context.Numbers.Add(new NumberRow { Number = written, Sample = sample, Year = number.Year, Running = number.Running });
    }

    private async Task<Appended?> RefusalAsync(EntryDraft draft, string json, CancellationToken cancel)
    {
        var reading = PayloadReader.Read(draft.Payload.Kind, draft.Payload.Version, json);
        if (reading.Payload is null) return new Appended { Problems = reading.Problems };
        if (draft.Sample is null != draft.Payload is TakenIn) return Appended.Refuse("/sample", draft.Sample?.ToString() ?? "(missing)", draft.Sample is null ? "the sample that it belongs to" : "no sample, as it takes one in");
        if (draft.Sample is { } sample && !await context.Entries.AnyAsync(row => row.Sample == sample.ToString(), cancel)) return Appended.Refuse("/sample", sample.ToString(), "a sample that is in the ledger");
        if (draft.Payload is PhotographAdded added)
        {
            if (await context.Photographs.AsNoTracking().FirstOrDefaultAsync(row => row.Sha256 == added.Sha256, cancel) is not { } stored) return Appended.Refuse("/payload/sha256", added.Sha256, "a photograph that is stored");
            if (stored.Bytes != added.Bytes) return Appended.Refuse("/payload/bytes", $"{added.Bytes}", $"{stored.Bytes}");
            if (stored.MediaType is { } type && type != added.MediaType) return Appended.Refuse("/payload/mediaType", added.MediaType, type);
        }

        string[] seen = [.. draft.Heads?.Select(head => head.ToString()).Distinct() ?? []];
        if (seen.Length > 0 && await context.Entries.CountAsync(row => seen.Contains(row.Id) && row.Sample == draft.Sample.ToString(), cancel) != seen.Length) return Appended.Refuse("/heads", string.Join(' ', seen), "entries of the sample");

        var seals = draft.Payload.Seals.ToList();
        foreach (var text in draft.Texts)
        {
            if (text.Fault() is { } fault) return Appended.Refuse("/texts", fault.Found, fault.Accepted);
            if (!seals.Remove(text.Seal())) return Appended.Refuse("/texts", text.Seal().Sha256, "texts whose seals the payload holds");
            if (await context.Erasures.AnyAsync(row => row.Person == text.Person, cancel)) return Appended.Refuse("/texts", text.Person, "a person who was not erased");
        }

        foreach (var seal in seals)
        {
            if (await context.SealedTexts.FindAsync([seal.Sha256], cancel) is null) return Appended.Refuse("/payload", seal.Sha256, "the seal of a text that is stored or sent with it");
        }

        return null;
    }

    private async Task<ImmutableArray<EntryId>> HeadsOfAsync(EntryId sample, CancellationToken cancel)
    {
        var texts = await context.Entries.AsNoTracking().Where(row => row.Sample == sample.ToString()).Select(row => row.Text).ToListAsync(cancel);
        return SampleOrder.HeadsOf(texts.Select(Parsed));
    }

    /// <summary>The same content is what a person said, not what the ledger added.</summary>
    private static Appended SameOrRefused(EntryDraft draft, string json, Entry there)
    {
        bool isSame = there.Payload == json && there.Kind == draft.Payload.Kind && there.Author == draft.Author && there.Sample == (draft.Sample ?? there.Id) && (draft.Made is null || draft.Made == there.Made);
        return isSame ? new Appended { Entry = there, WasThere = true } : Appended.Refuse("/id", there.Id.ToString(), "an id that no other entry has");
    }

    private static EntryId NewId(DateTimeOffset now)
    {
        Span<byte> random = stackalloc byte[10];
        RandomNumberGenerator.Fill(random);
        return EntryId.From(now, random);
    }

    /// <summary>An entry as it was stored.</summary>
    /// <exception cref="InvalidDataException">It was changed since.</exception>
    internal static Entry Parsed(string text) => EntryReader.Read(Encoding.UTF8.GetBytes(text)).Entry ?? throw new InvalidDataException("The ledger holds an entry that cannot be read; abaxial ledger check names it.");
}

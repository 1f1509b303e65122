using System.Collections.Immutable;
using System.Security.Cryptography;
using Abaxial.Data;
using Abaxial.Samples;
using Abaxial.Weighing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Samples;

/// <summary>
/// What the server adds to what is said: salts and seals of texts about people, the id of a sender who gave none, what the engine says. Where the same entry is sent again, it adds what it
/// added the first time, so that it can be told whether the same was said.
/// </summary>
internal sealed class Sealing
{
    private readonly Payload? before;
    private readonly IReadOnlyList<SealedRow> kept;
    private readonly Func<int, EngineSaid?> weigh;
    private readonly List<SealedText> texts = [];

    private Sealing(string sender, Payload? before, IReadOnlyList<SealedRow> kept, Func<int, EngineSaid?> weigh)
    {
        Sender = sender;
        this.before = before;
        this.kept = kept;
        this.weigh = weigh;
    }

    /// <summary>The person whom texts of the sample are about where nothing else is said.</summary>
    public string Sender { get; }

    /// <summary>The texts that were sealed.</summary>
    public ImmutableArray<SealedText> Texts => [.. texts];

    /// <summary>For a sample that is taken in.</summary>
    public static Task<Sealing> OfNewAsync(LedgerContext context, EntryId? id, CancellationToken cancel) => OfAsync(context, id, null, _ => null, cancel);

    /// <summary>For an entry of a sample.</summary>
    /// <param name="context">The store.</param>
    /// <param name="id">The id that the entry shall have, where it is known.</param>
    /// <param name="view">The sample.</param>
    /// <param name="weigher">Says what the engine says.</param>
    /// <param name="cancel">Ends the wait.</param>
    public static Task<Sealing> OfAsync(LedgerContext context, EntryId? id, SampleView view, Weigher weigher, CancellationToken cancel)
    {
        return OfAsync(context, id, view.TakenIn?.Submitter ?? $"sender-{view.Sample}", EngineOf, cancel);

        EngineSaid? EngineOf(int number)
        {
            if (view.Cases.FirstOrDefault(part => part.Number == number)?.Reading.Case is not { } weighed) return null;
            var answer = weigher.Weigh(weighed);
            return new EngineSaid(answer.Knowledge, answer.Standing.Word(), answer.Causes[0].Cause.Id);
        }
    }

    public Seal Seal(string person, string text)
    {
        byte[] salt = kept.FirstOrDefault(row => row.Person == person && row.Text == text)?.Salt ?? RandomNumberGenerator.GetBytes(SealedText.SaltLength);
        var sealedText = new SealedText(person, salt, text);
        texts.Add(sealedText);
        return sealedText.Seal();
    }

    public EngineSaid? EngineOf(int number) => before is DiagnosisSigned signed && signed.Case == number ? signed.Engine : weigh(number);

    private static async Task<Sealing> OfAsync(LedgerContext context, EntryId? id, string? sender, Func<int, EngineSaid?> weigh, CancellationToken cancel)
    {
        var before = id is { } known && await EntryAsync(context, known, cancel) is { } entry ? PayloadReader.Read(entry).Payload : null;
        if (before is Correction { Replacement: { } replacement }) before = replacement;
        string[] seals = [.. before?.Seals.Select(seal => seal.Sha256) ?? []];
        var kept = seals.Length == 0 ? [] : await context.SealedTexts.AsNoTracking().Where(row => seals.Contains(row.Sha256)).ToListAsync(cancel);
        sender ??= (before as TakenIn)?.Submitter ?? $"sender-{Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(6))}";
        return new Sealing(sender, before, kept, weigh);
    }

    private static async Task<Entry?> EntryAsync(LedgerContext context, EntryId id, CancellationToken cancel)
    {
        string written = id.ToString();
        return await context.Entries.AsNoTracking().Where(row => row.Id == written).Select(row => row.Text).FirstOrDefaultAsync(cancel) is { } text ? EntryReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Entry : null;
    }
}

using Abaxial.Data;
using Abaxial.Weighing;

namespace Abaxial.Web.Photographs;

/// <summary>
/// The sizes of photographs, in a folder <c>derived</c> beside the photographs. They are made when a photograph comes in, and again where they are missing: the folder may be deleted at any
/// time, and no backup holds it.
/// </summary>
public sealed class PhotographSizes
{
    private readonly Ledger ledger;
    private readonly PhotographWorker worker;
    private readonly PhotographOptions options;
    private readonly string folder;
    private readonly string incoming;

    public PhotographSizes(Ledger ledger, PhotographWorker worker, PhotographOptions options)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        (this.ledger, this.worker, this.options) = (ledger, worker, options);
        folder = Path.Combine(ledger.Folder, "derived");
        incoming = Path.Combine(folder, "incoming");
        if (Directory.Exists(incoming)) Directory.Delete(incoming, recursive: true); // what a program that was killed left
        Directory.CreateDirectory(incoming);
    }

    /// <summary>Takes a photograph in: onto the disk as it comes, decoded to the last pixel, and only then stored.</summary>
    /// <exception cref="PhotographsBusyException">Too many are being decoded.</exception>
    public async Task<PhotographTaken> TakeInAsync(Stream bytes, CancellationToken cancel = default)
    {
        var verdict = new PhotographVerdict();
        var adding = await ledger.AddPhotographAsync(bytes, JudgeAsync, cancel);
        return new PhotographTaken(adding, verdict.Problem, verdict.Kind?.MediaType, verdict.Width, verdict.Height);

        async Task<PhotographJudgement> JudgeAsync(string file, string sha256, CancellationToken stop)
        {
            verdict = await DecodeAsync(file, sha256, stop);
            return verdict.Problem is { } problem
                ? new PhotographJudgement { Refusal = $"It is {problem.Found}." }
                : new PhotographJudgement { MediaType = verdict.Kind!.MediaType, Width = verdict.Width, Height = verdict.Height };
        }
    }

    /// <summary>
    /// The copy of a photograph that may leave the clinic, in a letter or a notice: pixels alone, as a JPEG of the working size, without position, camera, profile or comment. Nothing else of a
    /// photograph may.
    /// </summary>
    /// <returns>The copy, which the caller disposes of; null where the photograph is not here, or can no longer be decoded.</returns>
    /// <exception cref="PhotographsBusyException">Too many are being decoded.</exception>
    public async Task<Stream?> OutsideCopyAsync(string sha256, CancellationToken cancel = default) => await FileOfAsync(sha256, PhotographSize.Work, cancel) is { } file ? File.OpenRead(file) : null;

    /// <summary>The file of a size, which is made where it is missing; null where the photograph is not here, or can no longer be decoded.</summary>
    /// <exception cref="PhotographsBusyException">Too many are being decoded.</exception>
    internal async Task<string?> FileOfAsync(string sha256, PhotographSize size, CancellationToken cancel)
    {
        string original = ledger.Photographs.PathOf(sha256), file = PathOf(sha256, size);
        if (PhotographCopy.IsWhole(file)) return file;
        if (!File.Exists(original)) return null;
        return (await DecodeAsync(original, sha256, cancel)).Problem is null ? file : null;
    }

    /// <summary>Decodes a file that is, or is to be, a photograph, and makes its sizes.</summary>
    /// <exception cref="PhotographsBusyException">Too many are being decoded.</exception>
    internal Task<PhotographVerdict> DecodeAsync(string file, string sha256, CancellationToken cancel) =>
        worker.TryRun(either => Decode(file, sha256, either), cancel) ?? throw new PhotographsBusyException();

    private PhotographVerdict Decode(string file, string sha256, CancellationToken cancel)
    {
        var made = new Dictionary<PhotographSize, string>();
        try
        {
            var verdict = PhotographDecoding.Decode(file, options, size => made[size] = Path.Combine(incoming, Path.GetRandomFileName()), cancel);
            if (verdict.Problem is null) Keep(made, sha256);
            return verdict;
        }
        finally
        {
            foreach (string temporary in made.Values) File.Delete(temporary);
        }
    }

    private void Keep(Dictionary<PhotographSize, string> made, string sha256)
    {
        foreach (var (size, temporary) in made)
        {
            string file = PathOf(sha256, size);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.Move(temporary, file, overwrite: true);
        }
    }

    private string PathOf(string sha256, PhotographSize size) => Path.Combine(folder, sha256[..2], $"{sha256}-{size.Name}.jpg");
}

/// <summary>What became of a photograph that came in.</summary>
/// <param name="Adding">Its hash, or why it was not stored.</param>
/// <param name="Problem">What is wrong with its bytes; null where nothing is.</param>
/// <param name="MediaType">What its bytes are; null where it was refused.</param>
/// <param name="Width">Pixels across, the right way up.</param>
/// <param name="Height">Pixels down, the right way up.</param>
public sealed record PhotographTaken(PhotographAdding Adding, CaseProblem? Problem, string? MediaType, int Width, int Height);

/// <summary>Too many photographs are being received or decoded: it is to be tried again in a moment.</summary>
public sealed class PhotographsBusyException() : Exception("Too many photographs are being decoded at the moment.");

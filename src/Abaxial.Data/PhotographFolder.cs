using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;

namespace Abaxial.Data;

/// <summary>What became of a photograph that was to be stored.</summary>
public sealed record PhotographAdding
{
    /// <summary>The SHA-256 of its bytes; null where it was refused.</summary>
    public string? Sha256 { get; init; }

    public long Bytes { get; init; }

    /// <summary>Why it was refused, in a sentence; null otherwise.</summary>
    public string? Refusal { get; init; }

    [MemberNotNullWhen(false, nameof(Sha256))]
    [MemberNotNullWhen(true, nameof(Refusal))]
    public bool IsRefused => Sha256 is null;
}

/// <summary>
/// Photographs by the hash of their bytes, each once. One is written under a temporary name, brought to the disk, then renamed: under its hash there is never half a photograph.
/// </summary>
public sealed class PhotographFolder
{
    /// <summary>Bytes of one photograph: 100 MiB.</summary>
    public const long MostBytes = 100L << 20;

    private static readonly TimeSpan Abandoned = TimeSpan.FromDays(1);

    private readonly string folder;
    private readonly string incoming;

    internal PhotographFolder(string folder)
    {
        this.folder = folder;
        incoming = Path.Combine(folder, "incoming");
    }

    /// <summary>Opens the file that new photographs are written to; tests put a full disk in its place.</summary>
    internal Func<string, Stream> OpenNew { get; set; } = file => new FileStream(file, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);

    /// <summary>Where a photograph lies, whether or not it is there.</summary>
    public string PathOf(string sha256)
    {
        ArgumentNullException.ThrowIfNull(sha256);
        if (!IsName(sha256)) throw new ArgumentException($"'{sha256}' is no SHA-256.", nameof(sha256));
        return Path.Combine(folder, sha256[..2], sha256);
    }

    /// <summary>What lies in the folder under a hash, whether or not the database knows it.</summary>
    internal IEnumerable<string> Names() =>
        Directory.EnumerateDirectories(folder, "??").SelectMany(Directory.EnumerateFiles).Select(file => Path.GetFileName(file)!).Where(IsName);

    private static bool IsName(string name) => name.Length == 64 && name.All(char.IsAsciiHexDigitLower);

    /// <summary>Makes the folders, and takes away what programs that were killed left half written.</summary>
    internal void Prepare()
    {
        if (!Directory.Exists(incoming))
        {
            Directory.CreateDirectory(incoming);
            Disk.FlushFolder(folder);
        }

        foreach (string file in Directory.EnumerateFiles(incoming))
        {
            var age = File.GetLastWriteTimeUtc(file);
            if (age < Directory.GetLastWriteTimeUtc(incoming) - Abandoned) File.Delete(file);
        }
    }

    internal async Task<PhotographAdding> AddAsync(Stream bytes, CancellationToken cancel)
    {
        string temporary = Path.Combine(incoming, Path.GetRandomFileName());
        try
        {
            var adding = await WriteAsync(bytes, temporary, cancel);
            if (!adding.IsRefused) MoveIn(temporary, adding.Sha256);
            return adding;
        }
        catch (IOException full) when (Disk.IsFull(full))
        {
            return new PhotographAdding { Refusal = "The disk is full: the photograph was not stored." };
        }
        finally
        {
            File.Delete(temporary); // where it was moved there is nothing to delete
        }
    }

    private async Task<PhotographAdding> WriteAsync(Stream bytes, string temporary, CancellationToken cancel)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        long length = 0;
        await using (var file = OpenNew(temporary))
        {
            byte[] buffer = new byte[80 << 10];
            int read;
            while ((read = await bytes.ReadAsync(buffer, cancel)) > 0)
            {
                length += read;
                if (length > MostBytes) return new PhotographAdding { Refusal = $"The photograph has more than {MostBytes} bytes." };
                hash.AppendData(buffer, 0, read);
                await file.WriteAsync(buffer.AsMemory(0, read), cancel);
            }

            if (file is FileStream onDisk) onDisk.Flush(flushToDisk: true);
            else await file.FlushAsync(cancel);
        }

        return length == 0 ? new PhotographAdding { Refusal = "The photograph is empty." } : new PhotographAdding { Sha256 = Convert.ToHexStringLower(hash.GetHashAndReset()), Bytes = length };
    }

    private void MoveIn(string temporary, string sha256)
    {
        string file = PathOf(sha256), inside = Path.GetDirectoryName(file)!;
        Directory.CreateDirectory(inside);
        File.Move(temporary, file, overwrite: true); // the same bytes, where they are there already
        Disk.FlushFolder(inside);
        Disk.FlushFolder(folder); // also where another writer made the folder inside: it may not have come so far
    }
}

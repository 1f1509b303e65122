using Abaxial.Weighing;
using ImageMagick;

namespace Abaxial.Web.Photographs;

/// <summary>What came of decoding a photograph.</summary>
internal sealed record PhotographVerdict
{
    /// <summary>What is wrong with it; null where nothing is.</summary>
    public CaseProblem? Problem { get; init; }

    public PhotographKind? Kind { get; init; }

    /// <summary>Pixels across, the right way up.</summary>
    public int Width { get; init; }

    /// <summary>Pixels down, the right way up.</summary>
    public int Height { get; init; }
}

/// <summary>Decodes a photograph to the last pixel, and makes its sizes from what was decoded: pixels alone, nothing of the file.</summary>
internal static class PhotographDecoding
{
    private const string Bytes = "/photograph";

    /// <summary>Decodes a file and writes its sizes to where they are wanted. Blocks; where it is refused nothing is written.</summary>
    /// <exception cref="IOException">A file cannot be read or written.</exception>
    /// <exception cref="OperationCanceledException">It was canceled between two steps.</exception>
    public static PhotographVerdict Decode(string file, PhotographOptions options, Func<PhotographSize, string> target, CancellationToken cancel)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
        byte[] head = new byte[PhotographKind.HeadLength];
        int read = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        if (PhotographKind.Of(head.AsSpan(0, read)) is not { } kind) return Refuse(Beginning(head.AsSpan(0, read)), PhotographKind.Names);
        if (kind == PhotographKind.WebP && PhotographKind.IsAnimatedWebP(head)) return Refuse("an animation", "one picture");
        if (kind == PhotographKind.Heic && HeicBoxes.BreakOff(stream)) return Refuse("a HEIC that breaks off", "a whole HEIC");
        if (kind == PhotographKind.Jpeg && JpegScans.Count(stream) is > JpegScans.Most and var scans) return Refuse($"{scans} scans", $"at most {JpegScans.Most} scans");
        try
        {
            if (TooLarge(stream, kind, options) is { } refusal) return refusal;
            cancel.ThrowIfCancellationRequested();
            return Decode(stream, kind, target, cancel);
        }
        catch (MagickResourceLimitErrorException)
        {
            return Refuse($"a {kind.Name} that takes too long, or too much memory, to decode", Accepted(options));
        }
        catch (MagickCacheErrorException)
        {
            return Refuse($"a {kind.Name} that takes too much memory to decode", Accepted(options));
        }
        catch (MagickException)
        {
            return Refuse($"a {kind.Name} that cannot be decoded", $"a whole {kind.Name}");
        }
    }

    private static PhotographVerdict? TooLarge(FileStream stream, PhotographKind kind, PhotographOptions options)
    {
        stream.Position = 0;
        using var image = new MagickImage();
        image.Ping(stream, new MagickReadSettings { Format = kind.Format });
        return (long)image.Width * image.Height <= options.MostPixels ? null : Refuse($"{image.Width} x {image.Height} pixels", Accepted(options));
    }

    private static PhotographVerdict Decode(FileStream stream, PhotographKind kind, Func<PhotographSize, string> target, CancellationToken cancel)
    {
        stream.Position = 0;
        using var image = new MagickImage();
        bool isCutOff = false;
        image.Warning += (_, warning) => isCutOff |= warning.Message?.Contains("premature end", StringComparison.OrdinalIgnoreCase) == true;
        image.Read(stream, new MagickReadSettings { Format = kind.Format, FrameIndex = 0, FrameCount = 1 });
        if (isCutOff) return Refuse($"a {kind.Name} that breaks off", $"a whole {kind.Name}");

        var (width, height) = ((int)image.Width, (int)image.Height);
        bool isOnItsSide = image.Orientation is Orientation.LeftTop or Orientation.RightTop or Orientation.RightBottom or Orientation.LeftBottom;
        foreach (var size in PhotographSize.Derived) // the larger first: the smaller is made from it
        {
            cancel.ThrowIfCancellationRequested();
            PhotographCopy.Write(image, size, target(size));
        }

        return new PhotographVerdict { Kind = kind, Width = isOnItsSide ? height : width, Height = isOnItsSide ? width : height };
    }

    private static PhotographVerdict Refuse(string found, params string[] accepted) => new() { Problem = new CaseProblem(Bytes, found, [.. accepted]) };

    private static string Accepted(PhotographOptions options) => $"at most {options.MostPixels} pixels";

    private static string Beginning(ReadOnlySpan<byte> head) => head.IsEmpty ? "no bytes" : $"bytes that begin with {Convert.ToHexStringLower(head[..Math.Min(8, head.Length)])}";
}

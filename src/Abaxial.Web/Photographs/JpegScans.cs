namespace Abaxial.Web.Photographs;

/// <summary>The scans of a JPEG: a progressive one goes over all of its pixels with each, so that a small file can ask for very much work.</summary>
internal static class JpegScans
{
    /// <summary>Cameras and editors write about ten; a file may hold some pictures more behind the first.</summary>
    public const int Most = 200;

    private static ReadOnlySpan<byte> Start => [0xff, 0xda];

    /// <summary>How many scans begin in a file. Compressed data hold no such bytes by themselves (ITU-T T.81, B.1.1.5); what else the file holds may add a few.</summary>
    public static int Count(Stream file)
    {
        file.Position = 0;
        byte[] buffer = new byte[64 << 10];
        int count = 0, kept = 0, read;
        while ((read = file.Read(buffer, kept, buffer.Length - kept)) > 0)
        {
            var bytes = buffer.AsSpan(0, kept + read);
            count += bytes.Count(Start);
            kept = bytes[^1] == Start[0] ? 1 : 0; // a marker may lie across two pieces
            buffer[0] = Start[0];
        }

        return count;
    }
}

using System.Runtime.InteropServices;

namespace Abaxial.Data;

/// <summary>What the framework does not offer about disks.</summary>
internal static partial class Disk
{
    private const int NoSpace = 28;         // ENOSPC
    private const int QuotaSpent = 122;     // EDQUOT on Linux
    private const int WindowsFull = unchecked((int)0x80070070);

    public static bool IsFull(IOException fault) => fault.HResult is NoSpace or QuotaSpent or WindowsFull;

    /// <summary>The exception of a full disk that somebody else met.</summary>
    public static IOException Full(string words, Exception cause) => new(words, cause) { HResult = NoSpace };

    /// <summary>Brings the names in a folder to the disk. A file that was renamed is found under its new name after a power cut only once that was done; Windows does it by itself.</summary>
    /// <exception cref="IOException">The disk does not do it.</exception>
    public static void FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows()) return;
        int handle = Open(folder, 0);
        if (handle < 0) throw new IOException($"'{folder}' cannot be opened (error {Marshal.GetLastPInvokeError()}).");
        try
        {
            if (Fsync(handle) != 0) throw new IOException($"'{folder}' cannot be brought to the disk (error {Marshal.GetLastPInvokeError()}).");
        }
        finally
        {
            _ = Close(handle);
        }
    }

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int Fsync(int handle);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    private static partial int Close(int handle);
}

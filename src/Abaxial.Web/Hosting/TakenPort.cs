using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace Abaxial.Web.Hosting;

/// <summary>Ports that somebody else listens on.</summary>
public static class TakenPort
{
    private static readonly string[] Tables = ["/proc/net/tcp", "/proc/net/tcp6"];

    /// <summary>The address itself, or with the next port that is free; null where none of the next hundred is.</summary>
    public static Uri? NextFree(Uri address)
    {
        ArgumentNullException.ThrowIfNull(address);
        if (address.Port == 0) return address;
        for (int port = address.Port; port < Math.Min(address.Port + 100, IPEndPoint.MaxPort + 1); port++)
        {
            var next = new UriBuilder(address) { Port = port }.Uri;
            if (IsFree(next)) return next;
        }

        return null;
    }

    /// <summary>What listens on a port, as "process 4711 (name)"; null where that cannot be told. Known on Linux, of programs that the asking person may look at.</summary>
    public static string? HolderOf(int port)
    {
        if (!OperatingSystem.IsLinux()) return null;
        var sockets = SocketsOn(port);
        if (sockets.Count == 0) return null;
        foreach (string process in Directory.EnumerateDirectories("/proc").Where(folder => Path.GetFileName(folder).All(char.IsAsciiDigit)))
        {
            try
            {
                if (!Directory.EnumerateFileSystemEntries(Path.Combine(process, "fd")).Any(file => new FileInfo(file).LinkTarget is { } target && sockets.Contains(target))) continue;
                return $"process {Path.GetFileName(process)} ({File.ReadAllText(Path.Combine(process, "comm")).TrimEnd()})";
            }
            catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
            {
                // It ended meanwhile, or belongs to somebody else.
            }
        }

        return null;
    }

    /// <summary>Whether nobody listens there; port 0 is always free.</summary>
    public static bool IsFree(Uri address)
    {
        ArgumentNullException.ThrowIfNull(address);
        if (address.Port == 0) return true;

        var ip = address.Host == "localhost" ? IPAddress.Loopback : IPAddress.Parse(address.Host.Trim('[', ']'));
        using var listener = new TcpListener(ip, address.Port);
        try
        {
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    /// <summary>The sockets that listen on a port, as links of a process name them. State 0A of the kernel's table is "listens".</summary>
    private static HashSet<string> SocketsOn(int port)
    {
        string end = string.Create(CultureInfo.InvariantCulture, $":{port:X4}");
        var sockets = new HashSet<string>(StringComparer.Ordinal);
        foreach (string table in Tables.Where(File.Exists))
        {
            foreach (string[] columns in File.ReadLines(table).Skip(1).Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)))
            {
                if (columns.Length > 9 && columns[3] == "0A" && columns[1].EndsWith(end, StringComparison.Ordinal)) sockets.Add($"socket:[{columns[9]}]");
            }
        }

        return sockets;
    }
}

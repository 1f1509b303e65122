using System.Net;
using Microsoft.Extensions.Logging;

namespace Abaxial.Web.Hosting;

/// <summary>How the values of settings are written; null where a text is no such value.</summary>
internal static class SettingForms
{
    public const string AddressForm = "an address as http://127.0.0.1:5171: http or https, localhost or an IP address, a port, no path";

    public static Uri? Address(string text)
    {
        if (Web(text) is not { } address || !IsBare(address) || !HasPort(text)) return null;
        return address.IsLoopback || address.HostNameType is UriHostNameType.IPv4 or UriHostNameType.IPv6 ? address : null;
    }

    public static Uri? PublicUrl(string text) => Web(text) is { } address && IsBare(address) ? address : null;

    public static Uri? Web(string text) => Uri.TryCreate(text, UriKind.Absolute, out var address) && (address.Scheme == Uri.UriSchemeHttp || address.Scheme == Uri.UriSchemeHttps) ? address : null;

    public static IPNetwork? Network(string text)
    {
        if (IPAddress.TryParse(text, out var one)) return new IPNetwork(one, one.GetAddressBytes().Length * 8);
        return IPNetwork.TryParse(text, out var network) ? network : null;
    }

    public static LogLevel? Level(string text) => text switch
    {
        "debug" => LogLevel.Debug,
        "information" => LogLevel.Information,
        "warning" => LogLevel.Warning,
        "error" => LogLevel.Error,
        _ => null,
    };

    private static bool IsBare(Uri address) => address is { AbsolutePath: "/", Query: "", Fragment: "", UserInfo: "" };

    /// <summary>The port has to be said: the usual ones of the web are not given to everyone, and a clinic does not guess where it is found.</summary>
    private static bool HasPort(string text) => text.TrimEnd('/').LastIndexOf(':') is var colon and > 0 && text.TrimEnd('/')[(colon + 1)..].All(char.IsAsciiDigit);
}

using System.Collections.Immutable;
using Abaxial.Weighing;

namespace Abaxial.Web.Hosting;

/// <summary>Where a clinic may listen (docs/decisions/0020): on its own machine, or where what is sent cannot be read on the way.</summary>
public static class ListeningRules
{
    private const string Why = "over plain HTTP passwords and records can be read on the way, and telephones refuse camera, offline page and passkeys";

    /// <summary>Why the clinic would not listen so; empty where it would.</summary>
    internal static ImmutableArray<CaseProblem> Problems(ClinicOptions options)
    {
        var problems = ImmutableArray.CreateBuilder<CaseProblem>();
        foreach (var address in options.Addresses)
        {
            if (IsHttps(address) && options.Certificate is null) Refuse("--certificate", "(missing)", $"the certificate for {Shown(address)}");
            if (!IsHttps(address) && !address.IsLoopback && options.Proxies.IsEmpty) Refuse("--address", $"{Shown(address)} ({Why})", "a loopback address", "https with --certificate", "a --proxy in front that speaks HTTPS");
        }

        if (options.Addresses.Distinct().Count() < options.Addresses.Length) Refuse("--address", string.Join(' ', options.Addresses.Select(Shown)), "each address once");
        if (options.Certificate is not null && !options.Addresses.Any(IsHttps)) Refuse("--address", string.Join(' ', options.Addresses.Select(Shown)), "an https address, as there is a certificate");
        bool isSeen = !options.Proxies.IsEmpty || options.Addresses.Any(address => !address.IsLoopback);
        if (isSeen && options.PublicUrl is null) Refuse("--public-url", "(missing)", "the address that people and devices use: requests for another name are refused, and links are made with it");
        if (options.PublicUrl is { IsLoopback: false } url && !IsHttps(url)) Refuse("--public-url", $"{Shown(url)} ({Why})", "an https address");
        return problems.ToImmutable();

        void Refuse(string at, string found, params ReadOnlySpan<string> accepted) => problems.Add(new CaseProblem(at, found, [.. accepted]));
    }

    /// <summary>An address as people write it.</summary>
    public static string Shown(Uri address) => address.GetLeftPart(UriPartial.Authority);

    private static bool IsHttps(Uri address) => address.Scheme == Uri.UriSchemeHttps;
}

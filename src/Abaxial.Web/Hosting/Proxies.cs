using System.Net;
using Abaxial.Web.Hosting.Faults;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Hosting;

/// <summary>Who stands between the clinic and those who ask, and by which names it is called.</summary>
internal static class Proxies
{
    public static void AddProxies(this WebApplicationBuilder builder, ClinicOptions options)
    {
        builder.Services.Configure<ForwardedHeadersOptions>(forwarded =>
        {
            forwarded.ForwardedHeaders = options.Proxies.IsEmpty ? ForwardedHeaders.None : ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost;
            forwarded.ForwardLimit = null; // as far as the proxies are named
            forwarded.KnownProxies.Clear();
            forwarded.KnownIPNetworks.Clear();
            foreach (var network in options.Proxies) forwarded.KnownIPNetworks.Add(network);
            forwarded.AllowedHosts = [.. HostsOf(options)];
        });
    }

    public static void UseProxies(this WebApplication app, ClinicOptions options)
    {
        if (!options.Proxies.IsEmpty) app.Use((context, next) => IsExpected(context.Connection.RemoteIpAddress, context.Request.IsHttps, options) ? next(context) : FaultAnswers.WriteAsync(context, StatusCodes.Status403Forbidden));
        app.UseForwardedHeaders();
        var names = HostsOf(options).ToHashSet(StringComparer.OrdinalIgnoreCase);
        app.Use((context, next) => names.Contains(context.Request.Host.Host) ? next(context) : FaultAnswers.WriteAsync(context, StatusCodes.Status421MisdirectedRequest));
    }

    /// <summary>The names that the clinic answers to: others are a page of another site that had its name point here.</summary>
    internal static IEnumerable<string> HostsOf(ClinicOptions options) =>
        options.Addresses.Append(options.PublicUrl).OfType<Uri>().Select(address => address.Host).Concat(["localhost", "127.0.0.1", "[::1]"]).Where(host => host is not ("0.0.0.0" or "[::]")).Distinct();

    /// <summary>Behind a proxy nobody else speaks plain HTTP with the clinic: who finds its port would go round the proxy's HTTPS.</summary>
    internal static bool IsExpected(IPAddress? from, bool isHttps, ClinicOptions options)
    {
        if (from is null || isHttps) return isHttps;
        if (from.IsIPv4MappedToIPv6) from = from.MapToIPv4();
        return IPAddress.IsLoopback(from) || options.Proxies.Any(proxy => proxy.Contains(from));
    }
}

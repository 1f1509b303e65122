using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Https;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Abaxial.Web.Hosting;

/// <summary>Where the server listens, and how much of anybody's time and memory one connection may take.</summary>
internal static class Listening
{
    public static void AddListening(this WebApplicationBuilder builder, ClinicOptions options)
    {
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = options.StopWithin);
        builder.Services.Configure<ConsoleLifetimeOptions>(console => console.SuppressStatusMessages = true);
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = RequestLimits.JsonBytes;
            server.Limits.MaxRequestHeadersTotalSize = 16 << 10;
            server.Limits.MaxRequestLineSize = 8 << 10;
            server.Limits.MaxConcurrentConnections = 2_000;
            server.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
            server.Limits.KeepAliveTimeout = TimeSpan.FromMinutes(1);
            server.Limits.MinRequestBodyDataRate = new MinDataRate(bytesPerSecond: 240, gracePeriod: TimeSpan.FromSeconds(10));
            foreach (var address in options.Addresses) Listen(server, address, options.Certificate);
        });
    }

    private static void Listen(KestrelServerOptions server, Uri address, ServerCertificate? certificate)
    {
        if (address.Host == "localhost" && address.Port != 0) server.ListenLocalhost(address.Port, Speak); // both 127.0.0.1 and ::1
        else server.Listen(address.Host == "localhost" ? IPAddress.Loopback : IPAddress.Parse(address.Host.Trim('[', ']')), address.Port, Speak);

        void Speak(ListenOptions listen)
        {
            if (address.Scheme != Uri.UriSchemeHttps) return;
            listen.UseHttps(new HttpsConnectionAdapterOptions
            {
                ServerCertificate = certificate?.Own,
                ServerCertificateChain = certificate?.Chain,
                SslProtocols = System.Security.Authentication.SslProtocols.Tls12 | System.Security.Authentication.SslProtocols.Tls13,
            });
        }
    }
}

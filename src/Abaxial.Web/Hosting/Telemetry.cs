using System.Diagnostics;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace Abaxial.Web.Hosting;

/// <summary>Traces and figures for whoever runs the clinic, sent only where it was told to send them, and without a word about people.</summary>
internal static class Telemetry
{
    /// <summary>What a trace would hold of a request as it was asked for.</summary>
    private static readonly string[] Telling = ["url.path", "url.query", "url.full", "user_agent.original", "client.address", "network.peer.address"];

    public static void AddTelemetry(this WebApplicationBuilder builder, ClinicOptions options)
    {
        if (options.TelemetryEndpoint is not { } endpoint) return;
        builder.Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.Clear().AddService("abaxial", serviceVersion: typeof(Telemetry).Assembly.GetName().Version?.ToString(3), autoGenerateServiceInstanceId: false))
            .WithMetrics(metrics => metrics
                .AddAspNetCoreInstrumentation()
                .AddRuntimeInstrumentation()
                .AddMeter(ClinicFigures.Name, Data.LedgerFigures.Name)
                .AddOtlpExporter(to => SendTo(to, endpoint, "v1/metrics")))
            .WithTracing(traces => traces
                .AddAspNetCoreInstrumentation(requests =>
                {
                    requests.EnrichWithHttpRequest = (activity, _) => Forget(activity);
                    requests.EnrichWithHttpResponse = (activity, _) => Forget(activity);
                })
                .AddOtlpExporter(to => SendTo(to, endpoint, "v1/traces")));
    }

    private static void SendTo(OtlpExporterOptions to, Uri endpoint, string path)
    {
        to.Protocol = OtlpExportProtocol.HttpProtobuf;
        to.Endpoint = new Uri(new Uri(endpoint.AbsoluteUri.TrimEnd('/') + "/"), path);
    }

    private static void Forget(Activity activity)
    {
        foreach (string tag in Telling) activity.SetTag(tag, null);
    }
}

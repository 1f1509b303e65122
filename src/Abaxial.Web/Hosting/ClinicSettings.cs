using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using Abaxial.Web.Photographs;
using Abaxial.Weighing;
using Microsoft.Extensions.Logging;

namespace Abaxial.Web.Hosting;

/// <summary>One setting of the clinic: its name and what help says of it.</summary>
/// <param name="Name">As an argument it is <c>--name</c>, as a variable <c>ABAXIAL_NAME</c>, in the file a member.</param>
/// <param name="Value">What help calls its value; null where it is on or off.</param>
/// <param name="Description">What it is for.</param>
public sealed record ClinicSetting(string Name, string? Value, string Description)
{
    /// <summary>It may be said several times.</summary>
    public bool IsList { get; init; }

    /// <summary>It is never an argument: those can be read by everyone on the machine.</summary>
    public bool IsSecret { get; init; }
}

/// <summary>The settings of the clinic, and the one place where they become <see cref="ClinicOptions"/>.</summary>
public static class ClinicSettings
{
    private const string Password = "certificate-password";

    /// <summary>Every setting.</summary>
    public static ImmutableArray<ClinicSetting> All { get; } =
    [
        new("store", "FOLDER", "The folder of the store; left out: store."),
        new("database", "TEXT", "How the store's PostgreSQL database is reached (a connection string); left out: the store is in its folder alone.") { IsSecret = true },
        new("address", "URL", "Where to listen; left out: http://127.0.0.1:5171. May be said several times.") { IsList = true },
        new("public-url", "URL", "The address that people and devices use, where it is another than the one listened on."),
        new("certificate", "FILE", "The certificate for HTTPS: PFX, or PEM."),
        new("certificate-key", "FILE", "The key of a PEM certificate, where it is in a file of its own."),
        new("certificate-password-file", "FILE", "A file whose first line is the password of the key."),
        new(Password, "TEXT", "The password of the key.") { IsSecret = true },
        new("proxy", "ADDRESS", "A proxy in front of the clinic (10.0.0.7 or 10.0.0.0/24). May be said several times.") { IsList = true },
        new("demo", null, "A clinic to look at, with invented samples; visitors are signed in."),
        new("log-format", "FORMAT", "text or json; left out: text."),
        new("log-level", "LEVEL", "debug, information, warning or error; left out: information, in the demo warning."),
        new("otlp-endpoint", "URL", "Where traces and figures are sent (OpenTelemetry); left out: nowhere."),
        new("requests-per-minute", "N", "What one person, or one address that nobody signed in from, may ask for; left out: 1200."),
        new("sign-ins-per-minute", "N", "Tries to sign in from one address; left out: 10."),
        new("uploads-per-minute", "N", "Photographs of one person; left out: 120."),
        new("photograph-megapixels", "N", "Millions of pixels of one photograph at most; left out: 64."),
        new("photographs-at-once", "N", "Photographs decoded at once, each in up to 300 MB at 64 megapixels; left out: 2."),
        new("stop-within", "SECONDS", "How long requests may take to end when the program is stopped; left out: 20."),
        new("disk-floor", "MIB", "Free space below which the clinic says that it is not ready; left out: 512."),
    ];

    /// <summary>Makes the options of what was said; the problems name the setting, and are empty where the options may be used.</summary>
    public static (ClinicOptions Options, ImmutableArray<CaseProblem> Problems) Read(SettingValues values)
    {
        ArgumentNullException.ThrowIfNull(values);
        bool isDemo = values.Flag("demo");
        var defaults = new ClinicOptions { Store = "store" };
        var certificate = CertificateOf(values);
        var options = new ClinicOptions
        {
            Store = values.Text("store") ?? defaults.Store,
            Database = values.Text("database"),
            IsDemo = isDemo,
            Certificate = certificate,
            Addresses = values.Several("address", SettingForms.Address, SettingForms.AddressForm) is { IsEmpty: false } said ? said : [certificate is null ? defaults.Address : new Uri("https://127.0.0.1:5171")],
            PublicUrl = values.One("public-url", SettingForms.PublicUrl, "an address as https://clinic.example, without a path"),
            Proxies = values.Several("proxy", SettingForms.Network, "an IP address or a network as 10.0.0.0/24"),
            LogsAsJson = values.One("log-format", text => text is "text" or "json" ? text : null, "text", "json") == "json",
            LogLevel = values.One("log-level", SettingForms.Level, "debug", "information", "warning", "error") ?? (isDemo ? LogLevel.Warning : defaults.LogLevel),
            TelemetryEndpoint = values.One("otlp-endpoint", SettingForms.Web, "an address as http://127.0.0.1:4317"),
            Limits = new RequestLimits
            {
                RequestsPerMinute = values.Whole("requests-per-minute", 1, 100_000_000) ?? defaults.Limits.RequestsPerMinute,
                SignInsPerMinute = values.Whole("sign-ins-per-minute", 1, 1_000_000) ?? defaults.Limits.SignInsPerMinute,
                UploadsPerMinute = values.Whole("uploads-per-minute", 1, 1_000_000) ?? defaults.Limits.UploadsPerMinute,
            },
            Photographs = defaults.Photographs with
            {
                MostPixels = values.Whole("photograph-megapixels", 1, PhotographOptions.MostMegapixels) is { } millions ? millions * PhotographOptions.Megapixel : defaults.Photographs.MostPixels,
                DecodedAtOnce = values.Whole("photographs-at-once", 1, PhotographOptions.MostAtOnce) ?? defaults.Photographs.DecodedAtOnce,
            },
            StopWithin = values.Whole("stop-within", 0, 3600) is { } seconds ? TimeSpan.FromSeconds(seconds) : defaults.StopWithin,
            DiskFloorMebibytes = values.Whole("disk-floor", 0, 1 << 30) ?? defaults.DiskFloorMebibytes,
        };
        return (options, values.Problems.Count > 0 ? [.. values.Problems] : ListeningRules.Problems(options));
    }

    private static ServerCertificate? CertificateOf(SettingValues values)
    {
        if (values.Text("certificate") is not { } file)
        {
            if (values.Text("certificate-key") is not null) values.Refuse("certificate", "(missing)", "the certificate that the key belongs to");
            return null;
        }

        try
        {
            string? password = values.Text("certificate-password-file") is { } secret ? File.ReadLines(secret).FirstOrDefault() : values.Text(Password);
            var certificate = ServerCertificate.Load(file, values.Text("certificate-key"), password);
            string until = certificate.Own.NotAfter.ToUniversalTime().ToString("u", CultureInfo.InvariantCulture);
            if (certificate.Own.NotAfter < values.Now.LocalDateTime) values.Refuse("certificate", $"one that ended {until}", "a certificate that holds today");
            return certificate;
        }
        catch (Exception problem) when (problem is CryptographicException or IOException or UnauthorizedAccessException)
        {
            values.Refuse("certificate", $"{file} ({problem.Message.ReplaceLineEndings(" ")})", "a PFX file, or a PEM file with its key, that the password opens");
            return null;
        }
    }
}

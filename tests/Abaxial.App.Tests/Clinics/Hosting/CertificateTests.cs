using System.Net;
using Abaxial.Web.Hosting;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class CertificateTests : IDisposable
{
    private readonly TestCertificate files = new();

    public void Dispose() => files.Dispose();

    [Fact]
    public async Task Over_HTTPS_the_clinic_answers_and_tells_browsers_to_stay_with_it()
    {
        await using var clinic = await HostedClinic.StartAsync(options => options with { Address = new Uri("https://127.0.0.1:0"), Certificate = ServerCertificate.Load(files.Pfx, null, TestCertificate.Password) });
        Assert.Equal("https", clinic.Address.Scheme);
        using var answer = await clinic.SendAsync(HttpMethod.Get, "/");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.StartsWith("max-age=", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_certificate_is_taken_as_PFX_and_as_PEM_with_its_key_locked_or_not()
    {
        Accepted(("certificate", files.Pfx), ("certificate-password-file", files.PasswordFile));
        Accepted(("certificate", files.Pfx), ("certificate-password", TestCertificate.Password));
        Accepted(("certificate", files.Pem), ("certificate-key", files.Key));
        Accepted(("certificate", files.Pem), ("certificate-key", files.LockedKey), ("certificate-password-file", files.PasswordFile));
    }

    [Fact]
    public void A_certificate_that_cannot_be_used_is_refused_without_its_password()
    {
        using var ended = new TestCertificate(days: -10);
        Refused(("certificate", files.Pfx), ("certificate-password", "another-one"));
        Refused(("certificate", files.Pem));
        Refused(("certificate", Path.Combine(Path.GetDirectoryName(files.Pem)!, "none.pem")));
        Refused(("certificate", files.PasswordFile));
        Refused(("certificate-key", files.Key));
        Refused(("certificate", ended.Pem), ("certificate-key", ended.Key));
    }

    [Fact]
    public void The_password_is_no_argument() => Assert.True(Assert.Single(ClinicSettings.All, setting => setting.Name == "certificate-password").IsSecret);

    private static void Accepted(params ReadOnlySpan<(string Name, string Value)> said)
    {
        var (options, problems) = Read(said);
        Assert.Empty(problems);
        Assert.True(options.Certificate!.Own.HasPrivateKey);
        Assert.Equal("https", options.Address.Scheme);
    }

    private static void Refused(params ReadOnlySpan<(string Name, string Value)> said)
    {
        var problem = Assert.Single(Read(said).Problems);
        Assert.Equal("--certificate", problem.At);
        Assert.DoesNotContain("another-one", problem.Found, StringComparison.Ordinal);
    }

    private static (Web.ClinicOptions Options, System.Collections.Immutable.ImmutableArray<Weighing.CaseProblem> Problems) Read(ReadOnlySpan<(string Name, string Value)> said)
    {
        var values = new SettingValues(TimeProvider.System.GetUtcNow());
        foreach (var (name, value) in said) values.Say(name, $"--{name}", value);
        return ClinicSettings.Read(values);
    }
}

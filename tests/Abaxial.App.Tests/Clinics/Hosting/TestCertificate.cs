using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Abaxial.App.Tests.Clinics.Hosting;

/// <summary>A certificate for loopback that signs itself, in files as a clinic has it.</summary>
internal sealed class TestCertificate : IDisposable
{
    public const string Password = "of-the-key";

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("abaxial-certificate-");

    public TestCertificate(int days = 30)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        var now = TimeProvider.System.GetUtcNow();
        using var certificate = request.CreateSelfSigned(now.AddDays(-60), now.AddDays(days));
        File.WriteAllBytes(Pfx, certificate.Export(X509ContentType.Pfx, Password));
        File.WriteAllText(Pem, certificate.ExportCertificatePem());
        File.WriteAllText(Key, key.ExportPkcs8PrivateKeyPem());
        File.WriteAllText(LockedKey, key.ExportEncryptedPkcs8PrivateKeyPem(Password, new PbeParameters(PbeEncryptionAlgorithm.Aes256Cbc, HashAlgorithmName.SHA256, 1000)));
        File.WriteAllText(PasswordFile, Password + "\n");
    }

    public string Pfx => Path.Combine(folder.FullName, "clinic.pfx");

    public string Pem => Path.Combine(folder.FullName, "clinic.pem");

    public string Key => Path.Combine(folder.FullName, "clinic.key");

    public string LockedKey => Path.Combine(folder.FullName, "locked.key");

    public string PasswordFile => Path.Combine(folder.FullName, "password");

    public void Dispose() => folder.Delete(recursive: true);
}

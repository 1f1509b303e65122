using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Abaxial.Web.Hosting;

/// <summary>A certificate with its key, and the certificates between it and one that everybody trusts.</summary>
/// <param name="Own">The certificate of the clinic; it has its private key.</param>
/// <param name="Chain">What stands between; may be empty.</param>
public sealed record ServerCertificate(X509Certificate2 Own, X509Certificate2Collection Chain)
{
    /// <summary>Reads a PFX file, or a PEM file with its key in a second file or in the same.</summary>
    /// <param name="file">The file.</param>
    /// <param name="keyFile">The file of the key in PEM; null where the key is in <paramref name="file"/>.</param>
    /// <param name="password">What the key is locked with; null where it is not.</param>
    /// <exception cref="CryptographicException">It is no certificate, has no key that fits, or is locked with another password.</exception>
    /// <exception cref="IOException">A file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">A file must not be read.</exception>
    public static ServerCertificate Load(string file, string? keyFile, string? password)
    {
        var chain = new X509Certificate2Collection();
        if (keyFile is null && X509Certificate2.GetCertContentType(file) == X509ContentType.Pfx)
        {
            chain = X509CertificateLoader.LoadPkcs12CollectionFromFile(file, password);
            return Split(chain.FirstOrDefault(one => one.HasPrivateKey) ?? throw new CryptographicException("It holds no private key."), chain);
        }

        string keys = keyFile ?? file;
        var own = password is null ? X509Certificate2.CreateFromPemFile(file, keys) : X509Certificate2.CreateFromEncryptedPemFile(file, password, keys);
        if (OperatingSystem.IsWindows()) own = X509CertificateLoader.LoadPkcs12(own.Export(X509ContentType.Pfx), null); // there TLS does not take a key that is in memory alone
        chain.ImportFromPemFile(file);
        return Split(own, chain);
    }

    private static ServerCertificate Split(X509Certificate2 own, X509Certificate2Collection all)
    {
        var between = new X509Certificate2Collection();
        foreach (var one in all.Where(one => one.Thumbprint != own.Thumbprint)) between.Add(one);
        return new ServerCertificate(own, between);
    }
}

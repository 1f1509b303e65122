using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Abaxial.App.Tests.Clinics.People;

/// <summary>A passkey in memory: makes credentials with attestation "none" and signs with ES256, as WebAuthn Level 3 lays the bytes out (sections 6.1 and 6.5).</summary>
internal sealed class SoftwareKey : IDisposable
{
    private const byte Present = 1, Verified = 4, HasCredential = 64;

    private readonly ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    private readonly byte[] id = RandomNumberGenerator.GetBytes(32);
    private uint count;
    private string owner = "";

    /// <summary>The credential that a browser would send, for the options that the clinic gave.</summary>
    public string Make(string options, string origin)
    {
        using var asked = JsonDocument.Parse(options);
        owner = asked.RootElement.GetProperty("user").GetProperty("id").GetString()!;
        var point = key.ExportParameters(false).Q;
        byte[] cose = [0xA5, 0x01, 0x02, 0x03, 0x26, 0x20, 0x01, 0x21, 0x58, 0x20, .. point.X!, 0x22, 0x58, 0x20, .. point.Y!]; // RFC 9053: EC2, ES256, P-256, x, y
        byte[] data = [.. Head(origin, HasCredential), .. new byte[16], 0, (byte)id.Length, .. id, .. cose];
        byte[] attestation = [0xA3, 0x63, .. "fmt"u8, 0x64, .. "none"u8, 0x67, .. "attStmt"u8, 0xA0, 0x68, .. "authData"u8, 0x58, (byte)data.Length, .. data];
        return Credential(new { clientDataJSON = Text(ClientData(asked, "webauthn.create", origin)), attestationObject = Text(attestation), transports = Array.Empty<string>() });
    }

    /// <summary>What a browser would send to show the key.</summary>
    public string Show(string options, string origin)
    {
        using var asked = JsonDocument.Parse(options);
        byte[] data = Head(origin, 0), client = ClientData(asked, "webauthn.get", origin);
        byte[] signature = key.SignData([.. data, .. SHA256.HashData(client)], HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);
        return Credential(new { clientDataJSON = Text(client), authenticatorData = Text(data), signature = Text(signature), userHandle = owner });
    }

    public void Dispose() => key.Dispose();

    private byte[] Head(string origin, byte more)
    {
        count++;
        return [.. SHA256.HashData(Encoding.UTF8.GetBytes(new Uri(origin).Host)), (byte)(Present | Verified | more), (byte)(count >> 24), (byte)(count >> 16), (byte)(count >> 8), (byte)count];
    }

    private static byte[] ClientData(JsonDocument asked, string type, string origin) =>
        JsonSerializer.SerializeToUtf8Bytes(new { type, challenge = asked.RootElement.GetProperty("challenge").GetString(), origin, crossOrigin = false });

    private string Credential<T>(T response) =>
        JsonSerializer.Serialize(new { id = Text(id), rawId = Text(id), type = "public-key", authenticatorAttachment = "platform", clientExtensionResults = new { }, response });

    private static string Text(byte[] bytes) => Base64Url.EncodeToString(bytes);
}

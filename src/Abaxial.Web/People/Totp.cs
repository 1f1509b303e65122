using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;

namespace Abaxial.Web.People;

/// <summary>Codes of an authenticator app: RFC 6238 with SHA-1, six digits, thirty seconds, which is what the apps know.</summary>
internal static class Totp
{
    private const int Seconds = 30;
    private const string Base32 = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"; // RFC 4648

    /// <summary>A secret as long as the hash (RFC 4226, section 4).</summary>
    public static byte[] NewSecret() => RandomNumberGenerator.GetBytes(20);

    /// <summary>The step of a code that is right now, or was or will be one step away; null where it is wrong or no newer than one that was taken.</summary>
    public static long? StepOf(byte[] secret, string code, DateTimeOffset now, long lastStep)
    {
        long current = now.ToUnixTimeSeconds() / Seconds;
        byte[] typed = [.. code.Where(char.IsAsciiDigit).Select(digit => (byte)digit)];
        long? right = null;
        for (long step = current - 1; step <= current + 1; step++)
        {
            if (CryptographicOperations.FixedTimeEquals(typed, CodeAt(secret, step).Select(digit => (byte)digit).ToArray()) && step > lastStep) right ??= step;
        }

        return right;
    }

    /// <summary>The code of a step.</summary>
    public static string CodeAt(byte[] secret, long step)
    {
        Span<byte> counter = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(counter, step);
        Span<byte> hash = stackalloc byte[20];
#pragma warning disable CA5350 // RFC 6238 as the apps know it; HMAC does not need a hash without collisions
        HMACSHA1.HashData(secret, counter, hash);
#pragma warning restore CA5350
        int at = hash[^1] & 15;
        int number = BinaryPrimitives.ReadInt32BigEndian(hash[at..]) & int.MaxValue;
        return (number % 1_000_000).ToString("D6", CultureInfo.InvariantCulture);
    }

    /// <summary>What the app reads from the drawing: the key's name, the clinic, the secret.</summary>
    public static string Address(string signInName, byte[] secret) => $"otpauth://totp/Abaxial:{Uri.EscapeDataString(signInName)}?secret={Text(secret)}&issuer=Abaxial";

    /// <summary>A secret to be typed.</summary>
    public static string Text(byte[] secret)
    {
        int bits = 0, held = 0;
        var text = new System.Text.StringBuilder();
        foreach (byte part in secret)
        {
            held = ((held << 8) | part) & 0xFFFF;
            bits += 8;
            for (; bits >= 5; bits -= 5) text.Append(Base32[(held >> (bits - 5)) & 31]);
        }

        if (bits > 0) text.Append(Base32[(held << (5 - bits)) & 31]);
        return text.ToString();
    }
}

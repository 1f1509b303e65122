using System.Net;
using CsCheck;

namespace Abaxial.App.Tests.Clinics.Photographs;

public sealed class DamagedPhotographTests(RunningClinic clinic) : IClassFixture<RunningClinic>
{
    private static readonly byte[][] Whole = [Pictures.Jpeg(), Pictures.TellingJpeg(), Pictures.Png(64, 48), Pictures.Sample("quarters.webp"), Pictures.Sample("quarters.heic")];

    /// <summary>Some bytes of a real photograph written over, a piece left out, a piece repeated.</summary>
    private static readonly Gen<byte[]> Damaged =
        from whole in Gen.OneOf([.. Whole.Select(whole => Gen.Const(whole))])
        from hits in Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Byte).Array[1, 8]
        from cut in Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Int[0, 40])
        from again in Gen.Bool
        select Damage(whole, hits, cut.Item1, cut.Item2, again);

    [Fact]
    public async Task A_thousand_damaged_photographs_are_taken_or_refused_and_the_clinic_goes_on()
    {
        using var client = clinic.Client();
        var counts = new Dictionary<HttpStatusCode, int>();
        await Damaged.SampleAsync(
            async bytes =>
            {
                using var answer = await client.SendAsync(bytes, "application/octet-stream");
                lock (counts) counts[answer.StatusCode] = counts.GetValueOrDefault(answer.StatusCode) + 1;
                Assert.True(answer.StatusCode is HttpStatusCode.Created or HttpStatusCode.OK or HttpStatusCode.UnprocessableEntity, $"{answer.StatusCode}");
            },
            iter: 1_000,
            threads: 2);
        Assert.Equal(1_000, counts.Values.Sum());
        Assert.True(counts.GetValueOrDefault(HttpStatusCode.UnprocessableEntity) > 100 && counts.GetValueOrDefault(HttpStatusCode.Created) > 20, string.Join(' ', counts));
        await clinic.AttachAsync(client, Pictures.Jpeg(number: 21));
    }

    private static byte[] Damage(byte[] whole, (int At, byte Value)[] hits, int cut, int length, bool again)
    {
        byte[] bytes = [.. whole];
        foreach (var (at, value) in hits) bytes[at] = value;
        int end = Math.Min(bytes.Length, cut + length);
        return again ? [.. bytes[..end], .. bytes[cut..]] : [.. bytes[..cut], .. bytes[end..]];
    }
}

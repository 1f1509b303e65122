using System.Text;
using Abaxial.Web.Photographs;
using ImageMagick;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>What the decoding library would do if it were asked: nothing but read four kinds, within limits.</summary>
public sealed class DecoderPolicyTests
{
    public DecoderPolicyTests() => Decoders.Prepare(new PhotographOptions());

    [Theory]
    [InlineData("svg:/etc/hostname")]
    [InlineData("text:/etc/hostname")]
    [InlineData("label:@/etc/hostname")]
    [InlineData("caption:words")]
    [InlineData("http://127.0.0.1:1/leaf.jpg")]
    [InlineData("https://127.0.0.1:1/leaf.jpg")]
    [InlineData("msl:/etc/hostname")]
    [InlineData("mvg:/etc/hostname")]
    [InlineData("pdf:/etc/hostname")]
    [InlineData("ps:/etc/hostname")]
    [InlineData("ephemeral:/tmp/nothing")]
    [InlineData("inline:data:image/jpeg;base64,AAAA")]
    [InlineData("|id")]
    [InlineData("@/etc/hostname")]
    public void No_name_reaches_another_decoder_a_program_an_address_or_a_file(string name)
    {
        using var image = new MagickImage();
        Assert.True(Assert.ThrowsAny<MagickException>(() => image.Read(name)) is MagickPolicyErrorException or MagickMissingDelegateErrorException);
    }

    [Fact]
    public void Every_format_but_the_four_is_closed()
    {
        byte[] bytes = Encoding.ASCII.GetBytes("nothing that any format would take for a picture of its own");
        var four = new[] { MagickFormat.Jpeg, MagickFormat.Png, MagickFormat.WebP, MagickFormat.Heic };
        var others = MagickNET.SupportedFormats.Where(format => format.SupportsReading && !four.Contains(format.ModuleFormat)).Select(format => format.Format).ToList();
        Assert.True(others.Count > 100, $"Only {others.Count} other formats: that shows nothing.");
        Assert.All(others, format => Assert.ThrowsAny<MagickException>(() =>
        {
            using var image = new MagickImage(bytes, new MagickReadSettings { Format = format, Width = 1, Height = 1 });
        }));
    }

    [Fact]
    public void Nothing_but_a_jpeg_is_written()
    {
        using var image = new MagickImage(Pictures.Jpeg(), MagickFormat.Jpeg);
        Assert.NotEmpty(image.ToByteArray(MagickFormat.Jpeg));
        Assert.Throws<MagickPolicyErrorException>(() => image.ToByteArray(MagickFormat.Png));
        Assert.Throws<MagickPolicyErrorException>(() => image.ToByteArray(MagickFormat.Pdf));
    }

    [Fact]
    public void The_library_may_use_no_disk_and_one_thread_and_has_a_time_for_each_picture()
    {
        var options = new PhotographOptions();
        Assert.Equal((0UL, 1UL, 30UL), (ResourceLimits.Disk, ResourceLimits.Thread, ResourceLimits.Time));
        Assert.InRange(ResourceLimits.Memory, 1UL, (ulong)options.MostPixels * 8 * (ulong)options.DecodedAtOnce);
    }
}

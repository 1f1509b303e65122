using System.IO.Compression;
using System.Net;
using System.Text;
using Abaxial.Web.Photographs;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>What is sent by those who mean no good: refused, or made harmless.</summary>
public sealed class HostileUploadTests(RunningClinic clinic) : IClassFixture<RunningClinic>
{
    private const HttpStatusCode Refused = HttpStatusCode.UnprocessableEntity;
    private const string Kinds = "JPEG, PNG, WebP, HEIC";
    private const string Limit = "at most 64000000 pixels";

    private static readonly byte[] Drawing = Encoding.UTF8.GetBytes("<?xml version=\"1.0\"?><svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9\" height=\"9\"><script>alert(1)</script><image href=\"file:///etc/passwd\"/></svg>");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public Task A_png_that_claims_sixty_thousand_pixels_a_side_is_refused_with_the_numbers() =>
        IsRefusedAsync(Pictures.PngOf(Pictures.Header(60_000, 60_000), ("IDAT", Pictures.PackedZeros(1 << 20)), ("IEND", [])), "60000 x 60000 pixels", Limit);

    [Fact]
    public Task A_png_of_twenty_thousand_pixels_a_side_is_refused_with_the_numbers() => IsRefusedAsync(Pictures.Png(20_000, 20_000), "20000 x 20000 pixels", Limit);

    [Fact]
    public Task A_jpeg_that_claims_twenty_thousand_pixels_a_side_is_refused_with_the_numbers() => IsRefusedAsync(Pictures.JpegClaiming(20_000, 20_000), "20000 x 20000 pixels", Limit);

    [Fact]
    public Task A_webp_that_claims_sixteen_thousand_pixels_a_side_is_refused() => IsRefusedAsync(Pictures.WebPClaiming(16_000, 16_000), null, null);

    [Fact]
    public Task A_png_with_a_side_beyond_any_camera_is_refused() => IsRefusedAsync(Pictures.PngOf(Pictures.Header(int.MaxValue, 1), ("IDAT", Pictures.PackedZeros(1 << 20)), ("IEND", [])), null, null);

    [Fact]
    public Task A_jpeg_that_claims_more_than_it_holds_is_refused_as_broken_off() => IsRefusedAsync(Pictures.JpegClaiming(6_000, 6_000), "a JPEG that breaks off", "a whole JPEG");

    [Fact]
    public Task A_jpeg_that_goes_over_its_picture_two_thousand_times_is_refused() => IsRefusedAsync(Pictures.JpegOfScans(7_900, 2_000), "2000 scans", "at most 200 scans");

    /// <summary>A gibibyte of zeros behind a header of ten pixels a side.</summary>
    [Fact]
    public async Task A_png_whose_data_unpack_to_a_gibibyte_is_refused_or_shown_as_the_ten_pixels_that_it_is()
    {
        using var client = clinic.Client();
        byte[] bomb = Pictures.PngOf(Pictures.Header(10, 10), ("IDAT", Pictures.PackedZeros(1L << 30)), ("IEND", []));
        await RefusedOrBareAsync(client, bomb);
    }

    [Theory]
    [InlineData("zTXt", "Comment\0\0")]
    [InlineData("iCCP", "profile\0\0")]
    [InlineData("iTXt", "XML:com.adobe.xmp\0\u0001\0\0\0")]
    public async Task A_png_whose_words_or_profile_unpack_to_a_quarter_of_a_gibibyte_is_refused_or_made_bare(string chunk, string head)
    {
        using var client = clinic.Client();
        await RefusedOrBareAsync(client, Pictures.Png(10, 10, (chunk, [.. Encoding.Latin1.GetBytes(head), .. Pictures.PackedZeros(1L << 28)])));
    }

    [Theory]
    [InlineData("image/svg+xml")]
    [InlineData("image/jpeg")]
    [InlineData("application/octet-stream")]
    public Task A_drawing_with_a_script_is_refused_whatever_it_says_it_is(string type) => IsRefusedAsync(Drawing, "bytes that begin with 3c3f786d6c207665", Kinds, type);

    [Fact]
    public async Task A_drawing_with_a_script_is_refused_in_a_form_by_the_name_of_a_photograph()
    {
        using var client = clinic.Client();
        using var form = new MultipartFormDataContent { { new ByteArrayContent(Drawing) { Headers = { ContentType = new("image/jpeg") } }, "photograph", "leaf.jpg" } };
        using var answer = await client.PostAsync(new Uri("/api/photographs", UriKind.Relative), form, Cancel);
        Assert.Equal((Refused, Kinds), (answer.StatusCode, (await Sending.ProblemOfAsync(answer)).Accepted));
    }

    [Theory]
    [InlineData("GIF89a/*\u0001\0*/=1;alert(1)//")]
    [InlineData("%PDF-1.7\n%alert(1)")]
    [InlineData("BM\0\0\0\0\0\0\0\0\0\0")]
    [InlineData("II*\0\u0008\0\0\0")]
    [InlineData("\0\0\0\u0018ftypisom\0\0\u0002\0isommp42")]
    [InlineData("\0\0\0\u001cftypavif\0\0\0\0avifmif1miaf")]
    [InlineData("\0\0\0\u0018ftypmif1\0\0\0\0mif1avif")]
    [InlineData("<html><script>alert(1)</script></html>")]
    [InlineData("#!/bin/sh\nreboot\n")]
    [InlineData("push graphic-context\nimage over 0,0 0,0 'https://127.0.0.1/x'\npop graphic-context")]
    [InlineData("RIFF\0\0\0\0WAVEfmt ")]
    [InlineData("label:@/etc/passwd")]
    public Task What_is_none_of_the_four_kinds_is_refused(string text) => IsRefusedAsync(Encoding.Latin1.GetBytes(text), null, Kinds);

    [Fact]
    public Task No_bytes_are_refused() => IsRefusedAsync([], "no bytes", Kinds);

    [Fact]
    public Task An_animation_is_refused() => IsRefusedAsync(Pictures.Sample("moving.webp"), "an animation", "one picture", "image/webp");

    /// <summary>Two frames; the second is not a picture at all.</summary>
    [Fact]
    public async Task Of_an_animated_png_the_first_frame_is_taken()
    {
        using var client = clinic.Client();
        byte[] moving = Pictures.Png(30, 20, ("acTL", [0, 0, 0, 2, 0, 0, 0, 0]), ("fdAT", [0, 0, 0, 1, .. "no picture"u8]));
        var stored = await clinic.AttachAsync(client, moving, "image/png");
        Assert.Equal((30, 20), (stored.Width, stored.Height));
        await AssertBareAsync(client, stored);
    }

    [Theory]
    [InlineData("text/html")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("text/plain")]
    public async Task A_body_that_a_plain_form_of_another_site_could_send_is_not_taken(string type)
    {
        using var client = clinic.Client();
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await client.RefusedAsync(Pictures.Jpeg(), type)).Status);
    }

    [Theory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("webp")]
    [InlineData("heic")]
    public async Task A_photograph_that_breaks_off_anywhere_is_refused_and_leaves_nothing(string kind)
    {
        using var client = clinic.Client();
        byte[] whole = kind switch { "jpeg" => Pictures.Jpeg(200, 150), "png" => Pictures.Png(200, 150), _ => Pictures.Sample($"quarters.{kind}") };
        int before = Sending.Files(clinic.Ledger, "photographs").Count + Sending.Files(clinic.Ledger, "derived").Count;
        for (int part = 1; part < 12; part++) Assert.Equal(Refused, (await client.RefusedAsync(whole[..(whole.Length * part / 12)])).Status);
        Assert.Equal(before, Sending.Files(clinic.Ledger, "photographs").Count + Sending.Files(clinic.Ledger, "derived").Count);
    }

    [Theory]
    [InlineData("zip behind a JPEG")]
    [InlineData("page behind a JPEG")]
    [InlineData("page in the comment of a JPEG")]
    [InlineData("script behind a PNG")]
    [InlineData("script in the text of a PNG")]
    [InlineData("script behind a WebP")]
    [InlineData("script behind a HEIC")]
    public async Task A_photograph_that_is_something_else_as_well_is_shown_as_a_photograph_alone(string what)
    {
        const string script = "<html><script>alert('Ondrelay')</script></html>";
        byte[] more = Encoding.UTF8.GetBytes(script);
        byte[] bytes = what switch
        {
            "zip behind a JPEG" => [.. Pictures.Jpeg(number: 11), .. Zip("Ondrelay.js", script)],
            "page behind a JPEG" => [.. Pictures.Jpeg(number: 12), .. more],
            "page in the comment of a JPEG" => Pictures.WithComment(Pictures.Jpeg(number: 13), script),
            "script behind a PNG" => [.. Pictures.Png(20, 21), .. more],
            "script in the text of a PNG" => Pictures.Png(20, 22, ("tEXt", [.. "Comment\0"u8, .. more])),
            "script behind a WebP" => [.. Pictures.Sample("quarters.webp"), .. more],
            _ => [.. Pictures.Sample("quarters.heic"), .. more],
        };
        using var client = clinic.Client();
        var stored = await clinic.AttachAsync(client, bytes);
        Assert.Equal(bytes, await client.BytesAsync(stored, "original"));
        await AssertBareAsync(client, stored);
    }

    [Theory]
    [InlineData("/api/photographs/..%2f..%2fledger.db/original")]
    [InlineData("/api/photographs/../../ledger.db")]
    [InlineData("/api/photographs/%2e%2e/thumb")]
    [InlineData("/api/photographs/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA/thumb")]
    [InlineData("/api/photographs/HASH/..%2foriginal")]
    [InlineData("/api/photographs/HASH/..%5coriginal")]
    [InlineData("/api/photographs/HASH/work.jpg")]
    [InlineData("/api/photographs/HASH/Thumb")]
    [InlineData("/api/photographs/HASH%00/thumb")]
    public async Task No_address_leads_out_of_the_photographs(string path)
    {
        using var client = clinic.Client();
        var stored = await clinic.AttachAsync(client, Pictures.Jpeg(number: 14));
        var address = new Uri(clinic.Address.GetLeftPart(UriPartial.Authority) + path.Replace("HASH", stored.Sha256, StringComparison.Ordinal), new UriCreationOptions { DangerousDisablePathAndQueryCanonicalization = true });
        using var answer = await client.GetAsync(address, Cancel);
        Assert.True(answer.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.BadRequest, $"{path}: {answer.StatusCode}");
    }

    private async Task IsRefusedAsync(byte[] bytes, string? found, string? accepted, string type = "image/jpeg")
    {
        using var client = clinic.Client();
        int before = Sending.Files(clinic.Ledger, "photographs").Count;
        var problem = await client.RefusedAsync(bytes, type);
        Assert.Equal((Refused, found ?? problem.Found, accepted ?? problem.Accepted), problem);
        Assert.Equal(before, Sending.Files(clinic.Ledger, "photographs").Count);
    }

    private async Task RefusedOrBareAsync(HttpClient client, byte[] bytes)
    {
        using var answer = await client.SendAsync(bytes);
        if (answer.StatusCode == Refused) return;
        await AssertBareAsync(client, await clinic.AttachAsync(client, bytes));
    }

    private async Task AssertBareAsync(HttpClient client, PhotographStored stored)
    {
        await using var copy = await clinic.Services.GetRequiredService<PhotographSizes>().OutsideCopyAsync(stored.Sha256, Cancel);
        using var outside = new MemoryStream();
        await copy!.CopyToAsync(outside, Cancel);
        Assert.All([outside.ToArray(), await client.BytesAsync(stored, "thumb"), await client.BytesAsync(stored, "work")], Bare.HoldsPixelsAlone);
    }

    private static byte[] Zip(string name, string text)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = zip.CreateEntry(name).Open();
            entry.Write(Encoding.UTF8.GetBytes(text));
        }

        return bytes.ToArray();
    }
}

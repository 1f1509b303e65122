using System.Net;
using System.Security.Cryptography;
using System.Text;
using Abaxial.Web.Photographs;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.App.Tests.Clinics.Photographs;

public sealed class PhotographApiTests(RunningClinic clinic) : IClassFixture<RunningClinic>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_photograph_is_stored_as_it_came_and_told_by_its_hash()
    {
        using var client = clinic.Client();
        byte[] bytes = Pictures.TellingJpeg();
        var stored = await clinic.AttachAsync(client, bytes);
        Assert.Equal(new PhotographStored(Convert.ToHexStringLower(SHA256.HashData(bytes)), "image/jpeg", bytes.Length, 80, 120), stored);
        Assert.Equal(bytes, await client.BytesAsync(stored, "original"));
    }

    [Fact]
    public async Task The_same_bytes_sent_again_are_the_same_photograph()
    {
        using var client = clinic.Client();
        byte[] bytes = Pictures.Jpeg(number: 1);
        using var first = await client.SendAsync(bytes);
        using var second = await client.SendAsync(bytes, "application/octet-stream");
        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.OK), (first.StatusCode, second.StatusCode));
        Assert.Equal(await first.Content.ReadAsStringAsync(Cancel), await second.Content.ReadAsStringAsync(Cancel));
    }

    [Theory]
    [InlineData("quarters.webp", "image/webp")]
    [InlineData("quarters.heic", "image/heic")]
    [InlineData("", "image/jpeg")]
    public async Task Every_kind_is_shown_upright_and_its_quarters_are_where_they_belong(string sample, string type)
    {
        using var client = clinic.Client();
        var stored = await clinic.AttachAsync(client, sample.Length == 0 ? Pictures.TellingJpeg() : Pictures.Sample(sample), type);
        Assert.Equal((type, 80, 120), (stored.MediaType, stored.Width, stored.Height));
        foreach (string size in new[] { "thumb", "work" })
        {
            byte[] shown = await client.BytesAsync(stored, size);
            Assert.Equal((80, 120), Pictures.SizeOf(shown));
            Assert.Equal("blue red white green", string.Join(' ', new[] { (20, 30), (60, 30), (20, 90), (60, 90) }.Select(at => NameOf(Pictures.ColorAt(shown, at.Item1, at.Item2)))));
        }
    }

    [Fact]
    public async Task A_form_with_a_file_is_taken_as_well()
    {
        using var client = clinic.Client();
        byte[] bytes = Pictures.Png(40, 30);
        using var form = new MultipartFormDataContent { { new StringContent("a word"), "note" }, { new ByteArrayContent(bytes), "photograph", "leaf.jpg" } };
        using var answer = await client.PostAsync(new Uri("/api/photographs", UriKind.Relative), form, Cancel);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.Contains("image/png", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_large_photograph_is_shown_at_most_so_large()
    {
        using var client = clinic.Client();
        var stored = await clinic.AttachAsync(client, Pictures.Jpeg(3000, 1500));
        Assert.Equal((2048, 1024), Pictures.SizeOf(await client.BytesAsync(stored, "work")));
        Assert.Equal((320, 160), Pictures.SizeOf(await client.BytesAsync(stored, "thumb")));
    }

    [Fact]
    public async Task A_size_that_was_deleted_or_is_half_there_is_made_again()
    {
        using var client = clinic.Client();
        var stored = await clinic.AttachAsync(client, Pictures.Jpeg(number: 2));
        byte[] before = await client.BytesAsync(stored, "thumb");
        string thumb = Sending.Files(clinic.Ledger, "derived").Single(file => file.Contains(stored.Sha256 + "-thumb", StringComparison.Ordinal));
        File.Delete(thumb);
        Assert.Equal(before, await client.BytesAsync(stored, "thumb"));
        await File.WriteAllBytesAsync(thumb, before[..^20], Cancel);
        Assert.Equal(before, await client.BytesAsync(stored, "thumb"));
    }

    [Fact]
    public async Task A_browser_keeps_a_photograph_and_runs_nothing_of_it()
    {
        using var client = clinic.Client();
        var stored = await clinic.AttachAsync(client, Pictures.Jpeg(number: 3));
        foreach (string size in new[] { "thumb", "work", "original" })
        {
            using var answer = await client.GetAsync(new Uri($"/api/photographs/{stored.Sha256}/{size}", UriKind.Relative), Cancel);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Superset(new HashSet<string> { "default-src 'none'", "sandbox" }, answer.Headers.GetValues("Content-Security-Policy").Single().Split("; ").ToHashSet());
            Assert.Equal("image/jpeg", answer.Content.Headers.ContentType?.MediaType);
            Assert.Equal(size == "original" ? "attachment" : null, answer.Content.Headers.ContentDisposition?.DispositionType);
            Assert.Contains("immutable", answer.Headers.CacheControl?.ToString(), StringComparison.Ordinal);
            using var again = new HttpRequestMessage(HttpMethod.Get, answer.RequestMessage!.RequestUri) { Headers = { IfNoneMatch = { answer.Headers.ETag! } } };
            using var unchanged = await client.SendAsync(again, Cancel);
            Assert.Equal(HttpStatusCode.NotModified, unchanged.StatusCode);
        }
    }

    [Fact]
    public async Task One_that_no_sample_names_is_not_shown()
    {
        using var client = clinic.Client();
        var stored = await client.StoreAsync(Pictures.Jpeg(number: 4));
        foreach (string size in new[] { "thumb", "work", "original" })
        {
            using var answer = await client.GetAsync(new Uri($"/api/photographs/{stored.Sha256}/{size}", UriKind.Relative), Cancel);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    [Theory]
    [InlineData("quarters.webp")]
    [InlineData("quarters.heic")]
    [InlineData("")]
    public async Task What_may_leave_the_clinic_holds_no_position_camera_profile_or_comment(string sample)
    {
        using var client = clinic.Client();
        byte[] original = sample.Length == 0 ? Pictures.TellingJpeg() : Pictures.Sample(sample);
        Assert.Contains("Lichtwerk", Encoding.Latin1.GetString(original), StringComparison.Ordinal);
        var stored = await clinic.AttachAsync(client, original, "application/octet-stream");
        await using var copy = await clinic.Services.GetRequiredService<PhotographSizes>().OutsideCopyAsync(stored.Sha256, Cancel);
        using var outside = new MemoryStream();
        await copy!.CopyToAsync(outside, Cancel);
        Assert.All([outside.ToArray(), await client.BytesAsync(stored, "thumb"), await client.BytesAsync(stored, "work")], Bare.HoldsPixelsAlone);
    }

    private static string NameOf((int Red, int Green, int Blue) color) => color switch
    {
        ( > 200, < 80, < 80) => "red",
        ( < 80, > 120, < 90) => "green",
        ( < 80, < 90, > 160) => "blue",
        ( > 220, > 220, > 220) => "white",
        _ => color.ToString(),
    };
}

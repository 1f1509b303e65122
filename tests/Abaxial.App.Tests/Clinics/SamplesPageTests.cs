using System.Net;

namespace Abaxial.App.Tests.Clinics;

public sealed class SamplesPageTests(RunningClinic clinic) : IClassFixture<RunningClinic>
{
    [Fact]
    public async Task A_sample_that_was_taken_in_stands_on_the_page()
    {
        var sample = await TestStore.TakeInAsync(clinic.Ledger);
        using var client = clinic.Client();
        string page = await client.GetStringAsync("/", TestContext.Current.CancellationToken);
        Assert.Contains($"samples/{sample}", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_style_of_the_pages_is_served()
    {
        using var client = clinic.Client();
        var style = await client.GetAsync("/clinic.css", TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.OK, "text/css"), (style.StatusCode, style.Content.Headers.ContentType?.MediaType));
    }
}

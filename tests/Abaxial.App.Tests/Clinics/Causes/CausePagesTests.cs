using System.Net;
using Abaxial.App.Tests.Clinics.Samples;
using Abaxial.Knowledge;

namespace Abaxial.App.Tests.Clinics.Causes;

/// <summary>The pages of the causes, as somebody signed in reads them.</summary>
public sealed class CausePagesTests
{
    private static readonly KnowledgeBase Knowledge = BuiltIn.Solanum();

    [Fact]
    public async Task Every_cause_has_a_page_that_names_its_sources_and_cautions_and_the_list_leads_to_it()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Submitter);
        string list = await GetAsync(client, "/causes");
        foreach (var cause in Knowledge.Causes)
        {
            Assert.Contains($"href=\"/causes/{cause.Id}\"", list, StringComparison.Ordinal);
            string page = await GetAsync(client, $"/causes/{cause.Id}");
            Assert.Contains($"<h1>{cause.Names["en"]}</h1>", page, StringComparison.Ordinal);
            if (cause.Eppo is { } eppo) Assert.Contains(eppo, page, StringComparison.Ordinal);
            Assert.Contains(cause.Advice["en"], page, StringComparison.Ordinal);
            Assert.Contains("ask a licensed adviser", page, StringComparison.Ordinal);
            if (cause.Regulated) Assert.Contains("before the competent authority was told", page, StringComparison.Ordinal);
            foreach (var source in cause.Rows.SelectMany(row => row.Sources)) Assert.Contains($"{source.Title}. {source.Publisher}.", page, StringComparison.Ordinal);
            Assert.DoesNotContain(" style=", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_page_of_septoria_shows_its_dots_and_how_it_is_told_from_late_blight()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Scout);
        string page = await GetAsync(client, "/causes/septoria-leaf-spot");
        Assert.DoesNotContain("Where the growth under the leaf sits</span>", page[..page.IndexOf("What to do", StringComparison.Ordinal)], StringComparison.Ordinal); // it has none
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.Contains("Told from Late blight on tomato", page, StringComparison.Ordinal);
        Assert.Contains("data-look=\"pycnidia\"", page, StringComparison.Ordinal);
        Assert.Contains("--drawn-leaf", await GetAsync(client, "/drawings.css"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_is_narrowed_by_host_and_kind()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Scout);
        string page = await GetAsync(client, "/causes?host=potato&kind=bacterium");
        Assert.Contains("/causes/ring-rot", page, StringComparison.Ordinal);
        Assert.DoesNotContain("/causes/bacterial-speck", page, StringComparison.Ordinal);
        Assert.DoesNotContain("/causes/late-blight", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_of_the_knowledge_counts_sources_and_names_weak_pairs()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Lead);
        string page = await GetAsync(client, "/causes/knowledge");
        Assert.Contains(Knowledge.Id, page, StringComparison.Ordinal);
        foreach (string host in Knowledge.Document.Hosts)
        {
            foreach (var pair in Separation.Poorest(new HostTable(Knowledge, host))) Assert.Contains($"/causes/compare?cause={pair.One.Id}&cause={pair.Other.Id}&host={host}", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_comparison_tells_what_differs_before_what_is_alike()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Diagnostician);
        string page = await GetAsync(client, "/causes/compare?cause=late-blight&cause=septoria-leaf-spot&cause=early-blight");
        int differs = page.IndexOf("sheet differs", StringComparison.Ordinal), alike = page.IndexOf("sheet alike", StringComparison.Ordinal);
        int dots = page.IndexOf("data-look=\"pycnidia\"", StringComparison.Ordinal);
        Assert.True(differs < dots && dots < alike, $"{differs}, {dots}, {alike}");
        Assert.Contains("<h1>Late blight or Septoria leaf spot or Early blight?</h1>", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/causes/no-such-cause", HttpStatusCode.NotFound)]
    [InlineData("/causes/%3Cscript%3Ealert(1)%3C%2Fscript%3E", HttpStatusCode.NotFound)]
    [InlineData("/causes/compare?cause=late-blight&cause=%3Cscript%3Ealert(1)%3C%2Fscript%3E", HttpStatusCode.NotFound)]
    [InlineData("/causes/compare?cause=late-blight&cause=early-blight&host=%22%3E%3Cscript%3Ealert(1)", HttpStatusCode.NotFound)]
    [InlineData("/causes/compare?cause=a&cause=b&cause=c&cause=d&cause=e", HttpStatusCode.BadRequest)]
    [InlineData("/causes/compare?cause=late-blight&cause=late-blight", HttpStatusCode.OK)]
    [InlineData("/causes/compare?cause=&cause=&host=", HttpStatusCode.OK)]
    [InlineData("/causes/compare?cause=ring-rot&cause=septoria-leaf-spot", HttpStatusCode.OK)]
    [InlineData("/causes?host=%3Cscript%3Ealert(1)&kind=%00%ff", HttpStatusCode.OK)]
    public async Task Hostile_addresses_are_answered_calmly_and_repeated_nowhere(string address, HttpStatusCode status)
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Diagnostician);
        using var answer = await client.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(status, answer.StatusCode);
        Assert.DoesNotContain("alert(1)", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private static async Task<string> GetAsync(HttpClient client, string address)
    {
        string page = await client.GetStringAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        return WebUtility.HtmlDecode(page);
    }
}

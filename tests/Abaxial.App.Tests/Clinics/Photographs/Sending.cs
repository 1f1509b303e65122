using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Abaxial.Data;
using Abaxial.Samples;
using Abaxial.Web.Photographs;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>Sends photographs to a clinic and asks for them.</summary>
internal static class Sending
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static async Task<HttpResponseMessage> SendAsync(this HttpClient client, byte[] bytes, string type = "image/jpeg")
    {
        using var content = new ByteArrayContent(bytes) { Headers = { ContentType = new MediaTypeHeaderValue(type) } };
        return await client.PostAsync(new Uri("/api/photographs", UriKind.Relative), content, Cancel);
    }

    /// <summary>Sends a photograph that is to be taken.</summary>
    public static async Task<PhotographStored> StoreAsync(this HttpClient client, byte[] bytes, string type = "image/jpeg")
    {
        using var answer = await client.SendAsync(bytes, type);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Cancel));
        return (await answer.Content.ReadFromJsonAsync<PhotographStored>(Cancel))!;
    }

    /// <summary>Sends what is to be refused, and gives the problem.</summary>
    public static async Task<(HttpStatusCode Status, string Found, string Accepted)> RefusedAsync(this HttpClient client, byte[] bytes, string type = "image/jpeg")
    {
        using var answer = await client.SendAsync(bytes, type);
        return await ProblemOfAsync(answer);
    }

    public static async Task<(HttpStatusCode Status, string Found, string Accepted)> ProblemOfAsync(HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = (await answer.Content.ReadFromJsonAsync<JsonElement>(Cancel)).GetProperty("problems")[0];
        return (answer.StatusCode, problem.GetProperty("found").GetString()!, string.Join(", ", problem.GetProperty("accepted").EnumerateArray().Select(one => one.GetString())));
    }

    /// <summary>Stores a photograph and has a sample name it.</summary>
    public static async Task<PhotographStored> AttachAsync(this RunningClinic clinic, HttpClient client, byte[] bytes, string type = "image/jpeg")
    {
        var stored = await client.StoreAsync(bytes, type);
        var sample = await TestStore.TakeInAsync(clinic.Ledger);
        await TestStore.AppendAsync(clinic.Ledger, sample, new PhotographAdded(stored.Sha256, stored.MediaType, stored.Bytes));
        return stored;
    }

    public static Task<byte[]> BytesAsync(this HttpClient client, PhotographStored stored, string size) => client.GetByteArrayAsync(new Uri($"/api/photographs/{stored.Sha256}/{size}", UriKind.Relative), Cancel);

    /// <summary>Everything that lies in the folder of photographs or of their sizes.</summary>
    public static List<string> Files(Ledger ledger, string folder) => [.. Directory.EnumerateFiles(Path.Combine(ledger.Folder, folder), "*", SearchOption.AllDirectories)];
}

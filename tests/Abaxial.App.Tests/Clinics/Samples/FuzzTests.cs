using System.Collections.Concurrent;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Abaxial.App.Tests.Clinics.People;
using Abaxial.Data;
using Abaxial.Samples;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>Damaged requests by the thousand: each is answered or refused, and nothing of the program's own fails.</summary>
public sealed class FuzzTests
{
    private const int Requests = 10_000, Clients = 4, Seed = 20261125;

    /// <summary>What the program may hold more than before, with everything that was written: 96 MiB.</summary>
    private const long MostMemory = 96L << 20;

    [Fact]
    public async Task Ten_thousand_damaged_requests_are_answered_without_a_fault()
    {
        await using var clinic = await Roles.StartAsync();
        var seeds = await SeedsAsync(clinic);
        var faults = new ConcurrentBag<string>();
        var answered = new ConcurrentDictionary<HttpStatusCode, int>();
        long before = GC.GetTotalMemory(forceFullCollection: true);
        await Task.WhenAll(Enumerable.Range(0, Clients).Select(one => Task.Run(async () =>
        {
            using var client = await Roles.ClientAsync(clinic, Roles.All[one % 4]);
            for (int i = one; i < Requests; i += Clients)
            {
                var random = new Random(Seed + i);
                var (path, json) = seeds[random.Next(seeds.Count)];
                byte[] body = Mutation.Of(json, random);
                using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(path, UriKind.Relative)) { Content = new ByteArrayContent(body) };
                request.Content.Headers.ContentType = random.Next(50) == 0 ? new MediaTypeHeaderValue("text/plain") : new MediaTypeHeaderValue("application/json");
                if (random.Next(3) == 0) request.Headers.TryAddWithoutValidation("Idempotency-Key", random.Next(2) == 0 ? Api.NewKey() : "../" + random.Next());
                using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
                answered.AddOrUpdate(answer.StatusCode, 1, (_, count) => count + 1);
                bool isTold = answer.IsSuccessStatusCode || answer.Content.Headers.ContentType?.MediaType == "application/problem+json";
                if ((int)answer.StatusCode >= 500 || !isTold) faults.Add($"request {i} to {path}: {(int)answer.StatusCode} for {Encoding.UTF8.GetString(body.AsSpan(0, Math.Min(body.Length, 300)))}");
            }
        })));
        Assert.True(faults.IsEmpty, string.Join(Environment.NewLine, faults.Take(10)));
        Assert.Equal(Requests, answered.Values.Sum());
        Assert.Contains(HttpStatusCode.Created, answered.Keys); // damage that leaves a request whole is taken: the mutations reach that far
        Assert.Contains(HttpStatusCode.BadRequest, answered.Keys);
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - before, long.MinValue, MostMemory);
        Assert.Empty((await LedgerCheck.RunAsync(clinic.Ledger, null, TestContext.Current.CancellationToken)).Faults);
        using var last = new Api(await Roles.ClientAsync(clinic, Roles.Diagnostician));
        Assert.Equal(HttpStatusCode.OK, await last.StatusOfAsync("/health/live"));
    }

    /// <summary>Valid requests of every form, over few samples, so that they grow.</summary>
    private static async Task<List<(string Path, string Json)>> SeedsAsync(PeopleClinic clinic)
    {
        using var api = new Api(await Roles.ClientAsync(clinic, Roles.Diagnostician));
        string caseFile = await File.ReadAllTextAsync(Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "cases")).Order(StringComparer.Ordinal).First(), TestContext.Current.CancellationToken);
        List<(string, string)> seeds =
        [
            ("/api/samples", """{"host":"tomato","system":"field","noticed":"2026-07-01","submitter":"g-11","says":"It rained 1 day.","place":{"latitude":44.06,"longitude":-31.12},"cases":[{"looks":[{"character":"onset","state":"about-a-week","how":"asked"}],"priorFactors":[{"cause":"late-blight","factor":1.5,"reason":"weather"}]}]}"""),
            ("/api/weigh", caseFile),
            ("/api/merge", await DeviceAsync()),
        ];
        for (int i = 0; i < 40; i++)
        {
            string sample = await api.TakeInAsync("""{"host":"tomato","submitter":"g-11","area":{"name":"Kestle Bight","latitude":44,"longitude":-31,"uncertaintyMeters":80000}}""");
            string entry = await api.LookAsync(sample, "concentric-rings", "absent", "hand-lens");
            string path = $"/api/samples/{sample}/entries";
            seeds.Add((path, """{"kind":"look","version":1,"made":"2026-07-01T08:00:00.0000000Z","payload":{"case":1,"observation":{"character":"leaf-underside-growth","states":["white-down"],"how":"hand-lens","surface":"wet-morning"}}}"""));
            seeds.Add((path, $$$"""{"kind":"message","version":1,"heads":["{{{entry}}}"],"payload":{"direction":"in","text":"It rained 1 day."}}"""));
            seeds.Add((path, """{"kind":"diagnosis","version":1,"payload":{"case":1,"primary":["late-blight"],"disagreement":"seen before","provenBy":"lens"}}"""));
            seeds.Add((path, """{"kind":"snoozed","version":1,"payload":{"until":"2026-07-01T08:00:00.0000000Z"}}"""));
            seeds.Add((path, """{"kind":"photograph","version":1,"payload":{"sha256":"9f2c1d8be0a4417d2f6f0b7c3f5a1e6d9f2c1d8be0a4417d2f6f0b7c3f5a1e6d","mediaType":"image/jpeg","bytes":12}}"""));
            seeds.Add(($"{path}/{entry}/corrections", """{"why":"another leaf","version":1,"payload":{"case":1,"observation":{"character":"concentric-rings","state":"clear","how":"hand-lens"}}}"""));
        }

        return seeds;
    }

    /// <summary>A device's first entry, so that damage leaves no hole in its chain.</summary>
    private static async Task<string> DeviceAsync()
    {
        await using var store = new TestStore();
        var device = await store.OpenAsync("device");
        var taken = await device.AppendAsync(new EntryDraft { Author = "d-01", Payload = new TakenIn { Host = "tomato", Cultivar = "number 1" } }, TestContext.Current.CancellationToken);
        return $$"""{"entries":[{{taken.Entry!.Canonical()}}],"texts":[{"person":"g-11","salt":"AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=","text":"It rained."}]}""";
    }
}

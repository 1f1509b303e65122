using Abaxial.Data;
using Abaxial.Data.Search;
using Abaxial.Samples;
using Abaxial.Weighing;

namespace Abaxial.App.Tests.Search;

public abstract class SampleSearchTests(StoreKind kind) : IAsyncLifetime
{
    private const string Pycnidia = """{"by":"diagnostician","character":"pycnidia","how":"hand-lens","note":"dots like pepper","observer":"d-07","state":"present"}""";

    private readonly TestStore store = new(kind);
    private Ledger ledger = null!;

    public async ValueTask InitializeAsync() => ledger = await store.OpenAsync();

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task Everything_in_a_sample_finds_it_as_one_types()
    {
        var says = TestStore.Seal("g-11", "The tunnel at Kestle Bight smells of Überreife.");
        var takenIn = new TakenIn { Host = "tomato", System = "high-tunnel", Cultivar = "Gardener's Delight", Area = new Area("Upper Thrave", 44, -31, 80_000), Says = says.Seal(), Submitter = "g-11" };
        var sample = await TakeInAsync(takenIn, says);
        await TestStore.AppendAsync(ledger, sample, new LookMade(1, Pycnidia));
        await TestStore.AppendAsync(ledger, sample, new DiagnosisSigned { Case = 1, Primary = ["septoria-leaf-spot"], Engine = new EngineSaid("solanum 2026.1 00000000", "unlikely", "septoria-leaf-spot") });
        await TakeInAsync(new TakenIn { Host = "potato" });
        await TakeInAsync(new TakenIn { Host = "potato", Cultivar = "Uber" });
        string number = (await RowsAsync(new SampleQuery())).Single(row => row.Sample == sample.ToString()).Number!;
        string[] found =
        [
            number, number[..7], number.Replace("-", "", StringComparison.Ordinal), number[3..], "Gardener", "delight upper", "Thrave", "pepper", "d-07", "g-11", "pycnid",
            "septoria-leaf-spot", "Septoria lycopersici", "kestle bight", "uberreif", "ÜBERREIFE", "tunnel smells", "\"tunnel\" & (smells)",
        ];
        foreach (string text in found) Assert.Equal($"{text}: {sample}", $"{text}: {string.Join(' ', (await RowsAsync(new SampleQuery { Text = text })).Select(row => row.Sample))}");
        foreach (string text in new[] { "omato", "pepper potato", "buckeye", "\"", "- -", "⚠️", "latitude" }) Assert.Empty(await RowsAsync(new SampleQuery { Text = text }));
    }

    [Fact]
    public async Task A_row_says_what_the_fold_says()
    {
        var promised = new DateTimeOffset(2026, 7, 14, 15, 0, 0, TimeSpan.FromHours(2));
        var sample = await TakeInAsync(new TakenIn { Host = "tomato", System = "garden", Purpose = "home", Promised = promised, Submitter = "g-11", Area = new Area("Tansy Head", 44, -31, 80_000) });
        await TestStore.AppendAsync(ledger, sample, new LookMade(1, Pycnidia));
        await TestStore.AppendAsync(ledger, sample, new HandedOver("d-02"));
        var photograph = await ledger.AddPhotographAsync(new MemoryStream([1, 2, 3]), TestContext.Current.CancellationToken);
        await TestStore.AppendAsync(ledger, sample, new PhotographAdded(photograph.Sha256!, "image/jpeg", 3));
        var row = Assert.Single(await RowsAsync(new SampleQuery()));

        var view = SampleFold.Of(sample, await ledger.EntriesOfAsync(sample, TestContext.Current.CancellationToken), SampleReader.BuiltIn.Knowledge);
        Assert.Empty(view.Cases[0].Reading.Problems);
        var answer = SampleReader.BuiltIn.Weigher.Weigh(view.Cases[0].Reading.Case!);
        Assert.Equal(("tomato", "garden", "home", "Tansy Head", "g-11", "d-01", "d-02"), (row.Host, row.System, row.Purpose, row.Area, row.Submitter, row.TakenBy, row.With));
        Assert.Equal((promised.ToUniversalTime(), null, true), (row.Promised!.Value, row.SnoozedUntil, row.IsOpen));
        Assert.Equal((answer.Standing.Word(), answer.LateBlight.Probability, answer.Causes[0].Cause.Id, 1, 1, photograph.Sha256), (row.Standing, row.LateBlight, row.Leader, row.Looks, row.Photographs, row.FirstPhotograph));
        Assert.Equal((answer.LossNow, (int)Math.Round(100 * answer.Causes[0].Probability)), (row.Waiting, row.LeaderPercent));
        Assert.Equal((view.Timeline.Length, view.Timeline[0].Entry.Made.ToUnixTimeMilliseconds()), (row.Entries, row.Taken.ToUnixTimeMilliseconds()));
        await TestStore.AppendAsync(ledger, sample, new Closed("answered"));
        Assert.Equal((false, 0.0), Assert.Single((await RowsAsync(new SampleQuery { Open = false })).Select(closed => (closed.IsOpen, closed.Waiting))));
    }

    [Fact]
    public async Task Pages_follow_each_other_without_a_gap_by_time_and_by_the_cost_of_waiting()
    {
        string[] systems = ["field", "garden", "greenhouse", "high-tunnel", "storage"];
        for (int i = 0; i < 23; i++) await TakeInAsync(new TakenIn { Host = "tomato", System = systems[i % 5], Cultivar = i % 2 == 0 ? "Sallow Plum" : null });
        foreach (var query in new[] { new SampleQuery { Limit = 5 }, new SampleQuery { Limit = 4, ByWaiting = true }, new SampleQuery { Limit = 3, Text = "sall" }, new SampleQuery { Limit = 2, Text = "sall", ByWaiting = true } })
        {
            var all = await RowsAsync(query with { Limit = 200 });
            Assert.Equal(query.Text is null ? 23 : 12, all.Count);
            Assert.Equal(query.ByWaiting ? all.OrderByDescending(row => row.Waiting).ThenByDescending(row => row.Key) : all.OrderByDescending(row => row.Key), all);
            var paged = new List<SampleRow>();
            var next = query;
            while (true)
            {
                await using var context = ledger.Ask();
                var page = await context.PageAsync(next, TestContext.Current.CancellationToken);
                paged.AddRange(page.Rows);
                if (page.Next is null) break;
                Assert.Equal(query.Limit, page.Rows.Length);
                Assert.True(SampleCursor.TryParse(page.Next.ToString(), out var cursor));
                next = query with { After = cursor };
            }

            Assert.Equal(all.Select(row => row.Key), paged.Select(row => row.Key));
        }
    }

    private Task<EntryId> TakeInAsync(TakenIn takenIn, params SealedText[] texts) => SearchStore.TakeInAsync(ledger, takenIn, texts);

    private Task<IReadOnlyList<SampleRow>> RowsAsync(SampleQuery query) => SearchStore.RowsAsync(ledger, query);
}

public sealed class SampleSearchTests_on_SQLite() : SampleSearchTests(StoreKind.Sqlite);

public sealed class SampleSearchTests_on_PostgreSQL() : SampleSearchTests(StoreKind.Postgres);

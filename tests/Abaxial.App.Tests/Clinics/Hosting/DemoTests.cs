using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Web.Hosting.Demo;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class DemoTests : IAsyncDisposable
{
    private readonly TestStore store = new();

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task The_demo_holds_every_case_of_the_island_numbered_over_its_season_and_checks_clean()
    {
        await DemoStore.FillAsync(await store.PlaceAsync(), TestContext.Current.CancellationToken);
        var ledger = await store.OpenAsync();
        var views = await ViewsAsync(ledger);
        Assert.Equal(Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "cases"), "*.json").Length, views.Count);
        Assert.Equal(views.Count, DemoCase.Season.Select(sample => sample.File).Distinct().Count());
        Assert.All(views, view => Assert.False(Assert.Single(view.Cases).Reading.IsRefused));
        Assert.All(views, view => Assert.Equal(2026, view.Timeline[0].Entry.Made.Year));
        Assert.All(views, view => Assert.True(view.TakenIn!.Noticed is not { } day || day.ToDateTime(TimeOnly.MinValue) <= view.Timeline[0].Entry.Made.UtcDateTime, $"{view.Number} came before it was noticed."));
        Assert.Equal(views.Count, views.Max(view => view.Number!.Value.Running));
        Assert.Single(views, view => view.Diagnoses.Length == 1 && view.Diagnoses[0].Diagnosis.Primary.SequenceEqual(["late-blight"]));
        Assert.Single(views, view => view.ClosedBecause is not null);
        Assert.Contains(views, view => view.With == "d-01");
        Assert.True((await TestStore.CheckAsync(ledger)).IsClean);
    }

    [Fact]
    public async Task A_demo_that_is_there_stays_as_it_is()
    {
        await DemoStore.FillAsync(await store.PlaceAsync(), TestContext.Current.CancellationToken);
        var first = await TestStore.TextsAsync(await store.OpenAsync());
        await DemoStore.FillAsync(await store.PlaceAsync(), TestContext.Current.CancellationToken);
        Assert.Equal(first, await TestStore.TextsAsync(await store.OpenAsync()));
    }

    private static async Task<List<SampleView>> ViewsAsync(Ledger ledger)
    {
        await using var context = ledger.Ask();
        var samples = await context.Entries.Select(row => row.Sample).Distinct().ToListAsync(TestContext.Current.CancellationToken);
        var views = new List<SampleView>();
        foreach (var sample in samples.Select(EntryId.Parse)) views.Add(SampleFold.Of(sample, await ledger.EntriesOfAsync(sample, TestContext.Current.CancellationToken), BuiltIn.Solanum()));
        return views;
    }
}

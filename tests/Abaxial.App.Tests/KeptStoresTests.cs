using Abaxial.Knowledge;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

/// <summary>A store of each released version is kept in tests/stores, made by bench/load/Abaxial.Load everything. All of them open.</summary>
public sealed class KeptStoresTests
{
    private static readonly string Kept = Path.Combine(AppContext.BaseDirectory, "stores");

    public static TheoryData<string> Versions => [.. Directory.EnumerateDirectories(Kept).Select(folder => Path.GetFileName(folder)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Versions))]
    public async Task A_store_of_a_released_version_opens_checks_clean_and_takes_new_entries(string version)
    {
        await using var store = new TestStore(StoreKind.Sqlite);
        Copy(Path.Combine(Kept, version), store.Folder);
        var ledger = await store.OpenAsync();
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        await using var context = ledger.Ask();
        var sample = EntryId.Parse(await context.Entries.Where(row => row.Kind == EntryKind.TakenIn).Select(row => row.Sample).FirstAsync(TestContext.Current.CancellationToken));
        await TestStore.AppendAsync(ledger, sample, new HandedOver("d-09"));
        var view = SampleFold.Of(sample, await ledger.EntriesOfAsync(sample, TestContext.Current.CancellationToken), BuiltIn.Solanum());
        Assert.Equal(("d-09", "g-11", "lower"), (view.With, Assert.Single(view.Erased), Assert.Single(view.Photographs).Side));
        Assert.DoesNotContain(view.Timeline, item => item.State is ItemState.NotUnderstood or ItemState.WithoutEffect);
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    [Fact]
    public void A_store_of_the_first_version_is_kept() => Assert.Contains("1", Directory.EnumerateDirectories(Kept).Select(Path.GetFileName));

    private static void Copy(string from, string to)
    {
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }
}

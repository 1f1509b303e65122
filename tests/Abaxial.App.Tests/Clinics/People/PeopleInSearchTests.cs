using Abaxial.App.Tests.Search;
using Abaxial.Data.People;
using Abaxial.Data.Search;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class PeopleInSearchTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_sample_is_found_by_what_whoever_has_it_is_called_until_they_are_erased()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        await administrator.DoneAsync("/api/people", ("id", "d-07"), ("name", "ilsabet"), ("displayName", "Ilsabet Crakeby"), ("role", "diagnostician"));
        var sample = await TestStore.TakeInAsync(clinic.Ledger);
        await TestStore.TakeInAsync(clinic.Ledger); // nobody has it
        await TestStore.AppendAsync(clinic.Ledger, sample, new HandedOver("d-07"));
        Assert.Equal([sample.ToString()], await FoundAsync(clinic, "crakeby"));

        await administrator.DoneAsync("/api/people/d-07", ("name", "ilsabet"), ("displayName", "Ilsabet Wrenfold"), ("role", "diagnostician"));
        Assert.Empty(await FoundAsync(clinic, "crakeby"));
        Assert.Equal([sample.ToString()], await FoundAsync(clinic, "wrenfold tomato"));

        await administrator.DoneAsync("/api/people/d-07/erase");
        Assert.Empty(await FoundAsync(clinic, "wrenfold"));
        Assert.Equal([sample.ToString()], await FoundAsync(clinic, "d-07"));
        Assert.Equal(0, await clinic.AskAsync(store => store.PersonWords.CountAsync(row => row.Person == "d-07", Cancel)));
    }

    [Fact]
    public async Task A_name_that_was_refused_changes_nothing_of_what_is_found()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        await administrator.DoneAsync("/api/people", ("id", "d-07"), ("name", "ilsabet"), ("displayName", "Ilsabet Crakeby"), ("role", "diagnostician"));
        var sample = await TestStore.TakeInAsync(clinic.Ledger);
        await TestStore.AppendAsync(clinic.Ledger, sample, new HandedOver("d-07"));
        using var refused = await administrator.PostAsync("/api/people/d-07", ("name", "a-01"), ("displayName", "Ilsabet Wrenfold"), ("role", "diagnostician"));
        Assert.Equal(System.Net.HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Equal([sample.ToString()], await FoundAsync(clinic, "crakeby"));
        Assert.Empty(await FoundAsync(clinic, "wrenfold"));
    }

    private static async Task<IEnumerable<string>> FoundAsync(PeopleClinic clinic, string text) =>
        (await SearchStore.RowsAsync(clinic.Ledger, new SampleQuery { Text = text })).Select(row => row.Sample);
}

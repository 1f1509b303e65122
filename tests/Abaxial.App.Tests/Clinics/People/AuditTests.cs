using Abaxial.Data.People;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class AuditTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("UPDATE audit SET Person = 'd-99' WHERE Place = 2", 2)]
    [InlineData("DELETE FROM audit WHERE Place = 2", 2)]
    [InlineData("UPDATE audit SET Kind = 'signed-out' WHERE Place = 3", 3)]
    public async Task A_row_that_was_changed_or_taken_away_is_found(string change, long place)
    {
        await using var clinic = await PeopleClinic.StartAsync();
        foreach (string id in (string[])["d-01", "d-02", "d-03", "d-04"]) await clinic.AddAsync(id, Role.Diagnostician);
        Assert.Null(await clinic.AskAsync(store => AuditTrail.FirstFaultAsync(store, Cancel)));
        await clinic.AskAsync(store => store.Database.ExecuteSqlRawAsync(change, Cancel));
        Assert.Equal(place, await clinic.AskAsync(store => AuditTrail.FirstFaultAsync(store, Cancel)));
    }

    [Fact]
    public async Task What_was_typed_is_not_in_it()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("d-07", Role.Diagnostician);
        using var visitor = clinic.Visitor();
        using var refused = await visitor.PostAsync("/api/sessions", ("name", "mypasswordinthewrongfield"), ("password", "d-07"));
        var rows = await clinic.AskAsync(store => store.Audit.AsNoTracking().ToListAsync(Cancel));
        Assert.Equal(AuditKind.SignInFailed, rows[^1].Kind);
        Assert.All(rows, row => Assert.DoesNotContain("mypassword", $"{row.Subject} {row.Detail} {row.Person} {row.From}", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task Rows_written_at_once_make_one_chain()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await Task.WhenAll(Enumerable.Range(1, 20).Select(i => clinic.AddAsync($"d-{i:D2}", Role.Diagnostician)));
        Assert.Equal(20, (await clinic.AuditAsync()).Count);
        Assert.Null(await clinic.AskAsync(store => AuditTrail.FirstFaultAsync(store, Cancel)));
    }
}

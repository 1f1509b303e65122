using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Web;
using Abaxial.Web.Hosting;
using Abaxial.Web.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Abaxial.App.Tests.Clinics.People;

/// <summary>A clinic in which nobody is signed in by themselves, with people of the test's choosing and a clock that it can put forward.</summary>
internal sealed class PeopleClinic : IAsyncDisposable
{
    public const string Password = "seven wet leaves in a tray";

    private static readonly string Hash = new PasswordWork().HashOf(Password);

    private readonly TestStore store = new();
    private WebApplication? app;

    public WebApplication App => app ?? throw new InvalidOperationException("The clinic is not running yet.");

    public TestClock Clock { get; } = new();

    public Uri Address => new(App.Urls.First());

    public string Folder => store.Folder;

    public PasswordWork Work => App.Services.GetRequiredService<PasswordWork>();

    public SetUpCode SetUp => App.Services.GetRequiredService<SetUpCode>();

    public Ledger Ledger => App.Services.GetRequiredService<Ledger>();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static async Task<PeopleClinic> StartAsync(bool isDemo = false)
    {
        var clinic = new PeopleClinic();
        await clinic.RunAsync(isDemo);
        return clinic;
    }

    /// <summary>Stops the program and starts it again over the same store, at another port.</summary>
    public async Task StartAgainAsync()
    {
        await App.StopAsync(Cancel);
        await App.DisposeAsync();
        await RunAsync(isDemo: false);
    }

    /// <summary>A browser that nobody is signed in with.</summary>
    public Visitor Visitor() => new(Address);

    /// <summary>Makes an account with the password of all tests; the name to sign in with is the id.</summary>
    public async Task AddAsync(string id, Role role, string? password = Password)
    {
        await using var scope = App.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<PersonChanges>().AddAsync(new PersonWanted(id, id, $"Person {id}", "", []), role, null, new AuditNote(AuditKind.Invited, null), Cancel);
        if (password is null) return;
        string hash = password == Password ? Hash : Work.HashOf(password);
        await AskAsync(context => context.People.Where(row => row.Id == id).ExecuteUpdateAsync(row => row.SetProperty(person => person.PasswordHash, hash), Cancel));
    }

    /// <summary>A browser in which somebody new has signed in by password; the session is written as signing in writes it.</summary>
    public async Task<Visitor> SignedInAsync(string id, Role role)
    {
        await AddAsync(id, role);
        var visitor = Visitor();
        string secret = Secrets.NewToken();
        var now = Clock.GetUtcNow();
        await AskAsync(context =>
        {
            context.Sessions.Add(new SessionRow { Id = Secrets.HashOf(secret), Person = id, Means = "password", Made = now, LastSeen = now, Ends = now + SessionTimes.Longest, Proven = now, Browser = "A browser" });
            return context.SaveChangesAsync(Cancel);
        });
        visitor.Cookies.Add(Address, new System.Net.Cookie("abaxial", secret));
        return visitor;
    }

    public async Task<Visitor> SignInAsync(string id)
    {
        var visitor = Visitor();
        using var answer = await visitor.PostAsync("/api/sessions", ("name", id), ("password", Password));
        Assert.Equal(System.Net.HttpStatusCode.Created, answer.StatusCode);
        return visitor;
    }

    /// <summary>Asks the store.</summary>
    public async Task<T> AskAsync<T>(Func<LedgerContext, Task<T>> ask)
    {
        await using var context = Ledger.Ask();
        return await ask(context);
    }

    /// <summary>The kinds of the audit's rows, in order.</summary>
    public Task<List<string>> AuditAsync() => AskAsync(context => context.Audit.OrderBy(row => row.Place).Select(row => row.Kind).ToListAsync(Cancel));

    public async ValueTask DisposeAsync()
    {
        if (app is not null)
        {
            await app.StopAsync(Cancel);
            await app.DisposeAsync();
        }

        await store.DisposeAsync();
    }

    private async Task RunAsync(bool isDemo)
    {
        var limits = new RequestLimits { RequestsPerMinute = 1_000_000, SignInsPerMinute = 1_000_000 };
        var options = new ClinicOptions { Store = Folder, Address = new Uri("http://127.0.0.1:0"), IsDemo = isDemo, LogLevel = LogLevel.Warning, Limits = limits };
        app = await Clinic.BuildAsync(options, Clock, Cancel);
        await app.StartAsync(Cancel);
    }
}

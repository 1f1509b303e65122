using System.Collections.Immutable;
using System.Reflection;
using Abaxial.Data.People;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.People;

/// <summary>How somebody showed who they are.</summary>
internal enum Means
{
    Password,
    Passkey,
    Pin,
    Device,
    Demo,
}

/// <summary>Who asks. Endpoints take it as a parameter; pages ask <see cref="Of"/>.</summary>
/// <param name="Id">The id that their entries name as the author.</param>
/// <param name="DisplayName">What they are called.</param>
/// <param name="Role">The role; of a device, the role that it is held to.</param>
/// <param name="Areas">Names of the areas whose samples a scout sees.</param>
/// <param name="Means">How they showed who they are.</param>
internal sealed record CurrentPerson(string Id, string DisplayName, Role Role, ImmutableArray<string> Areas, Means Means)
{
    /// <summary>How long a proof holds for what is sensitive: people, devices, what one signs in with.</summary>
    public static readonly TimeSpan ProofHolds = TimeSpan.FromMinutes(15);

    /// <summary>The id of the session or device; null in a demo.</summary>
    public string? Key { get; init; }

    /// <summary>The name to sign in with.</summary>
    public string SignInName { get; init; } = "";

    /// <summary>When they last proved to be themselves.</summary>
    public DateTimeOffset? Proven { get; init; }

    /// <summary>The first digits of the session or device, for the audit.</summary>
    public string? From => Key?[..Math.Min(12, Key.Length)];

    /// <summary>A device or a demo visitor cannot do what is done about people, whatever the role.</summary>
    public bool Has(Right right) => Rights.Of(Role).Contains(right) && (Means is Means.Password or Means.Passkey or Means.Pin || right is Right.SeeSamples or Right.UsePhotographs or Right.SeeOriginals or Right.Merge or Right.Publish);

    public bool MayWrite(string kind) => Rights.KindsOf(Role).Contains(kind);

    public bool IsProvenAt(DateTimeOffset now) => Proven is { } proven && now - proven < ProofHolds;

    /// <summary>Who asks; null where nobody is signed in.</summary>
    public static CurrentPerson? Of(HttpContext context) => context.Features.Get<CurrentPerson>();

    public static ValueTask<CurrentPerson?> BindAsync(HttpContext context, ParameterInfo _) => ValueTask.FromResult(Of(context));
}

using System.Collections.Immutable;
using System.Reflection;
using Abaxial.Data.People;
using Abaxial.Data.Search;
using Abaxial.Web.People;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Samples;

/// <summary>Who asks for samples, and what their role lets them see and write.</summary>
/// <param name="Id">The id that their entries name as the author.</param>
/// <param name="Role">The role; of a device, the role that it is held to.</param>
/// <param name="Areas">Names of the areas whose samples a scout sees.</param>
public sealed record Visitor(string Id, Role Role, ImmutableArray<string> Areas)
{
    public static ValueTask<Visitor?> BindAsync(HttpContext context, ParameterInfo _) => ValueTask.FromResult(Of(context));

    internal static Visitor? Of(HttpContext context) => CurrentPerson.Of(context) is { } person ? new Visitor(person.Id, person.Role, person.Areas) : null;

    /// <summary>Samples are content, which an administrator has nothing to do with.</summary>
    public bool MayRead => Rights.Of(Role).Contains(Right.SeeSamples);

    /// <summary>Whether the role may write entries of a kind.</summary>
    public bool MayWrite(string kind) => Rights.KindsOf(Role).Contains(kind);

    /// <summary>Whose samples they see; null for all of the clinic's.</summary>
    public SampleScope? Scope => Rights.SightOf(Role) switch
    {
        Sight.Clinic => null,
        Sight.OwnAndAreas => new SampleScope(Id, Areas),
        _ => new SampleScope(Id, []),
    };
}

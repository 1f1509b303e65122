using System.Collections.Immutable;
using System.Reflection;
using Abaxial.Data.Search;
using Abaxial.Samples;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Samples;

/// <summary>What somebody is to the clinic.</summary>
public enum Role
{
    Submitter,
    Scout,
    Diagnostician,
    Lead,
    Administrator,
}

/// <summary>Who asks, and what their role lets them see and write of samples.</summary>
/// <param name="Id">The id that their entries name as the author.</param>
/// <param name="Role">The role.</param>
/// <param name="Areas">Names of the areas whose samples a scout sees.</param>
public sealed record Visitor(string Id, Role Role, ImmutableArray<string> Areas)
{
    private static readonly ImmutableArray<string> OfSubmitters = [EntryKind.TakenIn, EntryKind.Look, EntryKind.Photograph, EntryKind.PhotographMarked, EntryKind.Message, EntryKind.Correction];
    private static readonly ImmutableArray<string> OfScouts = [.. OfSubmitters, EntryKind.PriorFactor, EntryKind.HandedOver];
    private static readonly ImmutableArray<string> OfTheClinic = [.. OfScouts, EntryKind.Diagnosis, EntryKind.Snoozed, EntryKind.Closed, EntryKind.Reopened];

    public static ValueTask<Visitor?> BindAsync(HttpContext context, ParameterInfo _) => ValueTask.FromResult(Of(context));

    internal static Visitor? Of(HttpContext context) => context.RequestServices.GetRequiredService<Func<HttpContext, Visitor?>>()(context);

    /// <summary>Samples are content, which an administrator has nothing to do with.</summary>
    public bool MayRead => Role != Role.Administrator;

    /// <summary>Whether the role may write entries of a kind.</summary>
    public bool MayWrite(string kind) => Role switch
    {
        Role.Submitter => OfSubmitters.Contains(kind),
        Role.Scout => OfScouts.Contains(kind),
        Role.Diagnostician or Role.Lead => OfTheClinic.Contains(kind),
        _ => false,
    };

    /// <summary>Whose samples they see; null for all of the clinic's.</summary>
    public SampleScope? Scope => Role switch
    {
        Role.Diagnostician or Role.Lead => null,
        Role.Scout => new SampleScope(Id, Areas),
        _ => new SampleScope(Id, []),
    };
}

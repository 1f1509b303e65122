using System.Collections.Immutable;
using Abaxial.Data.People;
using Abaxial.Samples;

namespace Abaxial.Web.People;

/// <summary>Something that may be done in the clinic, apart from writing entries.</summary>
internal enum Right
{
    /// <summary>See samples: which ones, <see cref="Rights.SightOf"/> says.</summary>
    SeeSamples,

    /// <summary>Send photographs, and see those of samples that one sees.</summary>
    UsePhotographs,

    /// <summary>See photographs as they came, with the position and the camera in them.</summary>
    SeeOriginals,

    /// <summary>Take in what a device wrote while it was away.</summary>
    Merge,

    /// <summary>Pair devices for oneself.</summary>
    PairDevices,

    /// <summary>Sign in on a shared bench computer by PIN.</summary>
    UseBench,

    /// <summary>Sign and publish, and change the knowledge.</summary>
    Publish,

    /// <summary>Invite, change, keep out and erase people; end their sessions and devices.</summary>
    ManagePeople,

    /// <summary>Mark computers as benches.</summary>
    ManageBenches,

    /// <summary>Read the audit.</summary>
    SeeAudit,
}

/// <summary>Whose samples somebody sees.</summary>
internal enum Sight
{
    None,
    Own,
    OwnAndAreas,
    Clinic,
}

/// <summary>What each role may do: the one table of it. The server asks it for every endpoint and every kind of entry.</summary>
internal static class Rights
{
    private static readonly ImmutableHashSet<Right> OfSubmitter = [Right.SeeSamples, Right.UsePhotographs];
    private static readonly ImmutableHashSet<Right> OfScout = [.. OfSubmitter, Right.Merge, Right.PairDevices, Right.UseBench];
    private static readonly ImmutableHashSet<Right> OfDiagnostician = [.. OfScout, Right.SeeOriginals, Right.ManageBenches];
    private static readonly ImmutableHashSet<Right> OfLead = [.. OfDiagnostician, Right.Publish, Right.SeeAudit];
    private static readonly ImmutableHashSet<Right> OfAdministrator = [Right.ManagePeople, Right.ManageBenches, Right.SeeAudit];

    private static readonly ImmutableHashSet<string> KindsOfSubmitter =
        [EntryKind.TakenIn, EntryKind.Look, EntryKind.Photograph, EntryKind.PhotographMarked, EntryKind.Message, EntryKind.Correction];

    private static readonly ImmutableHashSet<string> KindsOfScout = [.. KindsOfSubmitter, EntryKind.PriorFactor, EntryKind.HandedOver];
    private static readonly ImmutableHashSet<string> KindsOfClinic = [.. KindsOfScout, EntryKind.Diagnosis, EntryKind.Snoozed, EntryKind.Closed, EntryKind.Reopened];

    /// <summary>What a role may do.</summary>
    public static ImmutableHashSet<Right> Of(Role role) => role switch
    {
        Role.Submitter => OfSubmitter,
        Role.Scout => OfScout,
        Role.Diagnostician => OfDiagnostician,
        Role.Lead => OfLead,
        Role.Administrator => OfAdministrator,
        _ => [],
    };

    /// <summary>The kinds of entries that a role may write. Numbers are given by the store, and a person is erased by <see cref="Right.ManagePeople"/>.</summary>
    public static ImmutableHashSet<string> KindsOf(Role role) => role switch
    {
        Role.Submitter => KindsOfSubmitter,
        Role.Scout => KindsOfScout,
        Role.Diagnostician or Role.Lead => KindsOfClinic,
        _ => [],
    };

    /// <summary>Whose samples a role sees.</summary>
    public static Sight SightOf(Role role) => role switch
    {
        Role.Submitter => Sight.Own,
        Role.Scout => Sight.OwnAndAreas,
        Role.Diagnostician or Role.Lead => Sight.Clinic,
        _ => Sight.None,
    };

    /// <summary>The roles that a device of somebody may be held to: never more than its person, and never an administrator's.</summary>
    public static ImmutableArray<Role> DeviceRolesOf(Role role) => role switch
    {
        Role.Scout => [Role.Scout],
        Role.Diagnostician => [Role.Scout, Role.Diagnostician],
        Role.Lead => [Role.Scout, Role.Diagnostician, Role.Lead],
        _ => [],
    };
}

using Abaxial.Data.People;
using Abaxial.Samples;
using Abaxial.Web.People;

namespace Abaxial.App.Tests.Clinics.People;

/// <summary>The table of rights, said a second time as the design says it.</summary>
public sealed class RightsTests
{
    private const string All = "submitter scout diagnostician lead";

    public static TheoryData<string, string> Kinds => new()
    {
        { EntryKind.TakenIn, All },
        { EntryKind.Look, All },
        { EntryKind.Photograph, All },
        { EntryKind.PhotographMarked, All },
        { EntryKind.Message, All },
        { EntryKind.Correction, All },
        { EntryKind.PriorFactor, "scout diagnostician lead" },
        { EntryKind.HandedOver, "scout diagnostician lead" },
        { EntryKind.Diagnosis, "diagnostician lead" },
        { EntryKind.Snoozed, "diagnostician lead" },
        { EntryKind.Closed, "diagnostician lead" },
        { EntryKind.Reopened, "diagnostician lead" },
        { EntryKind.Numbered, "" },
        { EntryKind.PersonErased, "" },
    };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_kind_of_entry_is_written_by_these_roles_alone(string kind, string roles) =>
        Assert.Equal(roles, string.Join(' ', Enum.GetValues<Role>().Where(role => Rights.KindsOf(role).Contains(kind)).Select(PersonAnswer.Word)));

    [Fact]
    public void Every_kind_of_entry_is_in_the_table() => Assert.Equal(EntryKind.All, Kinds.Select(row => row.Data.Item1).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData(Role.Submitter, nameof(Sight.Own))]
    [InlineData(Role.Scout, nameof(Sight.OwnAndAreas))]
    [InlineData(Role.Diagnostician, nameof(Sight.Clinic))]
    [InlineData(Role.Lead, nameof(Sight.Clinic))]
    [InlineData(Role.Administrator, nameof(Sight.None))]
    public void A_role_sees_these_samples(Role role, string sight) => Assert.Equal(sight, Rights.SightOf(role).ToString());

    [Fact]
    public void A_device_and_a_demo_visitor_keep_no_people_whatever_their_role()
    {
        foreach (var role in Enum.GetValues<Role>())
        {
            foreach (string means in (string[])["Device", "Demo"])
            {
                var person = new CurrentPerson("x-01", "X", role, [], Enum.Parse<Means>(means));
                foreach (string right in (string[])["ManagePeople", "ManageBenches", "PairDevices", "SeeAudit", "UseBench"]) Assert.False(person.Has(Enum.Parse<Right>(right)));
            }
        }
    }
}

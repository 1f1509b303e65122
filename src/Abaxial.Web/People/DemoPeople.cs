using Abaxial.Data.People;

namespace Abaxial.Web.People;

/// <summary>Who a visitor of the demo clinic is. Outside a demo nobody is signed in so.</summary>
internal static class DemoPeople
{
    public static readonly CurrentPerson Visitor = new("d-01", "Hesper Dunnick", Role.Diagnostician, [], Means.Demo);
}

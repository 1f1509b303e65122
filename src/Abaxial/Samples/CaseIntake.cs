using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>Makes of a case what has to be written down to take it in as a sample.</summary>
public static class CaseIntake
{
    /// <summary>Half the diagonal of a field of one degree, meters: what the area of a sample is coarsened to.</summary>
    private const double AreaMeters = 80_000;

    /// <summary>What is taken in, and what was seen and stated, in the order of the case.</summary>
    /// <param name="taken">The case.</param>
    /// <param name="place">The seal of the exact place; null where the case has none.</param>
    public static (TakenIn TakenIn, ImmutableArray<Payload> Seen) Of(Case taken, Seal? place)
    {
        ArgumentNullException.ThrowIfNull(taken);
        var takenIn = new TakenIn
        {
            Host = taken.Host,
            System = taken.System,
            Stage = taken.Stage,
            Purpose = taken.Purpose,
            Noticed = taken.Noticed,
            Area = taken.Place is { } exact ? AreaOf(exact) : null,
            Place = place,
            Submitter = place?.Person,
        };
        using var document = JsonDocument.Parse(CaseWriter.ToUtf8(taken));
        var seen = ImmutableArray.CreateBuilder<Payload>();
        foreach (var factor in taken.PriorFactors) seen.Add(new PriorFactorStated(1, factor.Cause.Id, factor.Factor, factor.Reason));
        foreach (var look in document.RootElement.GetProperty("looks").EnumerateArray()) seen.Add(new LookMade(1, CanonicalJson.Of(look)));
        return (takenIn, seen.ToImmutable());
    }

    /// <summary>The exact place as the text that is sealed.</summary>
    public static string TextOf(Place place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return CanonicalJson.OfObject(
            ("latitude", CanonicalJson.Of(place.Latitude)),
            ("longitude", CanonicalJson.Of(place.Longitude)),
            ("uncertaintyMeters", place.UncertaintyMeters is { } meters ? CanonicalJson.Of(meters) : null));
    }

    /// <summary>The area of an exact place: whole degrees; what lies south of the equator stays there, as the seasons hang on it.</summary>
    public static Area AreaOf(Place exact)
    {
        ArgumentNullException.ThrowIfNull(exact);
        double latitude = Math.Floor(exact.Latitude + 0.5), longitude = Math.Floor(exact.Longitude + 0.5);
        if (latitude == 0 && exact.Latitude < 0) latitude = -0.5;
        return new Area(null, latitude, longitude, AreaMeters + (exact.UncertaintyMeters ?? 0));
    }
}

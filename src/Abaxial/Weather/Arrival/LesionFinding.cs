namespace Abaxial.Weather.Arrival;

/// <summary>The oldest lesions that were found in a field, and the weather that they grew in.</summary>
/// <param name="Field">What the clinic calls the field. For its eyes only.</param>
/// <param name="Record">The record of the nearest good station, after quality control.</param>
/// <param name="Seen">When they were looked at, in the standard time of the record.</param>
/// <param name="Lesion">What was measured.</param>
public sealed record LesionFinding(string Field, StationRecord Record, DateTime Seen, LesionMeasure Lesion);

/// <summary>What was measured of lesions: how wide they are, or for how long they have been visible. From the least to the most that it may be.</summary>
/// <param name="Of">Which of the two.</param>
/// <param name="Least">The least.</param>
/// <param name="Most">The most; not below the least.</param>
public sealed record LesionMeasure(LesionMeasureOf Of, double Least, double Most);

/// <summary>What can be measured of lesions.</summary>
public enum LesionMeasureOf
{
    /// <summary>The diameter, mm.</summary>
    Millimetres,

    /// <summary>Days since they were first to be seen.</summary>
    DaysVisible,
}

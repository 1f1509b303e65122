namespace Abaxial.Data.People;

/// <summary>What somebody is in the clinic.</summary>
public enum Role
{
    /// <summary>Sends samples, and sees their own.</summary>
    Submitter,

    /// <summary>Looks at plants in the field; sees their own samples and those of their areas.</summary>
    Scout,

    /// <summary>Works at the bench on every sample of the clinic.</summary>
    Diagnostician,

    /// <summary>Signs, publishes and keeps the knowledge.</summary>
    Lead,

    /// <summary>Keeps people, devices and settings, and sees no sample.</summary>
    Administrator,
}

namespace Abaxial.App.Tests.Clinics.People;

/// <summary>The system's clock, which a test can put forward.</summary>
internal sealed class TestClock : TimeProvider
{
    private TimeSpan ahead;

    public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + ahead;

    public void Forward(TimeSpan by) => ahead += by;
}

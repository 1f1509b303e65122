using System.Diagnostics.Metrics;

namespace Abaxial.Web.Hosting;

/// <summary>What the clinic counts of its own work.</summary>
internal static class ClinicFigures
{
    public const string Name = "Abaxial.Web";

    private static readonly Meter Meter = new(Name);

    /// <summary>Answers weighed for somebody to read.</summary>
    public static Counter<long> AnswersWeighed { get; } = Meter.CreateCounter<long>("abaxial.answers.weighed", "{answer}", "Answers weighed for somebody to read.");
}

using System.Diagnostics.Metrics;

namespace Abaxial.Web.Hosting;

/// <summary>What the clinic counts of its own work.</summary>
internal static class ClinicFigures
{
    public const string Name = "Abaxial.Web";

    private static readonly Meter Meter = new(Name);

    private static readonly Counter<long> Answers = Meter.CreateCounter<long>("abaxial.answers.weighed", "{answer}", "Answers weighed for somebody to read.");

    /// <summary>Counts answers that were weighed for somebody to read; those that only make a row of a list are not.</summary>
    public static void CountAnswers(int weighed) => Answers.Add(weighed);
}

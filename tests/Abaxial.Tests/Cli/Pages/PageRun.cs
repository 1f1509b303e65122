using System.Collections.Immutable;
using Abaxial.Cli;
using Abaxial.Cli.Pages;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Cli.Pages;

/// <summary>Answers made by hand, and the page that is written of them.</summary>
internal static class PageRun
{
    public static KnowledgeBase Knowledge { get; } = BuiltIn.Solanum();

    public static string Write(Action<Page> write, int width = 80, bool ascii = false)
    {
        using var writer = new StringWriter();
        write(new Page(writer, new Terminal { In = Stream.Null, Out = Stream.Null, Error = TextWriter.Null, Width = width, Ascii = ascii }));
        return writer.ToString();
    }

    public static Cause Cause(string id) => Knowledge.FindCause(id)!;

    public static CauseChance Chance(string id, double probability, double low, double high) => new(Cause(id), probability, low, high);

    public static Case Case(params ImmutableArray<Look> looks) => new() { Knowledge = Knowledge, Host = "tomato", System = "garden", Looks = looks };

    public static Look Look(string character, string state, Way how = Way.NakedEye)
    {
        var found = Knowledge.FindCharacter(character)!;
        return new Look { Character = found, How = how, States = [found.StateIndex(state)], By = Observer.Diagnostician };
    }

    /// <summary>An answer in which septoria leaf spot leads, late blight standing as it is told to.</summary>
    public static Answer Answer(Standing standing, Advice advice, double lateBlight = 0.2, params ImmutableArray<CauseChance> others)
    {
        var subject = Chance("late-blight", lateBlight, lateBlight * 0.6, Math.Min(1, lateBlight * 1.5));
        ImmutableArray<CauseChance> causes = [subject, .. others.IsEmpty ? [Chance("septoria-leaf-spot", 0.7, 0.55, 0.83), Chance("anthracnose", 0.002, 0.001, 0.004)] : others];
        return new Answer
        {
            Knowledge = "solanum 2026.1 00000000",
            Standing = standing,
            StandingBecause = StandingReason.Probability,
            Advice = advice,
            LateBlight = subject,
            Causes = [.. causes.OrderByDescending(cause => cause.Probability)],
            NotListed = 0.01,
            Evidence = [],
            NextLooks = [new NextLook(Knowledge.FindCharacter("leaf-underside-growth")!, Way.MoistChamber, 0.8, 1, 24, [new Outcome(0, 0.8, 0.03), new Outcome(1, 0.2, 0.91)])],
            Conflicts = [],
            Misfit = false,
        };
    }
}

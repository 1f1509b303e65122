using System.CommandLine;
using Abaxial.Knowledge;

namespace Abaxial.Cli.Weather;

/// <summary>What a record is used for other than a season of models.</summary>
internal abstract record WeatherUse;

/// <summary>Factors on the priors of a case.</summary>
internal sealed record PriorUse(string Host, string? System, string? Stage, string? Watering, DateOnly? Noticed) : WeatherUse;

/// <summary>When lesions began.</summary>
/// <param name="Lesions">The file of the lesions.</param>
internal sealed record ArrivalUse(string Lesions) : WeatherUse;

/// <summary>How protection stands.</summary>
/// <param name="Applications">The file of what was applied.</param>
/// <param name="Forecast">The file of the weather to come; null where there is none.</param>
/// <param name="IsConfirmed">Late blight is confirmed in the area, or seed or transplants are suspect.</param>
internal sealed record SprayUse(string Applications, string? Forecast, bool IsConfirmed) : WeatherUse;

/// <summary>The options that pick such a use. At most one of them can be picked.</summary>
internal sealed class WeatherUses
{
    private readonly Option<bool> prior = new("--prior") { Description = "Print what the 21 days of weather up to --noticed say of the causes, as priorFactors of a case file." };
    private readonly Option<string?> host = new("--host") { Description = "With --prior: tomato or potato.", HelpName = "HOST" };
    private readonly Option<string?> system = new("--system") { Description = "With --prior: how the plants are grown or kept, as in a case file.", HelpName = "SYSTEM" };
    private readonly Option<string?> stage = new("--stage") { Description = "With --prior: their stage, as in a case file.", HelpName = "STAGE" };
    private readonly Option<string?> watering = new("--watering") { Description = "With --prior: how they are watered, as in a case file.", HelpName = "WATERING" };
    private readonly Option<string?> noticed = new("--noticed") { Description = "With --prior: the day the trouble was noticed; without it the record's last whole day.", HelpName = "DATE" };
    private readonly Option<string?> arrival = new("--arrival") { Description = "A file of the oldest lesions of one or several fields: when they began, and which wet periods fit.", HelpName = "LESIONS.yaml" };
    private readonly Option<string?> sprays = new("--sprays") { Description = "A file of applications (date, frac, ingredient): how protection stands.", HelpName = "SPRAYS.csv" };
    private readonly Option<string?> forecast = new("--forecast") { Description = "With --sprays: a record of the weather to come; ten days of it are shown, apart.", HelpName = "FILE" };
    private readonly Option<bool> confirmed = new("--confirmed") { Description = "With --sprays: late blight is confirmed in the area, or seed or transplants are suspect." };

    private Option[] OfPrior => [host, system, stage, watering, noticed];

    private Option[] OfSprays => [forecast, confirmed];

    public IEnumerable<Option> All => [prior, .. OfPrior, arrival, sprays, .. OfSprays];

    /// <summary>What was picked; null for a season of models.</summary>
    /// <exception cref="UsageException">The options do not go together.</exception>
    public WeatherUse? Of(ParseResult parsed, Func<string, string?, DateOnly?> dateOf)
    {
        bool isPrior = parsed.GetValue(prior);
        var (lesions, applications) = (parsed.GetValue(arrival), parsed.GetValue(sprays));
        if ((isPrior ? 1 : 0) + (lesions is null ? 0 : 1) + (applications is null ? 0 : 1) > 1) throw new UsageException("--prior, --arrival and --sprays do not go together.");
        RequireNone(parsed, isPrior, OfPrior, prior);
        RequireNone(parsed, applications is not null, OfSprays, sprays);
        if (lesions is not null) return new ArrivalUse(lesions);
        if (applications is not null) return new SprayUse(applications, parsed.GetValue(forecast), parsed.GetValue(confirmed));
        return isPrior ? PriorOf(parsed, dateOf) : null;
    }

    private PriorUse PriorOf(ParseResult parsed, Func<string, string?, DateOnly?> dateOf)
    {
        var knowledge = BuiltIn.Solanum();
        string named = Word(parsed, host, knowledge.Document.Hosts) ?? throw new UsageException($"--prior needs --host: {string.Join(" or ", knowledge.Document.Hosts)}.");
        return new PriorUse(
            named,
            Word(parsed, system, knowledge.Document.Systems),
            Word(parsed, stage, knowledge.Document.Stages),
            Word(parsed, watering, [.. knowledge.Characters.First(character => character.Id == "watering").States]),
            dateOf("--noticed", parsed.GetValue(noticed)));
    }

    private static void RequireNone(ParseResult parsed, bool isPicked, Option[] options, Option of)
    {
        if (!isPicked && options.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false }) is { } lost) throw new UsageException($"{lost.Name} goes with {of.Name}.");
    }

    private static string? Word(ParseResult parsed, Option<string?> option, IReadOnlyCollection<string> accepted)
    {
        string? word = parsed.GetValue(option);
        return word is null || accepted.Contains(word) ? word : throw new UsageException($"{option.Name} is one of {string.Join(", ", accepted)}.");
    }
}

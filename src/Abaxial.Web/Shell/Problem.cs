using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Abaxial.Web.Shell;

/// <summary>Refusals as problem documents (RFC 9457): each names the places, what was found there and what would be accepted.</summary>
internal static class Problem
{
    /// <summary>What was sent will not do.</summary>
    public static ProblemHttpResult Of(int status, IEnumerable<CaseProblem> problems) => TypedResults.Problem(
        statusCode: status,
        title: Titles.GetValueOrDefault(status),
        extensions: new Dictionary<string, object?> { ["problems"] = problems.Select(problem => new ProblemAt(problem.At, problem.Found, [.. problem.Accepted])).ToArray() });

    /// <inheritdoc cref="Of(int, IEnumerable{CaseProblem})"/>
    public static ProblemHttpResult Of(int status, CaseProblems problems) => Of(status, problems.ToImmutable());

    /// <inheritdoc cref="Of(int, IEnumerable{CaseProblem})"/>
    public static ProblemHttpResult Of(int status, string at, string found, params string[] accepted) => Of(status, [new CaseProblem(at, found, [.. accepted])]);

    /// <summary>It is not there, or is not for the person who asks.</summary>
    public static ProblemHttpResult NotFound() => TypedResults.Problem(statusCode: StatusCodes.Status404NotFound, title: Titles[StatusCodes.Status404NotFound]);

    private static Dictionary<int, string> Titles { get; } = new()
    {
        [StatusCodes.Status400BadRequest] = "What was sent will not do.",
        [StatusCodes.Status403Forbidden] = "Your role may not do this.",
        [StatusCodes.Status404NotFound] = "There is no such thing here.",
        [StatusCodes.Status409Conflict] = "That is there already, and says something else.",
        [StatusCodes.Status412PreconditionFailed] = "It has changed since you read it.",
        [StatusCodes.Status413PayloadTooLarge] = "That is too much at once.",
        [StatusCodes.Status415UnsupportedMediaType] = "That is not the form that is read here.",
    };
}

/// <summary>One place that will not do.</summary>
/// <param name="At">The place as a JSON Pointer (RFC 6901); empty for the whole.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Accepted">What would do.</param>
internal sealed record ProblemAt(string At, string Found, string[] Accepted);

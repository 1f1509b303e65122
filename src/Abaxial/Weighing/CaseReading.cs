using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Abaxial.Weighing;

/// <summary>Why a case file is refused: the place, what stands there, and what would be accepted.</summary>
/// <param name="At">The place as a JSON Pointer (RFC 6901); empty for the whole text. A place whose pointer would be longer than 1,000 characters is named by its nearest ancestor that is not.</param>
/// <param name="Found">What stands there, shortened to 100 characters; control characters are shown by their code.</param>
/// <param name="Accepted">What would do there, in words of the case file wherever there are such.</param>
public sealed record CaseProblem(string At, string Found, ImmutableArray<string> Accepted);

/// <summary>A case that was read, or the problems that kept it from being read.</summary>
public sealed record CaseReading
{
    private CaseReading(Case? weighed, ImmutableArray<CaseProblem> problems)
    {
        Case = weighed;
        Problems = problems;
    }

    /// <summary>The case; null where it was refused.</summary>
    public Case? Case { get; }

    /// <summary>At least one and at most 50 where the case was refused; empty otherwise.</summary>
    public ImmutableArray<CaseProblem> Problems { get; }

    [MemberNotNullWhen(false, nameof(Case))]
    public bool IsRefused => Case is null;

    public static CaseReading Accept(Case accepted)
    {
        ArgumentNullException.ThrowIfNull(accepted);
        return new CaseReading(accepted, []);
    }

    /// <summary>A refusal.</summary>
    /// <exception cref="ArgumentException">There is no problem.</exception>
    public static CaseReading Refuse(ImmutableArray<CaseProblem> problems)
    {
        if (problems.IsDefaultOrEmpty) throw new ArgumentException("A refusal needs a problem.", nameof(problems));
        return new CaseReading(null, problems);
    }
}

using System.Collections.Immutable;
using Abaxial.Knowledge;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Causes;

/// <summary>What a comparison was asked for, and what came of it.</summary>
/// <param name="Status">The status of the answer.</param>
/// <param name="Found">The comparison; null where there is none.</param>
/// <param name="Hosts">Hosts that all of them live on.</param>
/// <param name="Chosen">The causes that were found.</param>
/// <param name="Says">Why there is no comparison; null where there is one, or nothing was asked for.</param>
internal sealed record CompareAsked(int Status, Comparison? Found, ImmutableArray<string> Hosts, ImmutableArray<Cause> Chosen, string? Says)
{
    private const int Most = 4;

    /// <summary>Reads the causes and the host of a query.</summary>
    public static CompareAsked Of(KnowledgeBase knowledge, IReadOnlyList<string>? ids, string? host)
    {
        string[] asked = [.. (ids ?? []).Where(id => id.Length > 0).Distinct(StringComparer.Ordinal)];
        if (asked.Length > Most) return Refused(StatusCodes.Status400BadRequest, [], "Two to four causes can be compared at once.");
        ImmutableArray<Cause> causes = [.. asked.Select(knowledge.FindCause).OfType<Cause>()];
        if (causes.Length < asked.Length) return Refused(StatusCodes.Status404NotFound, causes, "One of these causes is not in the knowledge.");
        if (!string.IsNullOrEmpty(host) && !knowledge.Document.Hosts.Contains(host, StringComparer.Ordinal)) return Refused(StatusCodes.Status404NotFound, causes, "That host is not in the knowledge.");
        if (causes.Length < 2) return new CompareAsked(StatusCodes.Status200OK, null, [], causes, causes.IsEmpty ? null : "Choose one more cause, or up to three.");
        ImmutableArray<string> hosts = [.. knowledge.Document.Hosts.Where(other => causes.All(cause => cause.Hosts.Contains(other, StringComparer.Ordinal)))];
        string? on = string.IsNullOrEmpty(host) ? hosts.FirstOrDefault() : hosts.FirstOrDefault(other => other == host);
        if (on is null) return new CompareAsked(StatusCodes.Status200OK, null, hosts, causes, hosts.IsEmpty ? "These causes share no host, so that no plant could show one or the other." : "Not all of these causes live on that host.");
        return new CompareAsked(StatusCodes.Status200OK, Comparison.Of(new HostTable(knowledge, on), causes), hosts, causes, null);
    }

    private static CompareAsked Refused(int status, ImmutableArray<Cause> causes, string says) => new(status, null, [], causes, says);
}

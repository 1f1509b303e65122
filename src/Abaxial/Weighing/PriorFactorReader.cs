using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>Reads the factors on the prior of a case file.</summary>
internal static class PriorFactorReader
{
    // Factors that multiply to a bound in decimal digits may pass it by their last bits in binary ones.
    private const double Rounding = 1e-9;

    private static readonly ImmutableArray<string> Known = ["cause", "factor", "reason"];

    public static ImmutableArray<PriorFactor> Read(CaseMembers parent, KnowledgeBase knowledge, string? host)
    {
        if (parent.List("priorFactors") is not { } list) return [];
        var each = Range(knowledge.Document.PriorFactors.Each);
        string[] causes = [.. knowledge.Causes.Where(cause => host is null || cause.Hosts.Contains(host, StringComparer.Ordinal)).Select(cause => cause.Id)];
        var factors = ImmutableArray.CreateBuilder<PriorFactor>();
        var reasons = new HashSet<(Cause, string)>();
        var products = new Dictionary<Cause, (double Product, string At)>();
        string at = parent.Below("priorFactors");
        foreach (var item in list.EnumerateArray())
        {
            string place = CaseProblems.Below(at, factors.Count);
            var factor = ReadOne(item, place, knowledge, causes, each, parent.Problems);
            factors.Add(factor!);
            if (factor is null) continue;
            if (!reasons.Add((factor.Cause, factor.Reason))) parent.Problems.Add($"{place}/reason", factor.Reason, $"each reason once for {factor.Cause}");
            double before = products.TryGetValue(factor.Cause, out var product) ? product.Product : 1;
            products[factor.Cause] = (before * factor.Factor, $"{place}/factor");
        }

        CheckProducts(products, Range(knowledge.Document.PriorFactors.Product), parent.Problems);
        return factors.ToImmutable();
    }

    private static PriorFactor? ReadOne(JsonElement item, string at, KnowledgeBase knowledge, string[] causes, CaseRange each, CaseProblems problems)
    {
        if (CaseMembers.Of(item, at, Known, problems) is not { } members) return null;
        string? cause = members.Word("cause", causes, isRequired: true);
        double? factor = members.Number("factor", each, isRequired: true);
        string? reason = members.Text("reason", isRequired: true);
        return cause is null || factor is null || reason is null ? null : new PriorFactor(knowledge.FindCause(cause)!, factor.Value, reason);
    }

    private static void CheckProducts(Dictionary<Cause, (double Product, string At)> products, CaseRange range, CaseProblems problems)
    {
        var forgiving = new CaseRange(range.From * (1 - Rounding), range.To * (1 + Rounding));
        foreach (var (cause, (product, at)) in products)
        {
            if (forgiving.Holds(product)) continue;
            problems.Add(at, string.Create(CultureInfo.InvariantCulture, $"{product} as the product for {cause}"), (range with { What = "a product" }).ToString());
        }
    }

    private static CaseRange Range(RangeDocument range) => new(range.From, range.To);
}

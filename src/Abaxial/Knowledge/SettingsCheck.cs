using System.Collections.Immutable;

namespace Abaxial.Knowledge;

/// <summary>Checks that the settings of a document name only what exists, with numbers in range.</summary>
internal sealed class SettingsCheck(KnowledgeDocument document, IReadOnlyDictionary<string, Character> characters, ImmutableArray<Cause> causes, List<KnowledgeProblem> problems)
{
    private readonly HashSet<string> causeIds = [.. causes.Select(cause => cause.Id)];

    public void Run()
    {
        Need(causeIds.Contains(document.Subject), "subject", $"There is no cause '{document.Subject}'.");
        foreach (string word in new[] { "always", "usually", "often", "sometimes", "rarely", "never" }) Need(document.Words.GetValueOrDefault(word) is > 0 and < 1, "words", $"'{word}' has no chance over 0 and under 1.");
        foreach (string kind in new[] { "publication", "common-practice", "judgement" }) Need(document.Strengths.GetValueOrDefault(kind) >= 1, "strengths", $"'{kind}' has no strength of one case or more.");
        Need(document.WeightSpread is >= 0 and <= 3, "weight-spread", "It is not between 0 and 3.");
        Need(document.NotListed is > 0 and < 1, "not-listed", "The chance is not over 0 and under 1.");
        foreach (var (stage, organs) in document.NotYet)
        {
            Need(document.Stages.Contains(stage), "not-yet", $"'{stage}' is no stage.");
            foreach (string organ in organs) NeedState("organs-affected", organ, $"not-yet/{stage}");
        }

        CheckPurposes();
        CheckPairs();
        CheckReading();
        CheckRules();
    }

    private void Need(bool holds, string at, string found)
    {
        if (!holds) problems.Add(new KnowledgeProblem(at, found));
    }

    private void NeedCharacter(string id, string at) => Need(characters.ContainsKey(id), at, $"There is no character '{id}'.");

    private void NeedState(string id, string state, string at)
    {
        NeedCharacter(id, at);
        if (characters.TryGetValue(id, out var character)) Need(character.StateIndex(state) >= 0, at, $"'{state}' is no state of {id}.");
    }

    private void CheckPurposes()
    {
        foreach (string purpose in document.Purposes) Need(document.Losses.ContainsKey(purpose), "losses", $"No losses for '{purpose}'.");
        foreach (string purpose in document.PurposeBySystem.Values.Append(document.PurposeOtherwise)) Need(document.Purposes.Contains(purpose), "purpose-by-system", $"'{purpose}' is no purpose.");
        foreach (var (purpose, loss) in document.Losses)
        {
            double[] all = [loss.Act.LateBlight, loss.Act.Other, loss.Advise.LateBlight, loss.Advise.Right, loss.Advise.Other, loss.SendOn.LateBlight, loss.SendOn.Other];
            Need(all.All(value => value >= 0 && double.IsFinite(value)), $"losses/{purpose}", "A loss is negative or not finite.");
        }
    }

    private void CheckPairs()
    {
        Need(document.Pairs.Otherwise > 0, "pairs", "The factor is not over 0.");
        foreach (var (place, pair) in document.Pairs.ByKind.Index()) Need(pair.Kinds.Length == 2 && pair.Factor > 0, $"pairs/by-kind/{place}", "A pair needs two kinds and a factor over 0.");
        foreach (var (place, pair) in document.Pairs.ByCause.Index())
        {
            Need(pair.Causes.Length == 2 && pair.Factor > 0, $"pairs/by-cause/{place}", "A pair needs two causes and a factor over 0.");
            foreach (string id in pair.Causes) Need(causeIds.Contains(id), $"pairs/by-cause/{place}", $"There is no cause '{id}'.");
        }
    }

    private void CheckReading()
    {
        var reading = document.Reading;
        foreach (string way in Vocabulary.Ways) Need(reading.Ways.GetValueOrDefault(way) is { Error: > 0 and < 1, Miss: > 0 and < 1, False: > 0 and < 1 }, "reading/ways", $"'{way}' needs error, miss and false, each over 0 and under 1.");
        foreach (string observer in Vocabulary.Observers) Need(reading.Observers.GetValueOrDefault(observer) > 0, "reading/observers", $"'{observer}' has no factor over 0.");
        Need(reading.Most is { Error: > 0 and < 1, Miss: > 0 and < 1, False: > 0 and < 1 }, "reading/most", "Error, miss and false are needed, each over 0 and under 1.");
        foreach (var (id, ways) in reading.Characters)
        {
            NeedCharacter(id, "reading/characters");
            foreach (string way in ways.Keys) Need(Vocabulary.TryWay(way, out _), $"reading/characters/{id}", $"'{way}' is no way to look.");
        }

        Need(reading.Shows.ContainsKey("otherwise"), "reading/shows", "'otherwise' is missing.");
        foreach (string id in reading.Slower.Keys) NeedCharacter(id, "reading/slower");
    }

    private void CheckRules()
    {
        foreach (string id in document.PriorFactors.Context) NeedCharacter(id, "prior-factors/context");
        foreach (var (id, state) in document.Proof.PositiveTests) NeedState(id, state, "proof/positive-tests");
        NeedState("spores-seen", document.Proof.Sporangia.Spores, "proof/sporangia");
        NeedState("sporangiophore", document.Proof.Sporangia.Sporangiophore, "proof/sporangia");
        Need(document.Proof.Sporangia.MeanLengthUm is [> 0, > 0], "proof/sporangia", "mean-length-um needs two numbers over 0.");
        foreach (var (organ, rule) in document.Showing.Organs)
        {
            NeedState("organs-affected", organ, "showing/organs");
            NeedState(rule.Growth, document.Showing.State, $"showing/organs/{organ}");
        }

        foreach (var (id, state) in document.Showing.Test) NeedState(id, state, "showing/test");
        foreach (string state in document.Showing.Never) NeedState("sample-condition", state, "showing/never");
        foreach (var (id, states) in document.Showing.Stale)
        {
            foreach (string state in states) NeedState(id, state, "showing/stale");
        }

        foreach (var (organ, tests) in document.Showing.ProvenOtherwise)
        {
            NeedState("organs-affected", organ, "showing/proven-otherwise");
            foreach (var (id, states) in tests)
            {
                foreach (string state in states) NeedState(id, state, $"showing/proven-otherwise/{organ}");
            }
        }

        foreach (string id in document.Regulated.HeldBack) NeedCharacter(id, "regulated/held-back");
        var standing = document.Standing;
        Need(standing.RuledOut.Probability <= standing.Unlikely.Probability && standing.Unlikely.Probability < standing.Likely.Probability, "standing", "The thresholds are not in order.");
    }
}

using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>What the bench and the showing looks prove, by the rules in the knowledge.</summary>
internal sealed class Proof
{
    private readonly Posterior posterior;
    private readonly ProofDocument proof;
    private readonly ShowingDocument showing;
    private readonly Look[] looks;

    public Proof(Posterior posterior)
    {
        this.posterior = posterior;
        var document = posterior.Hypotheses.Table.Knowledge.Document;
        proof = document.Proof;
        showing = document.Showing;
        looks = [.. posterior.Readings.Counted.Except(posterior.Readings.SetAside).Select(look => look.Look)];
    }

    /// <summary>A positive test, or sporangia of a leaf that were measured on their stalk, read by somebody who may.</summary>
    public bool IsProven => ByTest || BySporangia;

    /// <summary>Something at the bench says otherwise.</summary>
    public bool IsContradicted
    {
        get
        {
            var no = proof.Contradictions;
            if (Answers("pcr-p-infestans", no.Pcr) || Answers("culture", no.Culture) || Answers("sporangium-papilla", no.SporangiumPapilla)) return true;
            double[] stalks = [.. looks.Where(look => look.Character.Id == "sporangium-stalk-length").SelectMany(look => look.Values)];
            return stalks.Length > 0 && stalks.Average() > no.StalkOverUm;
        }
    }

    /// <summary>On every affected organ that late blight attacks a look would have shown it, and did not.</summary>
    public bool WouldHaveShown
    {
        get
        {
            if (looks.Any(look => look.Character.Id == "sample-condition" && Names(look, showing.Never))) return false;
            if (looks.Any(IsSignSeen)) return false;
            var organs = posterior.Blocks.Where(block => block.IsAffected && showing.Organs.ContainsKey(block.Organ)).Select(block => block.Organ).ToArray();
            return organs.Length > 0 && organs.All(IsShown);
        }
    }

    private bool ByTest => looks.Any(look => MayProve(look) && proof.PositiveTests.TryGetValue(look.Character.Id, out string? state) && Names(look, state));

    private bool BySporangia
    {
        get
        {
            var rule = proof.Sporangia;
            if (!posterior.Blocks.Exists(block => block.Organ == rule.Organ && block.IsAffected)) return false;
            double[] lengths = [.. looks.Where(look => MayProve(look) && look.Character.Id == "spore-length" && look.Facet == rule.Spores).SelectMany(look => look.Values)];
            if (lengths.Length < rule.Count || lengths.Average() < rule.MeanLengthUm[0] || lengths.Average() > rule.MeanLengthUm[1]) return false;
            return looks.Any(look => MayProve(look) && look.Character.Id == "sporangiophore" && Names(look, rule.Sporangiophore));
        }
    }

    private bool MayProve(Look look) => proof.Readers.Contains(look.By.Word(), StringComparer.Ordinal);

    /// <summary>White down wherever it was seen, also on the upper side of a leaf, or the sporangia: late blight is not ruled out over it.</summary>
    private bool IsSignSeen(Look look) =>
        look.By >= Observer.Scout
        && look.How is not (Way.Photo or Way.Asked)
        && ((look.Character.IsSign && Names(look, showing.State)) || (look.Character.Id == "spores-seen" && Names(look, proof.Sporangia.Spores)));

    private bool IsShown(string organ)
    {
        if (looks.Any(look => MayProve(look) && showing.Test.TryGetValue(look.Character.Id, out string? state) && Names(look, state))) return true;
        if (showing.ProvenOtherwise.TryGetValue(organ, out var tests) && looks.Any(look => MayProve(look) && tests.TryGetValue(look.Character.Id, out var states) && Names(look, states))) return true;
        var rule = showing.Organs[organ];
        return looks.Any(look => look.Character.Id == rule.Growth && IsNegative(look) && (IsWetMorning(look, organ) || IsLongChamber(look, rule)));
    }

    /// <summary>No white growth, and nothing that grows over dead tissue in a chamber and would have hidden it.</summary>
    private bool IsNegative(Look look)
    {
        if (Names(look, showing.State)) return false;
        var overgrowth = posterior.Hypotheses.Table.Knowledge.Document.Reading.Overgrowth;
        return look.Surface != Surface.MoistChamber || !look.States.Any(state => overgrowth.ContainsKey(look.Character.States[state]));
    }

    private bool IsWetMorning(Look look, string organ)
    {
        var rule = showing.WetMorning;
        return organ == rule.Organ && look.Surface == Surface.WetMorning && look.How.Word() == rule.How && rule.Readers.Contains(look.By.Word(), StringComparer.Ordinal);
    }

    private bool IsLongChamber(Look look, ShowingOrganDocument rule)
    {
        bool isStale = looks.Any(other => showing.Stale.TryGetValue(other.Character.Id, out var states) && Names(other, states));
        double needed = isStale ? rule.StaleHours : rule.ChamberHours;
        return look.Surface == Surface.MoistChamber && look.How is not (Way.Photo or Way.Asked) && look.Hours >= needed && MayProve(look);
    }

    private bool Answers(string character, string[] states) => looks.Any(look => look.Character.Id == character && Names(look, states));

    private static bool Names(Look look, params ReadOnlySpan<string> words)
    {
        foreach (int state in look.States)
        {
            if (words.Contains(look.Character.States[state])) return true;
        }

        return false;
    }
}

namespace Abaxial.Panel.Drawings;

/// <summary>The states that have no drawing, each with the reason. What is not here has one.</summary>
public static class Undrawn
{
    private const string Told = "It is told, not seen on a plant.";
    private const string Felt = "It is felt with the fingers.";
    private const string Plate = "On the plate it is told from others by what the microscope shows in it.";

    private static readonly Dictionary<string, string> Characters = new(StringComparer.Ordinal)
    {
        ["onset"] = Told,
        ["progress"] = "It is two looks with days between them.",
        ["fungicide-since"] = Told,
        ["cultivar-resistance"] = Told,
        ["recent-weather"] = Told,
        ["recent-event"] = Told,
        ["walnut-nearby"] = Told,
        ["plant-source"] = Told,
        ["late-blight-nearby"] = Told,
        ["other-plants-affected"] = "It depends on which plants stand there.",
        ["leaf-texture"] = Felt,
        ["stem-feel"] = Felt,
        ["fruit-lesion-feel"] = Felt,
        ["tuber-feel"] = Felt,
        ["smell"] = "It is smelled.",
    };

    private static readonly Dictionary<(string Character, string State), string> States = new()
    {
        [("sample-condition", "heated-or-frozen")] = "Heat and frost leave different leaves; one picture would show neither.",
        [("culture", "p-infestans")] = Plate,
        [("culture", "other-phytophthora")] = Plate,
        [("culture", "pythium")] = Plate,
        [("culture", "alternaria")] = Plate,
        [("culture", "botrytis")] = Plate,
        [("culture", "other-fungus")] = Plate,
    };

    /// <summary>Why a state has no drawing, or null for a state that has one.</summary>
    public static string? Reason(string characterId, string stateId) =>
        Characters.GetValueOrDefault(characterId) ?? States.GetValueOrDefault((characterId, stateId));

    /// <summary>Characters none of whose states is drawn, with the reason.</summary>
    public static IReadOnlyDictionary<string, string> WholeCharacters => Characters;

    /// <summary>Single states that are not drawn though others of their character are, with the reason.</summary>
    public static IReadOnlyDictionary<(string Character, string State), string> SingleStates => States;
}

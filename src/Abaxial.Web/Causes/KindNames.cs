namespace Abaxial.Web.Causes;

/// <summary>Kinds of causes as headings.</summary>
internal static class KindNames
{
    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal)
    {
        ["oomycete"] = "Oomycetes",
        ["fungus"] = "Fungi",
        ["bacterium"] = "Bacteria",
        ["virus"] = "Viruses",
        ["insect"] = "Insects",
        ["mite"] = "Mites",
        ["nematode"] = "Nematodes",
        ["weather"] = "Weather",
        ["chemical"] = "Chemicals",
        ["nutrition"] = "Nutrition",
        ["physiology"] = "Disorders of the plant's own",
        ["plant"] = "Other plants",
    };

    /// <summary>The heading of a kind; its own word where none is known.</summary>
    public static string Of(string kind) => Names.GetValueOrDefault(kind, kind);
}

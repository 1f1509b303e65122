using Abaxial.Files.Knowledge;
using Abaxial.Knowledge;
using Abaxial.Tests.Weighing;

namespace Abaxial.Tests.Knowledge;

/// <summary>What the compiled knowledge of tomato and potato must hold.</summary>
public sealed class BuiltInTests
{
    private const string OfBoth = """
        late-blight, early-blight, brown-leaf-spot, gray-mold, white-mold, verticillium-wilt, fusarium-wilt, bacterial-wilt, powdery-mildew, spotted-wilt, bacterial-soft-rot,
        chemical-burn, growth-regulator-drift, drought-heat-scorch, frost-injury, hail-injury, ozone-injury, nutrient-deficiency, psyllid-yellows, spider-mite-injury,
        lightning-injury, walnut-toxicity, natural-senescence, southern-blight, rhizoctonia, root-knot, insect-injury, mosaic-viruses
        """;

    private const string OfTomato = """
        septoria-leaf-spot, leaf-mold, bacterial-canker, bacterial-spot, bacterial-speck, target-spot, gray-leaf-spot, anthracnose, buckeye-rot, phytophthora-capsici-blight,
        pith-necrosis, tobamovirus, blossom-end-rot, sunscald, fruit-cracking, edema
        """;

    private const string OfPotato = """
        blackleg, black-dot, pink-rot, pythium-leak, fusarium-dry-rot, powdery-scab, common-scab, silver-scurf, ring-rot, potato-virus-y, tobacco-rattle, mop-top, hopperburn
        """;

    private const string Characters = """
        organs-affected, field-pattern, leaf-position, onset, progress, fungicide-since, cultivar-resistance, sample-condition, wilting, recent-weather,
        recent-event, walnut-nearby, plant-source, watering, late-blight-nearby, other-plants-affected, leaf-lesion-size, leaf-lesion-shape, leaf-lesion-color,
        leaf-lesion-border, concentric-rings, pycnidia, shot-holes, leaf-yellowing, leaf-distortion, leaf-texture, leaf-upper-growth, insects-or-mites,
        leaf-underside-growth, leaf-underside-growth-place, dead-center, stem-lesion, stem-feel, stem-lesion-place, stem-growth, stem-inside, smell, roots,
        fruit-lesion-place, fruit-lesion-color, fruit-lesion-feel, fruit-lesion-size, fruit-marks, fruit-growth, fruit-height, fruit-ripeness, fruit-flesh,
        tuber-surface, tuber-flesh, tuber-rot-edge, tuber-rot-start, tuber-growth, tuber-feel, tuber-rot-depth, spores-seen, sporangiophore, sporangium-sheds,
        sporangium-papilla, sporangium-stalk-length, hyphae, spore-length, spore-width, bacterial-streaming, phytophthora-strip, pcr-p-infestans, spotted-wilt-strip,
        clavibacter-strip, soft-rot-slice, potato-virus-y-strip, ring-rot-test, culture, tobamovirus-strip, ralstonia-strip
        """;

    // Late blight and the twelve that are nearest to it: blackleg stands for soft rot on potato stems.
    private static readonly string[] Nearest =
    [
        "late-blight", "early-blight", "brown-leaf-spot", "septoria-leaf-spot", "gray-mold", "leaf-mold", "bacterial-canker", "bacterial-spot", "bacterial-soft-rot", "blackleg",
        "spotted-wilt", "blossom-end-rot", "chemical-burn", "drought-heat-scorch",
    ];

    private static readonly KnowledgeBase Knowledge = CaseText.Knowledge;

    [Fact]
    public void Every_cause_of_the_interface_is_there_for_its_hosts()
    {
        string[] both = Words(OfBoth), tomato = [.. both, .. Words(OfTomato)], potato = [.. both, .. Words(OfPotato)];
        Assert.Equal(57, tomato.Union(potato).Count());
        Assert.Empty(tomato.Except(CausesOf("tomato")));
        Assert.Empty(potato.Except(CausesOf("potato")));
    }

    [Fact]
    public void Every_character_of_the_interface_is_there()
    {
        string[] fixedOnes = Words(Characters);
        Assert.Equal(73, fixedOnes.Distinct().Count());
        Assert.Empty(fixedOnes.Except(Knowledge.Characters.Select(character => character.Id)));
    }

    [Fact]
    public void Six_rows_in_ten_of_late_blight_and_its_nearest_name_a_publication()
    {
        var rows = Nearest.SelectMany(id => Knowledge.FindCause(id)!.Rows).ToArray();
        double share = rows.Count(row => row.SourceKind == SourceKind.Publication) / (double)rows.Length;
        TestContext.Current.SendDiagnosticMessage("{0:P1} of {1} rows name a publication.", share, rows.Length);
        Assert.True(share >= 0.6, $"{share:P1} of {rows.Length} rows.");
    }

    [Fact]
    public void Every_publication_that_a_row_names_says_who_when_what_and_where() => Assert.All(
        Knowledge.Causes.SelectMany(cause => cause.Rows).SelectMany(row => row.Sources).Distinct(),
        source => Assert.True(source.Authors.Length > 2 && source.Year.Length >= 4 && source.Title.Length > 5 && source.Publisher.Length > 2, source.Id));

    [Fact]
    public void What_was_compiled_into_the_library_is_what_the_folder_holds() =>
        Assert.Equal(KnowledgeFolder.Compile(Path.Combine(AppContext.BaseDirectory, "knowledge")).Compiled, BuiltIn.SolanumBytes());

    [Fact]
    public void Every_name_is_known_in_English()
    {
        Assert.All(Knowledge.Characters, character => Assert.NotEqual(character.Id, Knowledge.Texts.Character(character)));
        Assert.All(Knowledge.Characters, character => Assert.All(character.States, (_, state) => Assert.NotEmpty(Knowledge.Texts.State(character, state))));
    }

    private static IEnumerable<string> CausesOf(string host) => Knowledge.Causes.Where(cause => cause.Hosts.Contains(host)).Select(cause => cause.Id);

    private static string[] Words(string list) => list.Split([',', ' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);
}

using System.Collections.Immutable;

namespace Abaxial.Knowledge;

/// <summary>Turns a compiled document into a <see cref="KnowledgeBase"/>: every id resolved, every chance checked.</summary>
internal sealed class KnowledgeBuilder
{
    private static readonly ImmutableHashSet<string> Kinds = ImmutableHashSet.Create(
        StringComparer.Ordinal,
        ["oomycete", "fungus", "bacterium", "virus", "insect", "mite", "nematode", "weather", "chemical", "nutrition", "physiology", "plant"]);

    private readonly KnowledgeDocument document;
    private readonly List<KnowledgeProblem> problems = [];
    private readonly Dictionary<string, Character> characters = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Source> sources = new(StringComparer.Ordinal);

    private KnowledgeBuilder(KnowledgeDocument document) => this.document = document;

    public static KnowledgeReading Build(KnowledgeDocument document, string hash)
    {
        var builder = new KnowledgeBuilder(document);
        var characters = builder.ReadCharacters();
        var sources = builder.ReadSources();
        var causes = builder.ReadCauses();
        if (builder.problems.Count > 0) return new KnowledgeReading(null, [.. builder.problems]);
        new SettingsCheck(document, builder.characters, causes, builder.problems).Run();
        builder.problems.AddRange(TextsCheck.Run(document));
        if (builder.problems.Count > 0) return new KnowledgeReading(null, [.. builder.problems]);

        var knowledge = new KnowledgeBase(document, hash, characters, causes, sources);
        builder.problems.AddRange(KnowledgeLints.Run(knowledge));
        return builder.problems.Count > 0 ? new KnowledgeReading(null, [.. builder.problems]) : new KnowledgeReading(knowledge, []);
    }

    private void Problem(string at, string found) => problems.Add(new KnowledgeProblem(at, found));

    private ImmutableArray<Character> ReadCharacters()
    {
        var list = ImmutableArray.CreateBuilder<Character>();
        foreach (var entry in document.Characters)
        {
            string at = $"characters/{entry.Id}";
            if (!document.Groups.TryGetValue(entry.Group, out double weight) || weight is <= 0 or > 1) Problem(at, $"Group '{entry.Group}' has no weight over 0 and at most 1.");
            foreach (string word in entry.How.Where(word => !Vocabulary.TryWay(word, out _))) Problem(at, $"'{word}' is no way to look.");
            foreach (string word in entry.Surface.Where(word => !Vocabulary.TrySurface(word, out _))) Problem(at, $"'{word}' is no surface.");
            if (entry.Empty is not null && !entry.States.Contains(entry.Empty, StringComparer.Ordinal)) Problem(at, $"The empty state '{entry.Empty}' is not a state.");
            if (entry.Measure is null && entry.States.Length < 2) Problem(at, "Fewer than two states.");
            var character = new Character(entry, list.Count, weight);
            if (!characters.TryAdd(entry.Id, character)) Problem(at, "The id stands twice.");
            list.Add(character);
            CheckBackground(entry, character, at);
        }

        foreach (var entry in document.Characters) Link(entry);
        return list.ToImmutable();
    }

    private void CheckBackground(CharacterDocument entry, Character character, string at)
    {
        if (character.IsMeasured)
        {
            if (!entry.Background.ContainsKey("mean") || !(entry.Background.GetValueOrDefault("sd") > 0)) Problem(at, "A measured character's background needs a mean and an sd over 0.");
            return;
        }

        CheckChances(character, entry.Background, null, $"{at}/background");
        for (int state = 0; state < character.States.Length; state++)
        {
            bool implied = character.Voids[state] || (character.IsMany && state == character.EmptyState);
            if (!implied && !entry.Background.ContainsKey(character.States[state])) Problem($"{at}/background", $"State '{character.States[state]}' has no chance: nothing can reach it.");
        }
    }

    private void Link(CharacterDocument entry)
    {
        var character = characters[entry.Id];
        string at = $"characters/{entry.Id}";
        if (entry.OfCharacter is not null)
        {
            if (characters.TryGetValue(entry.OfCharacter, out var kinds)) character.OfCharacter = kinds;
            else Problem(at, $"There is no character '{entry.OfCharacter}'.");
        }

        if (entry.Organ is not null && (!characters.TryGetValue("organs-affected", out var organs) || organs.StateIndex(entry.Organ) < 0)) Problem(at, $"'{entry.Organ}' is no organ.");
        foreach (var (parentId, states) in entry.When)
        {
            if (!characters.TryGetValue(parentId, out var parent))
            {
                Problem($"{at}/when", $"There is no character '{parentId}'.");
                continue;
            }

            character.WhenParent = parent;
            character.WhenStates = [.. states.Select(parent.StateIndex)];
            if (character.WhenStates.Contains(-1)) Problem(at, $"A state under `when` is no state of '{parentId}'.");
        }
    }

    private ImmutableArray<Source> ReadSources()
    {
        foreach (var entry in document.Sources)
        {
            var source = new Source(entry.Id, entry.Authors, entry.Year, entry.Title, entry.Publisher, entry.Where, entry.Seen);
            if (!sources.TryAdd(entry.Id, source)) Problem($"sources/{entry.Id}", "The id stands twice.");
            if (new[] { entry.Authors, entry.Year, entry.Title, entry.Publisher }.Any(string.IsNullOrWhiteSpace)) Problem($"sources/{entry.Id}", "A publication needs authors, year, title and publisher.");
        }

        return [.. sources.Values.OrderBy(source => source.Id, StringComparer.Ordinal)];
    }

    private ImmutableArray<Cause> ReadCauses()
    {
        var list = ImmutableArray.CreateBuilder<Cause>();
        foreach (var entry in document.Causes.OrderBy(entry => entry.Id, StringComparer.Ordinal))
        {
            string at = $"causes/{entry.Id}";
            var cause = new Cause(entry, list.Count);
            if (list.Any(other => other.Id == entry.Id)) Problem(at, "The id stands twice.");
            list.Add(cause);
            if (!Kinds.Contains(entry.Kind)) Problem($"{at}/kind", $"'{entry.Kind}' is no kind of cause; accepted: {string.Join(", ", Kinds.Order(StringComparer.Ordinal))}.");
            if (!entry.Name.ContainsKey("en")) Problem(at, "No English name.");
            if (!entry.Advice.ContainsKey("en")) Problem(at, "No English advice.");
            foreach (string host in entry.Hosts.Where(host => !document.Hosts.Contains(host, StringComparer.Ordinal))) Problem($"{at}/hosts", $"'{host}' is no host.");
            CheckSeen(entry, at);
            cause.Rows = [.. entry.Rows.Select(pair => ReadRow(cause, pair.Key, pair.Value)).OfType<Row>()];
        }

        return list.ToImmutable();
    }

    private void CheckSeen(CauseDocument entry, string at)
    {
        foreach (string host in entry.Hosts)
        {
            if (!(entry.Seen.Weight.GetValueOrDefault(host) > 0)) Problem($"{at}/seen/weight", $"No weight over 0 for {host}: nothing can reach the cause.");
        }

        foreach (string system in entry.Seen.Systems.Keys.Except(document.Systems, StringComparer.Ordinal)) Problem($"{at}/seen/systems", $"'{system}' is no system.");
        foreach (string stage in entry.Seen.Stages.Keys.Except(document.Stages, StringComparer.Ordinal)) Problem($"{at}/seen/stages", $"'{stage}' is no stage.");
        if (entry.Seen.Months.Length is not (0 or 12)) Problem($"{at}/seen/months", $"{entry.Seen.Months.Length} months; accepted: none or 12.");
        if (entry.Seen.Systems.Values.Concat(entry.Seen.Stages.Values).Concat(entry.Seen.Months).Any(factor => !(factor > 0) || factor > 100)) Problem($"{at}/seen", "A factor is not over 0 and at most 100.");
        ReadSourceList(entry.Seen.Source, $"{at}/seen");
    }

    private Row? ReadRow(Cause cause, string key, RowDocument row)
    {
        string at = $"causes/{cause.Id}/rows/{key}";
        (string rest, string? host) = Split(key, '@');
        (string id, string? facet) = Split(rest, '/');
        if (!characters.TryGetValue(id, out var character))
        {
            Problem(at, $"There is no character '{id}'.");
            return null;
        }

        if (host is not null && !cause.Hosts.Contains(host, StringComparer.Ordinal)) Problem(at, $"'{host}' is no host of this cause.");
        if (host is null && !cause.Hosts.Any(character.AppliesTo)) Problem(at, "The character is for no host of this cause.");
        if (!FacetFits(character, facet)) Problem(at, $"'{facet}' does not say what was measured or where it came from.");
        if (string.IsNullOrWhiteSpace(row.Say.GetValueOrDefault("en"))) Problem(at, "No English sentence.");
        var (kind, named) = ReadSourceList(row.Source, at);
        double strength = row.Strength ?? document.Strengths[kind switch { SourceKind.Publication => "publication", SourceKind.CommonPractice => "common-practice", _ => "judgement" }];
        if (!(strength >= 1 && strength <= 10_000)) Problem(at, $"Strength {strength} is not between 1 and 10,000 cases.");

        MeasuredRange? range = null;
        ImmutableArray<double> chances = [];
        if (character.IsMeasured) range = ReadRange(row, at);
        else if (row.Is is null || row.Mean is not null) Problem(at, "A row needs `is` and nothing measured.");
        else
        {
            CheckChances(character, row.Is, host, $"{at}/is");
            chances = [.. character.States.Select(state => row.Is.TryGetValue(state, out double chance) ? chance : document.Words["never"])];
        }

        return new Row(character, facet, host, chances, range, strength, kind, named, row.Say.ToImmutableDictionary(StringComparer.Ordinal));
    }

    private static bool FacetFits(Character character, string? facet)
    {
        if (character.IsMeasured)
        {
            return facet is null ? character.OfOnly is not null : character.OfOnly is null && character.OfCharacter is { } kinds && kinds.StateIndex(facet) >= 0 && kinds.StateIndex(facet) != kinds.EmptyState;
        }

        return facet is null || character.Facets.Contains(facet, StringComparer.Ordinal);
    }

    private MeasuredRange? ReadRange(RowDocument row, string at)
    {
        if (row is { Is: null, Mean: > 0, Between: > 0, Within: > 0 }) return new MeasuredRange(row.Mean.Value, row.Between.Value, row.Within.Value);
        Problem(at, "A measured row needs mean, between and within, each over 0, and no `is`.");
        return null;
    }

    private (SourceKind Kind, ImmutableArray<Source> Named) ReadSourceList(string[] list, string at)
    {
        if (list.Length == 0) Problem(at, "No source kind.");
        var named = ImmutableArray.CreateBuilder<Source>();
        bool practice = false;
        foreach (string id in list)
        {
            if (id == "common practice") practice = true;
            else if (id == "judgement") continue;
            else if (sources.TryGetValue(id, out var source)) named.Add(source);
            else Problem(at, $"There is no source '{id}'; accepted: a publication of sources.yaml, common practice, judgement.");
        }

        return (named.Count > 0 ? SourceKind.Publication : practice ? SourceKind.CommonPractice : SourceKind.Judgement, named.ToImmutable());
    }

    private void CheckChances(Character character, Dictionary<string, double> chances, string? host, string at)
    {
        foreach (var (state, chance) in chances)
        {
            int index = character.StateIndex(state);
            string place = $"{at}/{state}";
            if (index < 0) Problem(place, $"'{state}' is no state of {character.Id}; accepted: {string.Join(", ", character.States)}.");
            else if (character.IsMany && index == character.EmptyState) Problem(place, $"'{state}' is never written: its chance is that of all others staying away.");
            else if (character.Voids[index]) Problem(place, $"'{state}' carries no evidence and has no chance.");
            else if (host is not null && !character.HasState(index, host)) Problem(place, $"'{state}' does not occur on {host}.");
            if (!(chance > 0 && chance < 1)) Problem(place, $"The chance {chance} of '{state}' is not over 0 and under 1.");
        }
    }

    private static (string Before, string? After) Split(string key, char mark)
    {
        int at = key.IndexOf(mark, StringComparison.Ordinal);
        return at < 0 ? (key, null) : (key[..at], key[(at + 1)..]);
    }
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Web.Hosting;

/// <summary>What was said for each setting: arguments before variables, variables before the file. Notes what will not do, and where it was said.</summary>
/// <param name="now">The moment of the start.</param>
public sealed class SettingValues(DateTimeOffset now)
{
    private readonly Dictionary<string, (string At, ImmutableArray<string> Values)> said = new(StringComparer.Ordinal);

    internal DateTimeOffset Now { get; } = now;

    internal List<CaseProblem> Problems { get; } = [];

    /// <summary>Whether something was said for a setting.</summary>
    public bool Has(string name) => said.ContainsKey(name);

    /// <summary>Says something for a setting, unless something was said before.</summary>
    /// <param name="name">The setting.</param>
    /// <param name="at">Where it was said, for people.</param>
    /// <param name="values">The values.</param>
    public void Say(string name, string at, params ReadOnlySpan<string> values) => said.TryAdd(name, (at, [.. values]));

    /// <summary>Takes the variables <c>ABAXIAL_…</c>; the parts of a list stand between spaces or commas.</summary>
    public void AddVariables(Func<string, string?> variable)
    {
        ArgumentNullException.ThrowIfNull(variable);
        foreach (var setting in ClinicSettings.All)
        {
            string name = $"ABAXIAL_{setting.Name.Replace('-', '_').ToUpperInvariant()}";
            if (variable(name) is { Length: > 0 } text) Say(setting.Name, name, setting.IsList ? text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries) : [text]);
        }
    }

    /// <summary>Takes a file: one JSON object whose members are settings. What it says that is no setting is a problem.</summary>
    public void AddFile(string file)
    {
        try
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(file), new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            if (document.RootElement.ValueKind == JsonValueKind.Object) foreach (var member in document.RootElement.EnumerateObject()) AddMember(file, member);
            else Problems.Add(new CaseProblem(file, document.RootElement.ValueKind.ToString(), ["a JSON object of settings"]));
        }
        catch (Exception problem) when (problem is JsonException or IOException or UnauthorizedAccessException)
        {
            Problems.Add(new CaseProblem(file, problem.Message.ReplaceLineEndings(" "), ["a JSON object of settings"]));
        }
    }

    internal string? Text(string name) => said.TryGetValue(name, out var given) ? given.Values.LastOrDefault() : null;

    internal bool Flag(string name) => One(name, text => text switch { "true" => (bool?)true, "false" => false, _ => null }, "true", "false") ?? false;

    internal int? Whole(string name, int least, int most) =>
        One(name, text => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= least && number <= most ? (int?)number : null, string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}"));

    internal T? One<T>(string name, Func<string, T?> read, params ReadOnlySpan<string> accepted)
    {
        if (Text(name) is not { } text) return default;
        var value = read(text);
        if (value is null) Refuse(name, text, accepted);
        return value;
    }

    internal ImmutableArray<T> Several<T>(string name, Func<string, T?> read, string accepted)
        where T : class => [.. Values(name, text => read(text), accepted).Select(value => value!)];

    internal ImmutableArray<T> Several<T>(string name, Func<string, T?> read, string accepted)
        where T : struct => [.. Values(name, text => read(text), accepted).Select(value => value!.Value)];

    internal void Refuse(string name, string found, params ReadOnlySpan<string> accepted) =>
        Problems.Add(new CaseProblem(said.TryGetValue(name, out var given) ? given.At : $"--{name}", found, [.. accepted]));

    private List<T> Values<T>(string name, Func<string, T?> read, string accepted)
    {
        var values = new List<T>();
        foreach (string text in said.TryGetValue(name, out var given) ? given.Values : [])
        {
            if (read(text) is { } value) values.Add(value);
            else Refuse(name, text, accepted);
        }

        return values;
    }

    private void AddMember(string file, JsonProperty member)
    {
        string at = $"{file}: {member.Name}";
        if (ClinicSettings.All.FirstOrDefault(setting => setting.Name == member.Name) is not { } setting)
        {
            Problems.Add(new CaseProblem(at, member.Name, [.. ClinicSettings.All.Select(known => known.Name)]));
            return;
        }

        var values = member.Value.ValueKind == JsonValueKind.Array && setting.IsList ? member.Value.EnumerateArray().ToList() : [member.Value];
        if (values.TrueForAll(value => value.ValueKind is JsonValueKind.String or JsonValueKind.Number or JsonValueKind.True or JsonValueKind.False))
        {
            Say(setting.Name, at, [.. values.Select(value => value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText())]);
        }
        else
        {
            Problems.Add(new CaseProblem(at, member.Value.ValueKind.ToString(), [setting.IsList ? "a text, or a list of texts" : "one value"]));
        }
    }
}

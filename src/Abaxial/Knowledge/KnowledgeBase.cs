using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;

namespace Abaxial.Knowledge;

/// <summary>All that is known of the hosts of one compiled knowledge folder. Immutable once read.</summary>
public sealed class KnowledgeBase
{
    private readonly ImmutableDictionary<string, Character> characterById;
    private readonly ImmutableDictionary<string, Cause> causeById;

    internal KnowledgeBase(KnowledgeDocument document, string hash, ImmutableArray<Character> characters, ImmutableArray<Cause> causes, ImmutableArray<Source> sources)
    {
        Document = document;
        Hash = hash;
        Characters = characters;
        Causes = causes;
        Sources = sources;
        Texts = new Texts(document, Causes);
        characterById = characters.ToImmutableDictionary(character => character.Id, StringComparer.Ordinal);
        causeById = causes.ToImmutableDictionary(cause => cause.Id, StringComparer.Ordinal);
        Subject = causeById[document.Subject];
    }

    /// <summary>Name, version and the first eight digits of the content's SHA-256.</summary>
    public string Id => $"{Document.Name} {Document.Version} {Hash[..8]}";

    /// <summary>The SHA-256 of the compiled bytes, in lower-case hexadecimal digits.</summary>
    public string Hash { get; }

    public ImmutableArray<Character> Characters { get; }

    /// <summary>Every cause, in ordinal order of id.</summary>
    public ImmutableArray<Cause> Causes { get; }

    public ImmutableArray<Source> Sources { get; }

    /// <summary>The cause that every sample is asked about: late blight.</summary>
    public Cause Subject { get; }

    /// <summary>Names and sentences for people.</summary>
    public Texts Texts { get; }

    /// <summary>The settings and tables that belong to no single cause.</summary>
    public KnowledgeDocument Document { get; }

    public Character? FindCharacter(string id) => characterById.GetValueOrDefault(id);

    public Cause? FindCause(string id) => causeById.GetValueOrDefault(id);

    /// <summary>Reads compiled knowledge and checks it.</summary>
    /// <param name="utf8">The compiled JSON.</param>
    /// <returns>The knowledge, or what is wrong with it.</returns>
    public static KnowledgeReading Read(ReadOnlySpan<byte> utf8)
    {
        KnowledgeDocument? document;
        try
        {
            document = JsonSerializer.Deserialize(utf8, KnowledgeJson.Default.KnowledgeDocument);
        }
        catch (JsonException problem)
        {
            return new KnowledgeReading(null, [new KnowledgeProblem(problem.Path ?? "", problem.Message)]);
        }

        if (document is null) return new KnowledgeReading(null, [new KnowledgeProblem("", "The document is empty.")]);
        return KnowledgeBuilder.Build(document, Convert.ToHexStringLower(SHA256.HashData(utf8)));
    }
}

/// <summary>Something wrong with the knowledge, and where.</summary>
/// <param name="At">The place, in the form that <see cref="KnowledgeDocument"/> has: <c>causes/late-blight/rows/pycnidia</c>.</param>
/// <param name="Found">What is wrong, in a sentence.</param>
public sealed record KnowledgeProblem(string At, string Found);

/// <summary>The knowledge that was read, or the problems that kept it from being read.</summary>
public sealed record KnowledgeReading(KnowledgeBase? Knowledge, ImmutableArray<KnowledgeProblem> Problems)
{
    /// <summary>The knowledge.</summary>
    /// <exception cref="InvalidDataException">It could not be read.</exception>
    public KnowledgeBase OrThrow() =>
        Knowledge ?? throw new InvalidDataException(string.Join(Environment.NewLine, Problems.Select(problem => $"{problem.At}: {problem.Found}")));
}

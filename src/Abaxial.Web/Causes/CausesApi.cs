using Abaxial.Knowledge;
using Abaxial.Speaking;
using Abaxial.Web.Shell;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Abaxial.Web.Causes;

/// <summary>The knowledge to be read: causes, what they show and where that is from, and what there is to look at.</summary>
internal static class CausesApi
{
    public static Ok<CausesJson> Causes(KnowledgeBase knowledge)
    {
        var speech = new Speech(knowledge);
        return TypedResults.Ok(new CausesJson(knowledge.Id, [.. knowledge.Causes.Select(cause => Line(cause, speech))]));
    }

    public static Results<Ok<CauseJson>, ProblemHttpResult> Cause(string id, KnowledgeBase knowledge)
    {
        if (knowledge.FindCause(id) is not { } cause) return Problem.NotFound();
        var speech = new Speech(knowledge);
        return TypedResults.Ok(new CauseJson
        {
            Knowledge = knowledge.Id,
            Cause = Line(cause, speech),
            OlderNames = cause.OlderNames,
            Eppo = cause.Eppo,
            Advice = speech.Advice(cause),
            Rows = [.. cause.Rows.Select(row => Of(row, speech))],
        });
    }

    public static Ok<CharactersJson> Characters(KnowledgeBase knowledge)
    {
        var speech = new Speech(knowledge);
        return TypedResults.Ok(new CharactersJson(knowledge.Id, [.. knowledge.Characters.Select(character => Of(character, speech))]));
    }

    private static CauseLine Line(Cause cause, Speech speech) => new(cause.Id, speech.Name(cause), cause.Scientific, cause.Kind, cause.Hosts, cause.Regulated);

    private static RowJson Of(Row row, Speech speech) => new(
        row.Character.Id,
        row.Facet,
        row.Host,
        row.Chances.Select((chance, state) => (State: row.Character.States[state], Chance: chance)).ToDictionary(pair => pair.State, pair => pair.Chance),
        row.Range,
        row.Strength,
        speech.Sentence(row),
        RowWords.Source(row, speech));

    private static CharacterJson Of(Character character, Speech speech) => new(
        character.Id,
        speech.Name(character),
        [.. character.States.Select((state, index) => new StateJson(state, speech.Name(character, index), index == character.EmptyState))],
        character.IsMany,
        character.IsMeasured,
        character.Organ,
        character.Hosts,
        [.. character.Ways.Select(way => way.Word())],
        [.. character.Surfaces.Select(surface => surface.Word())],
        character.Facets,
        character.Minutes,
        character.WaitHours);
}

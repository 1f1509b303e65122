using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>
/// What can be searched in a sample, less the texts about people, which lie outside the entries: numbers, what was taken in, the causes spoken of, what was seen, notes, reasons, the
/// ids of people; causes, hosts and states by the names that the knowledge has for them in every language.
/// </summary>
public static class SampleWords
{
    /// <summary>The texts to be found by.</summary>
    /// <param name="view">The sample.</param>
    /// <param name="answers">The answer to each of its plants or lots; see <see cref="SampleSummary.AnswersOf"/>.</param>
    /// <param name="knowledge">The knowledge that both were made with.</param>
    public static IEnumerable<string> Of(SampleView view, ImmutableArray<Answer?> answers, KnowledgeBase knowledge)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(knowledge);
        var words = new Words(knowledge);
        foreach (var item in view.Timeline) words.Add(item);
        foreach (var look in view.Cases.SelectMany(one => one.Reading.Case?.Looks ?? [])) words.Add(look);
        var refused = view.Cases.Where(one => one.Reading.IsRefused).Select(one => one.Number).ToList();
        foreach (var look in view.Timeline.Select(item => item.Holds).OfType<LookMade>().Where(look => refused.Contains(look.Case))) words.AddUnread(look);
        foreach (var answer in answers.OfType<Answer>()) words.Add(answer);
        return words.Texts.OfType<string>().Distinct(StringComparer.Ordinal);
    }

    private sealed class Words(KnowledgeBase knowledge)
    {
        public List<string?> Texts { get; } = [];

        public void Add(TimelineItem item)
        {
            Texts.Add(item.Entry.Author);
            if (item.Said is Correction correction) Texts.Add(correction.Why);
            switch (item.Holds)
            {
                case TakenIn taken:
                    Add("host", taken.Host);
                    Add("system", taken.System);
                    Add("stage", taken.Stage);
                    Add("purpose", taken.Purpose);
                    Texts.AddRange([taken.Cultivar, taken.Area?.Name, taken.Submitter]);
                    break;
                case Numbered numbered:
                    Texts.AddRange([$"{numbered.Number}", $"{numbered.Number.Running}", $"{numbered.Number.Running:0000}-{numbered.Number.Check}"]);
                    break;
                case PriorFactorStated factor:
                    Texts.Add(factor.Reason);
                    break;
                case DiagnosisSigned signed:
                    foreach (string cause in signed.Primary.Concat(signed.Secondary)) AddCause(cause);
                    Texts.AddRange([signed.Unlisted, signed.ProvenBy, signed.Disagreement]);
                    break;
                case HandedOver handed:
                    Texts.Add(handed.To);
                    break;
                case Closed closed:
                    Texts.Add(closed.Why);
                    break;
                case Reopened reopened:
                    Texts.Add(reopened.Why);
                    break;
                default:
                    break;
            }
        }

        public void Add(Look look)
        {
            Texts.AddRange([look.Note, look.Person]);
            foreach (int state in look.States.Where(state => state != look.Character.EmptyState))
            {
                Texts.Add(look.Character.States[state]);
                foreach (string language in knowledge.Texts.Languages) Texts.AddRange([knowledge.Texts.Character(look.Character, language), knowledge.Texts.State(look.Character, state, language)]);
            }
        }

        /// <summary>What stands in a look that this knowledge cannot read.</summary>
        public void AddUnread(LookMade look)
        {
            using var document = JsonDocument.Parse(look.Observation);
            AddStrings(document.RootElement);
        }

        private void AddStrings(JsonElement value)
        {
            if (value.ValueKind == JsonValueKind.String) Texts.Add(value.GetString());
            foreach (var item in value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().ToArray() : []) AddStrings(item);
            foreach (var member in value.ValueKind == JsonValueKind.Object ? value.EnumerateObject().ToArray() : []) AddStrings(member.Value);
        }

        /// <summary>What leads, and late blight where it is likely: a cause that is merely possible would be found in every sample.</summary>
        public void Add(Answer answer)
        {
            AddCause(answer.Causes[0].Cause.Id);
            if (answer.Standing >= Standing.Likely) AddCause(knowledge.Subject.Id);
            Add("standing", answer.Standing.Word());
        }

        private void Add(string vocabulary, string? word)
        {
            if (word is null) return;
            Texts.Add(word);
            foreach (string language in knowledge.Texts.Languages) Texts.Add(knowledge.Texts.Word($"{vocabulary}.{word}", language));
        }

        private void AddCause(string id)
        {
            Texts.Add(id);
            if (knowledge.FindCause(id) is not { } cause) return;
            Texts.AddRange([cause.Scientific, cause.Eppo]);
            Texts.AddRange(cause.Names.Values.Concat(cause.OlderNames));
        }
    }
}

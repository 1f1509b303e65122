using System.Text;
using Abaxial.Samples;

namespace Abaxial.Tests.Samples;

/// <summary>A device that writes entries into its own chain, with ids and moments that repeat from run to run.</summary>
internal sealed class PaperDevice(string name, int seed = 0)
{
    private static readonly DateTimeOffset Start = new(2026, 7, 14, 6, 0, 0, TimeSpan.Zero);

    private readonly Random random = new(HashCode(name) + seed);
    private string previous = Entry.NothingBefore;
    private long place;

    /// <summary>How wrong its clock is.</summary>
    public TimeSpan Slow { get; init; }

    /// <summary>Writes an entry; without a sample it takes one in.</summary>
    public Entry Write(Payload payload, EntryId? sample = null, IEnumerable<EntryId>? heads = null, int minute = 0) =>
        Write(payload.Kind, payload.Version, payload.ToJson(), sample, heads, minute);

    public Entry Write(string kind, int version, string payload, EntryId? sample = null, IEnumerable<EntryId>? heads = null, int minute = 0)
    {
        byte[] bytes = new byte[10];
        random.NextBytes(bytes);
        var made = Start.AddMinutes(minute) - Slow;
        var id = EntryId.From(made, bytes);
        var entry = new Entry
        {
            Id = id,
            Sample = sample ?? id,
            Author = "d-01",
            Made = made,
            Device = name,
            Place = ++place,
            Previous = previous,
            Kind = kind,
            Version = version,
            Payload = payload,
            Heads = [.. (heads ?? []).Distinct().Order()],
        };
        previous = entry.ComputeHash();
        return entry;
    }

    public static TakenIn Tomato { get; } = new() { Host = "tomato", System = "high-tunnel", Stage = "fruiting", Noticed = new DateOnly(2026, 7, 14), Area = new Area("Kestle Bight", 44, -31, 50_000) };

    public static LookMade Look(string character, string state, int number = 1, string how = "hand-lens") =>
        new(number, $$"""{"by":"diagnostician","character":"{{character}}","how":"{{how}}","state":"{{state}}"}""");

    public static DiagnosisSigned Diagnosis(string cause) => new() { Case = 1, Primary = [cause], Engine = new EngineSaid("solanum 2026.1 00000000", "unlikely", cause) };

    public static EntryReading Read(string json) => EntryReader.Read(Encoding.UTF8.GetBytes(json));

    /// <summary>Everything a view says, as text that can be compared.</summary>
    public static string Told(SampleView view)
    {
        var text = new StringBuilder();
        text.AppendLine($"{view.Sample} {view.Number} {view.TakenIn?.ToJson()} with {view.With} until {view.SnoozedUntil:O} closed {view.ClosedBecause}");
        text.AppendJoin(' ', view.Heads).AppendLine().AppendJoin(' ', view.Erased).AppendLine();
        foreach (var item in view.Timeline) text.AppendLine($"{item.Entry.Id} {item.State} {item.By} {item.Said?.ToJson()} {item.Holds?.ToJson()}");
        foreach (var part in view.Cases) text.AppendLine($"{part.Number} {Case(part)} {string.Join(' ', part.Looks)}");
        foreach (var photograph in view.Photographs) text.AppendLine(photograph.ToString());
        foreach (var diagnosis in view.Diagnoses) text.AppendLine($"{diagnosis.Entry} {diagnosis.By} {diagnosis.Diagnosis.ToJson()}");
        foreach (var message in view.Messages) text.AppendLine($"{message.Entry} {message.Message.ToJson()}");
        return text.ToString();

        static string Case(SampleCase part) => part.Reading.IsRefused ? string.Join(';', part.Reading.Problems) : Encoding.UTF8.GetString(Abaxial.Weighing.CaseWriter.ToUtf8(part.Reading.Case));
    }

    private static int HashCode(string text) => text.Aggregate(17, (hash, letter) => (hash * 31) + letter);
}

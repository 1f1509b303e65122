namespace Abaxial.Cli.Streams;

/// <summary>A case file's bytes, not understood yet.</summary>
/// <param name="Number">Which case it is, from 1.</param>
/// <param name="Name">What to call it to people: the file, or the stream and the number in it.</param>
/// <param name="Utf8">The bytes; empty where there are too many.</param>
/// <param name="IsTooLong">There are more bytes than a case may have.</param>
internal sealed record CaseInput(int Number, string Name, ReadOnlyMemory<byte> Utf8, bool IsTooLong);

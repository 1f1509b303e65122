using Abaxial.Weighing;

namespace Abaxial.Cli.Streams;

/// <summary>A case that was given to the program.</summary>
/// <param name="Number">Which case it is, from 1.</param>
/// <param name="Name">The file; null where it comes from a stream.</param>
/// <param name="Reading">The case, or why it is refused.</param>
internal sealed record CaseInput(int Number, string? Name, CaseReading Reading);

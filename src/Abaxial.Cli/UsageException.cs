namespace Abaxial.Cli;

/// <summary>The one who called did something that cannot be done: the message says what, and the program ends with <see cref="ExitCode.Usage"/>.</summary>
internal sealed class UsageException(string message) : Exception(message);

using System.Diagnostics;
using System.Globalization;
using Abaxial.Data;

namespace Abaxial.Cli;

/// <summary>Says on standard error how far something long is, where somebody watches; is silent elsewhere.</summary>
internal sealed class StoreProgressLine(Terminal terminal) : IProgress<StoreProgress>, IDisposable
{
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(200);

    private readonly Stopwatch since = Stopwatch.StartNew();
    private TimeSpan shown = TimeSpan.Zero;
    private bool isOnLine;

    public void Report(StoreProgress value)
    {
        if (!terminal.ErrorIsWatched || since.Elapsed - shown < Between) return;
        shown = since.Elapsed;
        string of = value.Total > 0 ? string.Create(CultureInfo.InvariantCulture, $" {Math.Min(100, 100 * value.Done / value.Total)} %") : "";
        terminal.Error.Write($"\r{value.What}{of}".PadRight(40));
        isOnLine = true;
    }

    /// <summary>Takes the line away again.</summary>
    public void Dispose()
    {
        if (isOnLine) terminal.Error.Write($"\r{new string(' ', 40)}\r");
        isOnLine = false;
    }
}

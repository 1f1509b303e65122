using System.Diagnostics;
using System.Globalization;

namespace Abaxial.Cli.Streams;

/// <summary>Says on standard error how far a long stream is, where somebody watches; is silent elsewhere.</summary>
internal sealed class Progress(Terminal terminal)
{
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(500);

    private readonly Stopwatch since = Stopwatch.StartNew();
    private TimeSpan shown = TimeSpan.Zero;
    private bool isOnLine;

    public void Show(int done, int refused)
    {
        if (!terminal.ErrorIsWatched || since.Elapsed - shown < Between) return;
        shown = since.Elapsed;
        double pace = done / Math.Max(since.Elapsed.TotalSeconds, 0.001);
        terminal.Error.Write(string.Create(CultureInfo.InvariantCulture, $"\r{done:N0} cases, {refused:N0} refused, {pace:N0} a second   "));
        isOnLine = true;
    }

    /// <summary>Takes the line away again.</summary>
    public void Clear()
    {
        if (!isOnLine) return;
        terminal.Error.Write($"\r{new string(' ', 60)}\r");
        isOnLine = false;
    }
}

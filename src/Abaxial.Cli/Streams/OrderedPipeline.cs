using System.Threading.Channels;

namespace Abaxial.Cli.Streams;

/// <summary>Works on many things at once and gives the results in the order in which the things came.</summary>
internal static class OrderedPipeline
{
    /// <summary>Runs until the last result was taken, or until one of the three steps fails; that failure is thrown.</summary>
    /// <param name="inputs">Read one after the other, by one thread.</param>
    /// <param name="work">Runs on all cores; must be safe to run several times at once.</param>
    /// <param name="take">Gets the results in order, one after the other.</param>
    /// <param name="ahead">How many things may be held at once: bounds the memory.</param>
    public static async Task RunAsync<TInput, TResult>(IEnumerable<TInput> inputs, Func<TInput, TResult> work, Action<TResult> take, int ahead)
    {
        var waiting = Channel.CreateBounded<Task<TResult>>(new BoundedChannelOptions(ahead) { SingleReader = true, SingleWriter = true });
        using var stop = new CancellationTokenSource();
        var reading = Task.Run(() => ReadAsync(inputs, work, waiting.Writer, stop.Token));
        try
        {
            await foreach (var result in waiting.Reader.ReadAllAsync()) take(await result);
        }
        catch
        {
            // A reader that waits for a pipe that never ends cannot be waited for: the program ends without it.
            await stop.CancelAsync();
            throw;
        }

        await reading;
    }

    private static async Task ReadAsync<TInput, TResult>(IEnumerable<TInput> inputs, Func<TInput, TResult> work, ChannelWriter<Task<TResult>> waiting, CancellationToken stop)
    {
        Exception? failure = null;
        try
        {
            foreach (var input in inputs)
            {
                var next = input;
                await waiting.WriteAsync(Task.Run(() => work(next), stop), stop);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or UsageException or OperationCanceledException)
        {
            failure = problem;
        }

        waiting.Complete(failure);
    }
}

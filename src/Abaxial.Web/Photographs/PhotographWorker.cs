using System.Threading.Channels;
using Microsoft.Extensions.Hosting;

namespace Abaxial.Web.Photographs;

/// <summary>
/// Runs what decodes photographs: so many at once, so many waiting, and no more. Whoever went away while waiting is passed over. When the program stops, what waits is done first, for as long as the host allows.
/// </summary>
public sealed class PhotographWorker(PhotographOptions options) : IHostedService, IDisposable
{
    private readonly Channel<Action<CancellationToken>> waiting = Channel.CreateBounded<Action<CancellationToken>>(options.Waiting);
    private readonly CancellationTokenSource ending = new();
    private Task working = Task.CompletedTask;

    /// <summary>Puts work in the queue.</summary>
    /// <returns>What comes of it; null where the queue is full, or the program stops.</returns>
    internal Task<T>? TryRun<T>(Func<CancellationToken, T> work, CancellationToken cancel)
    {
        var outcome = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        return waiting.Writer.TryWrite(Do) ? outcome.Task : null;

        void Do(CancellationToken end)
        {
            using var either = CancellationTokenSource.CreateLinkedTokenSource(cancel, end);
            try
            {
                either.Token.ThrowIfCancellationRequested();
                outcome.SetResult(work(either.Token));
            }
            catch (OperationCanceledException gone)
            {
                outcome.SetCanceled(gone.CancellationToken);
            }
#pragma warning disable CA1031 // whoever waits for it gets the fault; the worker goes on
            catch (Exception fault)
#pragma warning restore CA1031
            {
                outcome.SetException(fault);
            }
        }
    }

    public Task StartAsync(CancellationToken cancellationToken)
    {
        Decoders.Prepare(options);
        working = Task.WhenAll(Enumerable.Range(0, options.DecodedAtOnce).Select(_ => Task.Run(WorkAsync, CancellationToken.None)));
        return Task.CompletedTask;
    }

    public async Task StopAsync(CancellationToken cancellationToken)
    {
        waiting.Writer.TryComplete();
        try
        {
            await working.WaitAsync(cancellationToken);
        }
        catch (OperationCanceledException)
        {
            await ending.CancelAsync(); // what is being decoded ends at its next step; what waits is given up
            await working;
        }
    }

    public void Dispose() => ending.Dispose();

    private async Task WorkAsync()
    {
        await foreach (var work in waiting.Reader.ReadAllAsync()) work(ending.Token);
    }
}

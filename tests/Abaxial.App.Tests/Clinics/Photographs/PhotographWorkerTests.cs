using Abaxial.Web.Photographs;

namespace Abaxial.App.Tests.Clinics.Photographs;

public sealed class PhotographWorkerTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task So_many_wait_and_the_next_one_is_turned_away()
    {
        using var worker = new PhotographWorker(new PhotographOptions { Waiting = 3 });
        var taken = Enumerable.Range(0, 5).Select(i => worker.TryRun(_ => i, Cancel)).ToList();
        Assert.Equal([true, true, true, false, false], taken.Select(task => task is not null));
        await worker.StartAsync(Cancel);
        int[] done = await Task.WhenAll(taken.OfType<Task<int>>());
        Assert.Equal([0, 1, 2], done);
        await worker.StopAsync(Cancel);
    }

    [Fact]
    public async Task No_more_than_so_many_run_at_once()
    {
        int now = 0, most = 0;
        using var worker = new PhotographWorker(new PhotographOptions { DecodedAtOnce = 2 });
        await worker.StartAsync(Cancel);
        using var both = new Barrier(2);
        await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => worker.TryRun(_ => Run(), Cancel)!));
        await worker.StopAsync(Cancel);
        Assert.Equal(2, most);

        int Run()
        {
            int running = Interlocked.Increment(ref now);
            lock (worker) most = Math.Max(most, running);
            both.SignalAndWait(Cancel); // two must be here at once for either to go on
            return Interlocked.Decrement(ref now);
        }
    }

    [Fact]
    public async Task Stopping_finishes_what_waits()
    {
        using var worker = new PhotographWorker(new PhotographOptions { DecodedAtOnce = 1 });
        using var begun = new ManualResetEventSlim();
        var tasks = Enumerable.Range(0, 10).Select(i => worker.TryRun(_ => Work(i), Cancel)!).ToList();
        await worker.StartAsync(Cancel);
        var stopping = worker.StopAsync(Cancel);
        Assert.Null(worker.TryRun(_ => 0, Cancel));
        begun.Set();
        await stopping;
        Assert.Equal(Enumerable.Range(0, 10), await Task.WhenAll(tasks));

        int Work(int i)
        {
            begun.Wait(Cancel);
            return i;
        }
    }

    [Fact]
    public async Task When_the_time_to_stop_is_over_what_waits_is_given_up()
    {
        using var worker = new PhotographWorker(new PhotographOptions { DecodedAtOnce = 1 });
        var begun = new TaskCompletionSource();
        var running = worker.TryRun(Run, Cancel)!;
        var waiting = worker.TryRun(_ => true, Cancel)!;
        await worker.StartAsync(Cancel);
        await begun.Task;
        using var over = new CancellationTokenSource();
        var stopping = worker.StopAsync(over.Token);
        await over.CancelAsync();
        await stopping;
        Assert.True(await running);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);

        bool Run(CancellationToken end)
        {
            begun.SetResult();
            return end.WaitHandle.WaitOne();
        }
    }

    [Fact]
    public async Task Whoever_went_away_while_waiting_is_passed_over()
    {
        using var worker = new PhotographWorker(new PhotographOptions());
        using var gone = new CancellationTokenSource();
        bool hasRun = false;
        var task = worker.TryRun(_ => hasRun = true, gone.Token)!;
        await gone.CancelAsync();
        await worker.StartAsync(Cancel);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => task);
        await worker.StopAsync(Cancel);
        Assert.False(hasRun);
    }

    [Fact]
    public async Task A_fault_is_given_to_who_waits_and_the_worker_goes_on()
    {
        using var worker = new PhotographWorker(new PhotographOptions { DecodedAtOnce = 1 });
        await worker.StartAsync(Cancel);
        await Assert.ThrowsAsync<IOException>(() => worker.TryRun<int>(_ => throw new IOException("no disk"), Cancel)!);
        Assert.Equal(7, await worker.TryRun(_ => 7, Cancel)!);
        await worker.StopAsync(Cancel);
    }
}

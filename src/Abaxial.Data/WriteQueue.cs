using Microsoft.EntityFrameworkCore.Storage;

namespace Abaxial.Data;

/// <summary>
/// Writes one after another, in the order in which they were asked for. Those that wait while others are being written are written together, in one transaction and with one
/// flush of the disk, each behind a savepoint: what is not to be kept of one touches no other. Nobody gets an answer before the commit.
/// </summary>
internal sealed class WriteQueue(ILedgerDatabase database)
{
    private const int MostTogether = 64;
    private const string Savepoint = "one";

    private readonly Lock gate = new();
    private readonly Queue<Waiting> waiting = new();
    private bool isWriting;

    /// <summary>Runs something as the only writer; where it is not to be kept nothing of it is written.</summary>
    /// <exception cref="IOException">The disk is full, or the database went away.</exception>
    public Task<T> RunAsync<T>(Func<LedgerContext, Task<T>> write, Func<T, bool> isKept, CancellationToken cancel)
    {
        var mine = new Waiting<T>(write, isKept, cancel);
        lock (gate)
        {
            waiting.Enqueue(mine);
            if (!isWriting)
            {
                isWriting = true;
                _ = Task.Run(WriteAllAsync, CancellationToken.None);
            }
        }

        return mine.Answer.WaitAsync(cancel);
    }

    private async Task WriteAllAsync()
    {
        while (Next() is { Count: > 0 } together) await WriteTogetherAsync(together);
    }

    private List<Waiting> Next()
    {
        lock (gate)
        {
            var next = new List<Waiting>(Math.Min(waiting.Count, MostTogether));
            while (next.Count < MostTogether && waiting.TryDequeue(out var one)) next.Add(one);
            isWriting = next.Count > 0;
            return next;
        }
    }

    private async Task WriteTogetherAsync(List<Waiting> together)
    {
        try
        {
            await using var context = database.Ask();
            context.Database.AutoSavepointsEnabled = false; // the savepoints here do for all
            await using var transaction = await database.BeginWritingAsync(context, CancellationToken.None);
            bool anything = false;
            foreach (var one in together)
            {
                if (together.Count > 1) await transaction.CreateSavepointAsync(Savepoint);
                bool isKept = await one.WriteAsync(context, database);
                context.ChangeTracker.Clear();
                anything |= isKept;
                if (together.Count > 1) await EndAsync(transaction, isKept);
            }

            if (anything) await transaction.CommitAsync();
        }
#pragma warning disable CA1031 // Whoever waits hears of it, whatever it is.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            var told = database.TroubleIn(fault)?.ToException(fault) ?? fault;
            foreach (var one in together) one.Fail(told);
            return;
        }

        foreach (var one in together) one.Tell();
    }

    private static Task EndAsync(IDbContextTransaction transaction, bool isKept) => isKept ? transaction.ReleaseSavepointAsync(Savepoint) : transaction.RollbackToSavepointAsync(Savepoint);

    /// <summary>A write that waits for its turn, then for the commit.</summary>
    private abstract class Waiting
    {
        /// <summary>Writes; what goes wrong with it alone is told to it alone.</summary>
        /// <returns>Whether it is to be kept.</returns>
        public abstract Task<bool> WriteAsync(LedgerContext context, ILedgerDatabase database);

        /// <summary>Gives the answer.</summary>
        public abstract void Tell();

        public abstract void Fail(Exception fault);
    }

    private sealed class Waiting<T>(Func<LedgerContext, Task<T>> write, Func<T, bool> isKept, CancellationToken cancel) : Waiting
    {
        private readonly TaskCompletionSource<T> answer = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private T? result;
        private Exception? fault;

        public Task<T> Answer => answer.Task;

        public override async Task<bool> WriteAsync(LedgerContext context, ILedgerDatabase database)
        {
            try
            {
                cancel.ThrowIfCancellationRequested();
                result = await write(context);
                return isKept(result);
            }
            catch (Exception own) when (database.TroubleIn(own) is null)
            {
                fault = own;
                return false;
            }
        }

        public override void Tell()
        {
            if (fault is null) answer.TrySetResult(result!);
            else Fail(fault);
        }

        public override void Fail(Exception fault)
        {
            if (fault is OperationCanceledException) answer.TrySetCanceled(cancel);
            else answer.TrySetException(fault);
        }
    }
}

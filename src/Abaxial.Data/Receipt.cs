using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>
/// A short hash over what a row says beside the chain: when it was received, and in which order. It shows a slip or a damaged disk. Whoever changes rows on purpose can write
/// another; that is what the chain is for.
/// </summary>
internal static class Receipt
{
    private const int Digits = 16;
    private const int AtOnce = 1_000;
    private const long TicksOfMicrosecond = TimeSpan.TicksPerMillisecond / 1_000;

    public static string Of(EntryRow row) => Of("entry", row.Row, row.Hash, row.Received.UtcTicks);

    public static string Of(PhotographRow row) => Of("photograph", row.Sha256, row.Bytes, row.Received.UtcTicks, row.MediaType ?? "", row.Width ?? 0, row.Height ?? 0);

    public static string Of(StoreRow row) => Of("store", row.Id, row.Device);

    /// <summary>A moment as every database keeps it: in whole microseconds.</summary>
    public static DateTimeOffset Moment(DateTimeOffset moment) => moment.AddTicks(-(moment.Ticks % TicksOfMicrosecond));

    /// <summary>Gives a store its receipts that was made before there were any; the store's own says that it was done.</summary>
    public static async Task FillAsync(LedgerContext context, StoreRow store, CancellationToken cancel)
    {
        for (long last = 0; await context.Entries.Where(row => row.Row > last && row.Receipt == "").OrderBy(row => row.Row).Take(AtOnce).ToListAsync(cancel) is { Count: > 0 } rows; last = rows[^1].Row)
        {
            foreach (var row in rows)
            {
                row.Received = Moment(row.Received);
                row.Receipt = Of(row);
            }

            await context.SaveChangesAsync(cancel);
            foreach (var row in rows) context.Entry(row).State = EntityState.Detached;
        }

        foreach (var row in await context.Photographs.Where(row => row.Receipt == "").ToListAsync(cancel))
        {
            row.Received = Moment(row.Received);
            row.Receipt = Of(row);
        }

        store.Receipt = Of(store);
        await context.SaveChangesAsync(cancel);
    }

    private static string Of(params ReadOnlySpan<object> parts)
    {
        var text = new StringBuilder();
        foreach (object part in parts) text.Append(CultureInfo.InvariantCulture, $"{part}\n");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..Digits];
    }
}

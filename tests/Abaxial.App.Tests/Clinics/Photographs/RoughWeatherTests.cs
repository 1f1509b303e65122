using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Abaxial.Web.Photographs;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>Senders who are slow, go away, send too much, or come all at once; a disk that is full.</summary>
public sealed class RoughWeatherTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_sender_who_stops_in_the_middle_is_not_waited_for_and_holds_nobody_up()
    {
        await using var clinic = await StartAsync(new PhotographOptions { Grace = TimeSpan.FromSeconds(1.5), ReceivedAtOnce = 2 });
        using var slow = await BeginAsync(clinic, length: 100_000);
        using var client = clinic.Client();
        await client.StoreAsync(Pictures.Jpeg());
        Assert.StartsWith("HTTP/1.1 408", await AnswerAsync(slow), StringComparison.Ordinal);
        await client.StoreAsync(Pictures.Jpeg(number: 1));
        await LeavesNothingOfItAsync(clinic);
    }

    [Fact]
    public async Task Where_too_many_send_at_once_the_next_is_told_when_to_come_again()
    {
        await using var clinic = await StartAsync(new PhotographOptions { ReceivedAtOnce = 1 });
        using var client = clinic.Client();
        using (await BeginAsync(clinic, length: 100_000))
        {
            using var answer = await client.SendAsync(Pictures.Jpeg());
            Assert.Equal((HttpStatusCode.ServiceUnavailable, "5"), (answer.StatusCode, answer.Headers.GetValues("Retry-After").Single()));
            Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        }

        await UntilAsync(async () => (await client.SendAsync(Pictures.Jpeg())).IsSuccessStatusCode); // the place is free again once the sender has gone
    }

    [Fact]
    public async Task A_sender_who_goes_away_leaves_nothing()
    {
        await using var clinic = await StartAsync(new PhotographOptions());
        using (await BeginAsync(clinic, length: 100_000)) Assert.Single(Incoming(clinic));
        await LeavesNothingOfItAsync(clinic);
    }

    [Fact]
    public async Task More_bytes_than_a_photograph_may_have_are_refused_before_they_are_sent()
    {
        await using var clinic = await StartAsync(new PhotographOptions());
        using var socket = await BeginAsync(clinic, length: 200L << 20, waits: false);
        Assert.StartsWith("HTTP/1.1 413", await AnswerAsync(socket), StringComparison.Ordinal);
    }

    [Fact]
    public async Task More_bytes_than_a_photograph_may_have_are_refused_while_they_are_sent()
    {
        await using var clinic = await StartAsync(new PhotographOptions());
        using var socket = await ConnectAsync(clinic, "Transfer-Encoding: chunked");
        byte[] piece = [.. "100000\r\n"u8, .. new byte[1 << 20], .. "\r\n"u8];
        try
        {
            for (int i = 0; i < 110; i++) await socket.SendAsync(piece, Cancel);
        }
        catch (SocketException)
        {
            // the clinic has stopped listening
        }

        Assert.StartsWith("HTTP/1.1 413", await AnswerAsync(socket), StringComparison.Ordinal);
        await LeavesNothingOfItAsync(clinic);
    }

    [Fact]
    public async Task A_full_disk_is_said_in_words_and_leaves_nothing()
    {
        await using var clinic = await StartAsync(new PhotographOptions());
        var openNew = clinic.Ledger.Photographs.OpenNew;
        clinic.Ledger.Photographs.OpenNew = _ => new FileStream("/dev/full", FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        using var client = clinic.Client();
        using var answer = await client.SendAsync(Pictures.Jpeg());
        Assert.Equal(HttpStatusCode.InsufficientStorage, answer.StatusCode);
        Assert.Contains("The disk is full", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        clinic.Ledger.Photographs.OpenNew = openNew;
        await client.StoreAsync(Pictures.Jpeg());
    }

    [Fact]
    public async Task Fifty_at_once_are_stored_or_told_to_come_again_and_none_is_lost()
    {
        await using var clinic = await StartAsync(new PhotographOptions { ReceivedAtOnce = 4, Waiting = 2, DecodedAtOnce = 1 });
        using var client = clinic.Client();
        await Task.WhenAll(Enumerable.Range(0, 50).Select(i => UntilAsync(async () =>
        {
            using var answer = await client.SendAsync(Pictures.Jpeg(number: i));
            Assert.True(answer.IsSuccessStatusCode || answer.StatusCode is HttpStatusCode.ServiceUnavailable or HttpStatusCode.TooManyRequests, $"{answer.StatusCode}");
            return answer.IsSuccessStatusCode;
        })));
        Assert.Equal(50, Sending.Files(clinic.Ledger, "photographs").Count);
    }

    private static async Task<RunningClinic> StartAsync(PhotographOptions options)
    {
        var clinic = new RunningClinic { Photographs = options };
        await clinic.InitializeAsync();
        return clinic;
    }

    /// <summary>Sends the head of a request and a little of its body.</summary>
    private static async Task<Socket> BeginAsync(RunningClinic clinic, long length, bool waits = true)
    {
        var socket = await ConnectAsync(clinic, $"Content-Length: {length.ToString(CultureInfo.InvariantCulture)}");
        if (!waits) return socket;
        await socket.SendAsync(Pictures.Jpeg().AsMemory(0, 200), Cancel);
        await UntilAsync(() => Task.FromResult(Incoming(clinic).Length > 0));
        return socket;
    }

    private static async Task<Socket> ConnectAsync(RunningClinic clinic, string header)
    {
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
        await socket.ConnectAsync(clinic.Address.Host, clinic.Address.Port, Cancel);
        await socket.SendAsync(Encoding.ASCII.GetBytes($"POST /api/photographs HTTP/1.1\r\nHost: {clinic.Address.Authority}\r\nContent-Type: image/jpeg\r\n{header}\r\n\r\n"), Cancel);
        return socket;
    }

    private static async Task<string> AnswerAsync(Socket socket)
    {
        byte[] buffer = new byte[4_096];
        return Encoding.ASCII.GetString(buffer, 0, await socket.ReceiveAsync(buffer, Cancel));
    }

    private static string[] Incoming(RunningClinic clinic) => Directory.GetFiles(Path.Combine(clinic.Ledger.Folder, "photographs", "incoming"));

    private static Task LeavesNothingOfItAsync(RunningClinic clinic) => UntilAsync(() => Task.FromResult(Incoming(clinic).Length == 0));

    /// <summary>Asks until it is so; the test's own time limit ends it otherwise.</summary>
    private static async Task UntilAsync(Func<Task<bool>> isSo)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        patience.CancelAfter(TimeSpan.FromMinutes(1));
        while (!await isSo()) await Task.Delay(TimeSpan.FromMilliseconds(20), patience.Token);
    }
}

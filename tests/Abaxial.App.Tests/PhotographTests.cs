using System.Diagnostics;
using System.Security.Cryptography;
using Abaxial.Data;

namespace Abaxial.App.Tests;

public abstract class PhotographTests(StoreKind kind) : IAsyncLifetime
{
    private readonly TestStore store = new(kind);
    private Ledger ledger = null!;

    public async ValueTask InitializeAsync() => ledger = await store.OpenAsync();

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task A_photograph_lies_under_the_hash_of_its_bytes_once()
    {
        byte[] bytes = RandomNumberGenerator.GetBytes(300_000);
        var first = await AddAsync(bytes);
        var second = await AddAsync(bytes);
        Assert.Equal((Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes.Length), (first.Sha256, first.Bytes));
        Assert.Equal(first, second);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(ledger.Photographs.PathOf(first.Sha256!), TestContext.Current.CancellationToken));
        Assert.Equal((1, 0), (Stored().Count, Incoming().Length));
        Assert.Equal(1, (await TestStore.CheckAsync(ledger)).Photographs);
    }

    [Fact]
    public async Task The_same_photograph_from_many_at_once_is_stored_whole()
    {
        byte[] bytes = RandomNumberGenerator.GetBytes(200_000);
        var added = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Task.Run(() => AddAsync(bytes))));
        Assert.Single(added.Select(adding => adding.Sha256).Distinct());
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        Assert.Empty(Incoming());
    }

    [Fact]
    public async Task An_empty_or_too_long_photograph_is_refused_and_leaves_nothing()
    {
        Assert.Contains("empty", (await AddAsync([])).Refusal, StringComparison.Ordinal);
        Assert.Contains("more than", (await ledger.AddPhotographAsync(new EndlessStream(), TestContext.Current.CancellationToken)).Refusal, StringComparison.Ordinal);
        Assert.Equal((0, 0), (Stored().Count, Incoming().Length));
    }

    [Fact]
    public async Task A_sender_who_goes_away_leaves_nothing()
    {
        await Assert.ThrowsAsync<IOException>(() => ledger.AddPhotographAsync(new BrokenStream(), TestContext.Current.CancellationToken));
        Assert.Equal((0, 0), (Stored().Count, Incoming().Length));
    }

    /// <summary>The system's own device that has no space left.</summary>
    [Fact]
    public async Task A_full_disk_refuses_a_photograph_in_words_and_leaves_nothing()
    {
        var openNew = ledger.Photographs.OpenNew;
        ledger.Photographs.OpenNew = _ => new FileStream("/dev/full", FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        Assert.Equal("The disk is full: the photograph was not stored.", (await AddAsync([1, 2, 3])).Refusal);
        Assert.Equal((0, 0), (Stored().Count, Incoming().Length));
        ledger.Photographs.OpenNew = openNew;
        Assert.False((await AddAsync([1, 2, 3])).IsRefused);
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    /// <summary>A real file system of one mebibyte where this may be mounted; elsewhere the device of the test above, after the first half.</summary>
    [Fact]
    public async Task A_disk_that_fills_up_in_the_middle_of_a_photograph_leaves_nothing_of_it()
    {
        string incoming = Path.Combine(store.Folder, "photographs");
        bool isMounted = Mount("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", incoming);
        try
        {
            ledger.Photographs.Prepare();
            if (!isMounted) ledger.Photographs.OpenNew = file => new FillingStream(file, 1 << 20);
            Assert.False((await AddAsync(RandomNumberGenerator.GetBytes(100_000))).IsRefused);
            Assert.Equal("The disk is full: the photograph was not stored.", (await AddAsync(RandomNumberGenerator.GetBytes(2_000_000))).Refusal);
            Assert.Equal((1, 0), (Stored().Count, Incoming().Length));
            Assert.False((await AddAsync(RandomNumberGenerator.GetBytes(100_000))).IsRefused);
            Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        }
        finally
        {
            if (isMounted) Assert.True(Mount("umount", incoming));
        }
    }

    [Theory]
    [InlineData("../../etc/passwd")]
    [InlineData("")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public void What_is_no_hash_names_no_file(string name) => Assert.Throws<ArgumentException>(() => ledger.Photographs.PathOf(name));

    private Task<PhotographAdding> AddAsync(byte[] bytes) => ledger.AddPhotographAsync(new MemoryStream(bytes), TestContext.Current.CancellationToken);

    private List<string> Stored() => [.. Directory.EnumerateFiles(Path.Combine(store.Folder, "photographs"), "*", SearchOption.AllDirectories).Where(file => !file.Contains("incoming", StringComparison.Ordinal))];

    private string[] Incoming() => Directory.GetFiles(Path.Combine(store.Folder, "photographs", "incoming"));

    private static bool Mount(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private sealed class EndlessStream : OneWayStream
    {
        public override int Read(byte[] buffer, int offset, int count) => count;
    }

    private sealed class BrokenStream : OneWayStream
    {
        private int reads;

        public override int Read(byte[] buffer, int offset, int count) => reads++ < 2 ? count : throw new IOException("The connection was reset.");
    }

    /// <summary>A file on a disk with room for so many bytes.</summary>
    private sealed class FillingStream(string file, int room) : OneWayStream
    {
        private readonly FileStream inner = new(file, FileMode.CreateNew);

        public override bool CanWrite => true;

        public override void Write(byte[] buffer, int offset, int count)
        {
            if (inner.Length + count > room) throw new IOException("No space left on device", 28);
            inner.Write(buffer, offset, count);
        }

        public override void Flush() => inner.Flush();

        protected override void Dispose(bool disposing)
        {
            inner.Dispose();
            base.Dispose(disposing);
        }
    }

    private abstract class OneWayStream : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}

public sealed class PhotographTests_on_SQLite() : PhotographTests(StoreKind.Sqlite);

public sealed class PhotographTests_on_PostgreSQL() : PhotographTests(StoreKind.Postgres);

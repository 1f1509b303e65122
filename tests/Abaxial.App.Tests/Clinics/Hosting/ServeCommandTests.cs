using System.Net;
using System.Net.Sockets;
using System.Text;
using Abaxial.Cli;
using Abaxial.Web.Hosting;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class ServeCommandTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("abaxial-serve-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void A_taken_port_stops_the_start_with_what_holds_it_and_why_the_clinic_does_not_move()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        int port = ((IPEndPoint)other.LocalEndpoint).Port;
        var (code, error) = Run("serve", "--address", $"http://127.0.0.1:{port}");
        Assert.Equal(69, code);
        Assert.Contains($"http://127.0.0.1:{port} is taken by", error, StringComparison.Ordinal);
        if (OperatingSystem.IsLinux()) Assert.Contains($"process {Environment.ProcessId} (", error, StringComparison.Ordinal);
        Assert.Contains("telephones and field devices keep", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(folder.FullName, "store")));
    }

    [Fact]
    public void The_demo_takes_the_next_free_port()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        int port = ((IPEndPoint)other.LocalEndpoint).Port;
        var moved = TakenPort.NextFree(new Uri($"http://127.0.0.1:{port}"));
        Assert.InRange(moved!.Port, port + 1, port + 99);
        Assert.Equal("127.0.0.1", moved.Host);
    }

    [Fact]
    public async Task The_demo_opens_no_store_of_a_clinic()
    {
        (await Data.Ledger.OpenAsync(Path.Combine(folder.FullName, "store"), TimeProvider.System, TestContext.Current.CancellationToken)).Dispose();
        var (code, error) = Run("serve", "--demo", "--store", "store", "--address", "http://127.0.0.1:0");
        Assert.Equal(64, code);
        Assert.Contains("--demo would let everybody in", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--address http://0.0.0.0:5171 --public-url https://clinic.example", "over plain HTTP")]
    [InlineData("--log-level loud", "--log-level")]
    [InlineData("--config none.json", "none.json")]
    [InlineData("--certificate-password secret", "no command or option")]
    public void What_will_not_do_is_refused_by_name(string args, string named)
    {
        var (code, error) = Run(["serve", .. args.Split(' ')]);
        Assert.Equal(64, code);
        Assert.Contains(named, error, StringComparison.Ordinal);
    }

    private (int Code, string Error) Run(params string[] args)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter(new StringBuilder());
        var terminal = new Terminal { In = Stream.Null, Out = output, Error = error, Folder = folder.FullName };
        return (CommandLine.Run(args, terminal, ServeCommand.Create), error.ToString());
    }
}

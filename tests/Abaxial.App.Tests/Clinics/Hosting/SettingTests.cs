using Abaxial.Web;
using Abaxial.Web.Hosting;
using Microsoft.Extensions.Logging;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class SettingTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("abaxial-settings-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void With_nothing_said_the_clinic_listens_on_loopback_alone()
    {
        var options = Accepted(new SettingValues(DateTimeOffset.UnixEpoch));
        Assert.Equal([new Uri("http://127.0.0.1:5171")], options.Addresses);
        Assert.Equal(("store", false, LogLevel.Information), (options.Store, options.IsDemo, options.LogLevel));
    }

    [Fact]
    public void An_argument_goes_before_a_variable_and_a_variable_before_the_file()
    {
        string file = Write("""{ "store": "of-the-file", "log-level": "error", "stop-within": 5, "address": ["http://127.0.0.1:1", "http://127.0.0.1:2"] }""");
        var values = Said(("store", "of-the-argument"));
        values.AddVariables(name => name switch { "ABAXIAL_STORE" => "of-the-variable", "ABAXIAL_LOG_LEVEL" => "warning", _ => null });
        values.AddFile(file);
        var options = Accepted(values);
        Assert.Equal(("of-the-argument", LogLevel.Warning, TimeSpan.FromSeconds(5), 2), (options.Store, options.LogLevel, options.StopWithin, options.Addresses.Length));
    }

    [Theory]
    [InlineData("address", "http://clinic.example:80")]
    [InlineData("address", "http://127.0.0.1")]
    [InlineData("address", "http://127.0.0.1:99999")]
    [InlineData("address", "http://127.0.0.1:5171/clinic")]
    [InlineData("address", "ftp://127.0.0.1:5171")]
    [InlineData("public-url", "clinic.example")]
    [InlineData("public-url", "https://clinic.example/path")]
    [InlineData("proxy", "10.0.0.0/33")]
    [InlineData("log-format", "xml")]
    [InlineData("log-level", "loud")]
    [InlineData("demo", "perhaps")]
    [InlineData("requests-per-minute", "0")]
    [InlineData("photograph-megapixels", "201")]
    [InlineData("photographs-at-once", "0")]
    [InlineData("stop-within", "-1")]
    [InlineData("disk-floor", "1.5")]
    [InlineData("otlp-endpoint", "localhost:4317")]
    public void A_value_that_will_not_do_is_refused_by_the_name_of_its_setting(string name, string value)
    {
        var (_, problems) = ClinicSettings.Read(Said((name, value)));
        var problem = Assert.Single(problems);
        Assert.Equal(($"--{name}", value), (problem.At, problem.Found));
        Assert.NotEmpty(problem.Accepted);
    }

    [Fact]
    public void A_member_of_the_file_that_is_no_setting_is_refused_and_so_is_no_JSON()
    {
        var values = new SettingValues(DateTimeOffset.UnixEpoch);
        values.AddFile(Write("""{ "adress": "http://127.0.0.1:5171" }"""));
        Assert.EndsWith("adress", Assert.Single(ClinicSettings.Read(values).Problems).At, StringComparison.Ordinal);
        var broken = new SettingValues(DateTimeOffset.UnixEpoch);
        broken.AddFile(Write("{"));
        Assert.Single(ClinicSettings.Read(broken).Problems);
        var missing = new SettingValues(DateTimeOffset.UnixEpoch);
        missing.AddFile(Path.Combine(folder.FullName, "none.json"));
        Assert.Single(ClinicSettings.Read(missing).Problems);
    }

    [Theory]
    [InlineData("--address", "http://0.0.0.0:5171", "https://clinic.example", null)] // in the clear
    [InlineData("--address", "http://192.168.7.9:5171", "https://clinic.example", null)]
    [InlineData("--certificate", "https://127.0.0.1:5171", null, null)] // none
    [InlineData("--public-url", "http://127.0.0.1:5171", null, "10.0.0.7")] // behind a proxy, and nobody said what it is called
    [InlineData("--public-url", "http://127.0.0.1:5171", "http://clinic.example", "10.0.0.7")] // the proxy itself in the clear
    public void The_clinic_does_not_listen_where_it_can_be_read_on_the_way(string at, string address, string? publicUrl, string? proxy)
    {
        var values = Said(("address", address));
        if (publicUrl is not null) values.Say("public-url", "--public-url", publicUrl);
        if (proxy is not null) values.Say("proxy", "--proxy", proxy);
        Assert.Equal(at, Assert.Single(ClinicSettings.Read(values).Problems).At);
    }

    [Theory]
    [InlineData("http://localhost:5171", null, null)]
    [InlineData("http://[::1]:5171", null, null)]
    [InlineData("http://0.0.0.0:5171", "https://clinic.example", "10.0.0.0/24")]
    [InlineData("http://127.0.0.1:5171", "https://clinic.example", "127.0.0.1")]
    public void The_clinic_listens_on_its_own_machine_and_behind_a_named_proxy(string address, string? publicUrl, string? proxy)
    {
        var values = Said(("address", address));
        if (publicUrl is not null) values.Say("public-url", "--public-url", publicUrl);
        if (proxy is not null) values.Say("proxy", "--proxy", proxy);
        Accepted(values);
    }

    [Fact]
    public void Every_setting_stands_in_the_notes_on_operating()
    {
        string notes = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "..", "..", "..", "..", "docs", "operating", "server.md"));
        Assert.All(ClinicSettings.All, setting => Assert.Contains($"`{setting.Name}`", notes, StringComparison.Ordinal));
    }

    private static SettingValues Said(params ReadOnlySpan<(string Name, string Value)> said)
    {
        var values = new SettingValues(DateTimeOffset.UnixEpoch);
        foreach (var (name, value) in said) values.Say(name, $"--{name}", value);
        return values;
    }

    private static ClinicOptions Accepted(SettingValues values)
    {
        var (options, problems) = ClinicSettings.Read(values);
        Assert.Empty(problems);
        return options;
    }

    private string Write(string text)
    {
        string file = Path.Combine(folder.FullName, "clinic.json");
        File.WriteAllText(file, text);
        return file;
    }
}

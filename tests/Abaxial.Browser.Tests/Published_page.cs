using System.Globalization;
using System.Text;
using Abaxial.Browser.Tests.Browsing;

namespace Abaxial.Browser.Tests;

/// <summary>The library in Debian's Chromium against the library in this process.</summary>
public sealed class Published_page(PageFixture fixture) : IClassFixture<PageFixture>
{
    public static TheoryData<string> Island => [.. WeighedCases.Island.Keys];

    public static TheoryData<string> EveryHostAndWay => [.. WeighedCases.EveryHostAndWay.Keys];

    public static TheoryData<string> Refused => [.. WeighedCases.Refused.Keys];

    private OpenPage Page => fixture.Page;

    [Theory]
    [MemberData(nameof(Island))]
    public Task Gives_the_native_answer_to_a_case_of_the_island(string name) => Gives("abaxial-answer/1", WeighedCases.Island[name]);

    [Theory]
    [MemberData(nameof(EveryHostAndWay))]
    public Task Gives_the_native_answer_to_looks_made_in_one_way(string name) => Gives("abaxial-answer/1", WeighedCases.EveryHostAndWay[name]);

    [Theory]
    [MemberData(nameof(Refused))]
    public Task Gives_the_native_refusal(string name) => Gives("abaxial-refusal/1", WeighedCases.Refused[name]);

    [Fact]
    public async Task Gives_the_native_answer_after_every_tap_on_a_slow_telephone()
    {
        string[] texts = Taps.LookByLook(WeighedCases.Island["01-tunnel-late-blight"]);
        await Page.SlowDownAsync(4);
        try
        {
            foreach (string text in texts) await Gives("abaxial-answer/1", text);
            Print("milliseconds a tap, four times slowed", await Page.TapAsync(texts));
        }
        finally
        {
            await Page.SlowDownAsync(1);
        }

        Print("milliseconds a tap, as it is", await Page.TapAsync(texts));
        TestContext.Current.TestOutputHelper?.WriteLine($"{Page.Browser}: ready {Page.FirstLoad.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture)} s after the first request");
    }

    private async Task Gives(string format, string caseJson)
    {
        byte[] native = NativeLibrary.Weigh(caseJson);
        byte[] inBrowser = Encoding.UTF8.GetBytes(await Page.WeighAsync(caseJson));
        Assert.StartsWith($"{{\"format\":\"{format}\"", Encoding.UTF8.GetString(native), StringComparison.Ordinal);
        Assert.Equal(Encoding.UTF8.GetString(native), Encoding.UTF8.GetString(inBrowser)); // says where they differ
        Assert.Equal(native, inBrowser);
    }

    private static void Print(string what, double[] milliseconds) =>
        TestContext.Current.TestOutputHelper?.WriteLine($"{what}: {string.Join(" ", milliseconds.Select(one => one.ToString("0.0", CultureInfo.InvariantCulture)))}");
}

using System.Text;
using System.Text.Json.Nodes;
using Abaxial.Cli;
using Abaxial.Knowledge;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>The API's answers are the command line's, byte for byte.</summary>
public sealed class AnswerTests
{
    private static readonly KnowledgeBase Knowledge = BuiltIn.Solanum();

    [Fact]
    public async Task The_answer_is_the_very_bytes_that_the_command_line_prints()
    {
        await using var clinic = await Roles.StartAsync();
        using var api = new Api(await Roles.ClientAsync(clinic, Roles.Diagnostician));
        var random = new Random(20261125);
        var files = Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "cases")).Select(File.ReadAllText);
        foreach (string file in files.Concat(Enumerable.Range(0, 40).Select(_ => Generated(random))))
        {
            using var weighed = await api.SendAsync("/api/weigh", file);
            string answer = await weighed.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.True(weighed.IsSuccessStatusCode, file + answer);
            Assert.Equal(Printed(file), answer);
        }
    }

    [Fact]
    public async Task A_sample_s_answer_is_that_of_the_case_that_it_amounts_to()
    {
        await using var clinic = await Roles.StartAsync();
        using var api = new Api(await Roles.ClientAsync(clinic, Roles.Diagnostician));
        var random = new Random(7);
        for (int i = 0; i < 10; i++)
        {
            var one = JsonNode.Parse(Generated(random))!;
            string sample = await api.TakeInAsync(new JsonObject { ["host"] = one["host"]!.DeepClone(), ["cases"] = new JsonArray(new JsonObject { ["looks"] = one["looks"]!.DeepClone() }) }.ToJsonString());
            var view = await api.GetAsync($"/api/samples/{sample}");
            string file = view.GetProperty("cases")[0].GetProperty("case").GetRawText();
            Assert.Equal(Printed(file), await api.Client.GetStringAsync(new Uri($"/api/samples/{sample}/cases/1/answer", UriKind.Relative), TestContext.Current.CancellationToken));
        }
    }

    [Fact]
    public async Task A_case_of_more_than_a_mebibyte_is_not_read()
    {
        await using var clinic = await Roles.StartAsync();
        using var api = new Api(await Roles.ClientAsync(clinic, Roles.Diagnostician));
        using var answer = await api.SendAsync("/api/weigh", $$"""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"onset","how":"asked","state":"unsure","note":"{{new string('x', 1 << 20)}}"}]}""");
        Assert.Equal(System.Net.HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    /// <summary>A case of looks that mean something by themselves.</summary>
    private static string Generated(Random random)
    {
        string host = Knowledge.Document.Hosts[random.Next(Knowledge.Document.Hosts.Length)];
        var simple = Knowledge.Characters.Where(one => one.AppliesTo(host) && !one.IsMeasured && one.WhenParent is null && one.Facets.IsEmpty && one.OfCharacter is null).ToList();
        var looks = new JsonArray();
        foreach (var character in simple.OrderBy(_ => random.Next()).Take(random.Next(1, 9)))
        {
            string[] states = [.. character.States.Where((_, state) => character.HasState(state, host))];
            looks.Add(new JsonObject { ["character"] = character.Id, ["state"] = states[random.Next(states.Length)], ["how"] = character.Ways[random.Next(character.Ways.Length)].Word() });
        }

        return new JsonObject { ["format"] = "abaxial-case/1", ["host"] = host, ["looks"] = looks }.ToJsonString();
    }

    private static string Printed(string file)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter();
        int code = CommandLine.Run(["weigh", "-", "--json"], new Terminal { In = new MemoryStream(Encoding.UTF8.GetBytes(JsonNode.Parse(file)!.ToJsonString())), Out = output, Error = error }, WeighCommand.Create);
        Assert.True(code == 0, error.ToString());
        return Encoding.UTF8.GetString(output.ToArray());
    }
}

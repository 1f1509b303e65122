using System.Xml.Linq;
using Abaxial.Panel.Drawings;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Abaxial.Browser.Tests;

/// <summary>The component, rendered to HTML.</summary>
public sealed class Drawing_on_a_page
{
    [Theory]
    [InlineData("en", "A leaf with three round spots")]
    [InlineData("es", "Hoja con tres manchas redondas")]
    public async Task Is_a_picture_with_a_text_in_the_language_asked_for(string language, string text)
    {
        var svg = XElement.Parse(await RenderAsync("leaf-lesion-shape", "round", 40, language));
        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal("40", svg.Attribute("width")!.Value);
        Assert.Equal("40", svg.Attribute("height")!.Value);
        Assert.Equal(text, svg.Elements().First(element => element.Name.LocalName == "title").Value);
        var drawn = XElement.Parse(StateDrawings.Find("leaf-lesion-shape", "round")!.Svg);
        Assert.Equal(drawn.Elements().Attributes("d").Select(path => path.Value), svg.Elements().Attributes("d").Select(path => path.Value));
        Assert.All(drawn.Attributes(), attribute => Assert.Equal(attribute.Value, svg.Attribute(attribute.Name)?.Value));
    }

    [Fact]
    public async Task Is_nothing_where_the_state_has_no_drawing() => Assert.Equal("", (await RenderAsync("smell", "foul", 64, "en")).Trim());

    private static async Task<string> RenderAsync(string character, string state, int size, string language)
    {
        await using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, services.GetRequiredService<ILoggerFactory>());
        var values = ParameterView.FromDictionary(new Dictionary<string, object?> { ["Of"] = character, ["State"] = state, ["Size"] = size, ["Language"] = language });
        return await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<Drawing>(values)).ToHtmlString());
    }
}

using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Hosting.Description;

/// <summary>An example of what is sent to an endpoint, or of what it answers; it stands in the description of the API, and a test holds it against the schema there.</summary>
/// <param name="Status">The status of the answer; null for what is sent.</param>
/// <param name="Json">The example.</param>
internal sealed record ApiExample(int? Status, string Json)
{
    public JsonNode Value => JsonNode.Parse(Json) ?? throw new FormatException("An example is JSON and not null.");
}

/// <summary>How an endpoint says its examples.</summary>
internal static class ApiExamples
{
    /// <summary>An example of what is sent.</summary>
    public static TBuilder WithRequestExample<TBuilder>(this TBuilder endpoint, string json)
        where TBuilder : IEndpointConventionBuilder => endpoint.WithMetadata(new ApiExample(null, json));

    /// <summary>An example of what is answered.</summary>
    public static TBuilder WithAnswerExample<TBuilder>(this TBuilder endpoint, string json, int status = StatusCodes.Status200OK)
        where TBuilder : IEndpointConventionBuilder => endpoint.WithMetadata(new ApiExample(status, json));
}

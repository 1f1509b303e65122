using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Hosting;

/// <summary>How the JSON of requests is read: as it is written, or not at all. A member that nobody knows is not passed over, and none is missing unnoticed.</summary>
internal static class JsonRules
{
    private const int Depth = 32;

    public static void AddJsonRules(this WebApplicationBuilder builder) => builder.Services.ConfigureHttpJsonOptions(json =>
    {
        json.SerializerOptions.MaxDepth = Depth;
        json.SerializerOptions.NumberHandling = JsonNumberHandling.Strict;
        json.SerializerOptions.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        json.SerializerOptions.AllowDuplicateProperties = false;
        json.SerializerOptions.RespectNullableAnnotations = true;
        json.SerializerOptions.RespectRequiredConstructorParameters = true;
    });
}

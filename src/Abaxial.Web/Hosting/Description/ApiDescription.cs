using System.Globalization;
using System.Text.Json.Nodes;
using Abaxial.Web.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;

namespace Abaxial.Web.Hosting.Description;

/// <summary>The description of the API (OpenAPI 3.1) at /api/openapi.json: what the endpoints say of themselves, with examples, how one shows who one is, and how refusals look.</summary>
internal static class ApiDescription
{
    public const string Path = "/api/openapi.json";

    private const string Problem = "Problem";
    private const string ProblemType = "application/problem+json";

    private const string Words =
        """
        Everything that the clinic's pages do. Who asks is known by the session of a signed-in person (cookie) or by the token of a paired device. What may be done hangs on the
        person's role; what is somebody else's is answered as if it were not there (404).

        A refusal is a problem document (RFC 9457). Where what was sent is at fault, `problems` names each place, what was found there and what is accepted.

        A request that writes an entry may carry `Idempotency-Key`, a ULID, which becomes the id of the entry: sent again it is answered as before; sent again with other content it
        is refused (409). A change asked for with a cookie has to come from the clinic's own pages. Who asks too often is answered 429 with `Retry-After` in seconds.
        """;

    public static void AddApiDescription(this WebApplicationBuilder builder) => builder.Services.AddHttpContextAccessor().AddOpenApi(options =>
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.ShouldInclude = described => described.RelativePath?.StartsWith("api", StringComparison.Ordinal) == true;
        options.AddDocumentTransformer((document, context, _) =>
        {
            Describe(document, SessionCookie.Name(context.ApplicationServices.GetRequiredService<IHttpContextAccessor>().HttpContext is { Request.IsHttps: true }));
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            Describe(operation, context);
            return Task.CompletedTask;
        });
    });

    public static void MapApiDescription(this WebApplication app) => app.MapOpenApi(Path).AllowAnonymous();

    private static void Describe(OpenApiDocument document, string cookie)
    {
        document.Info = new OpenApiInfo { Title = "The clinic", Version = "1", Description = Words, License = new OpenApiLicense { Name = "Apache-2.0", Identifier = "Apache-2.0" } };
        document.Servers = [new OpenApiServer { Url = "/" }];
        document.Components ??= new OpenApiComponents();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
        {
            ["session"] = new OpenApiSecurityScheme { Type = SecuritySchemeType.ApiKey, In = ParameterLocation.Cookie, Name = cookie, Description = "The session of a signed-in person; over HTTPS the cookie is called otherwise than over HTTP." },
            ["device"] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = "The token of a paired device; it can be revoked." },
        };
        document.Security =
        [
            new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference("session", document)] = [] },
            new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference("device", document)] = [] },
        ];
        document.Components.Schemas ??= new Dictionary<string, IOpenApiSchema>();
        document.Components.Schemas[Problem] = ProblemSchema();
    }

    private static void Describe(OpenApiOperation operation, OpenApiOperationTransformerContext context)
    {
        foreach (var example in context.Description.ActionDescriptor.EndpointMetadata.OfType<ApiExample>())
        {
            var content = example.Status is { } status ? operation.Responses?[status.ToString(CultureInfo.InvariantCulture)].Content : operation.RequestBody?.Content;
            if (content is null) throw new InvalidOperationException($"{context.Description.HttpMethod} {context.Description.RelativePath} has an example for something that it does not take or answer.");
            foreach (var media in content.Where(media => media.Key.EndsWith("json", StringComparison.Ordinal)).Select(media => media.Value)) media.Example = example.Value;
        }

        operation.Responses ??= [];
        operation.Responses["default"] = new OpenApiResponse
        {
            Description = "A refusal.",
            Content = new Dictionary<string, OpenApiMediaType> { [ProblemType] = new OpenApiMediaType { Schema = new OpenApiSchemaReference(Problem, context.Document), Example = ProblemExample() } },
        };
    }

    private static OpenApiSchema ProblemSchema() => new()
    {
        Type = JsonSchemaType.Object,
        Description = "A refusal (RFC 9457).",
        Required = new HashSet<string> { "type", "title", "status", "detail", "traceId" },
        Properties = new Dictionary<string, IOpenApiSchema>
        {
            ["type"] = Text("about:blank: the status says it all."),
            ["title"] = Text("What it is, in words."),
            ["status"] = new OpenApiSchema { Type = JsonSchemaType.Integer, Description = "The status of the answer." },
            ["detail"] = Text("What to do."),
            ["traceId"] = Text("The number of the request, as the clinic's log names it."),
            ["problems"] = new OpenApiSchema { Type = JsonSchemaType.Array, Items = PlaceSchema(), Description = "Where what was sent is at fault." },
        },
    };

    private static OpenApiSchema PlaceSchema() => new()
    {
        Type = JsonSchemaType.Object,
        Required = new HashSet<string> { "at", "found", "accepted" },
        Properties = new Dictionary<string, IOpenApiSchema>
        {
            ["at"] = Text("The place as a JSON Pointer (RFC 6901); empty for the whole."),
            ["found"] = Text("What stands there."),
            ["accepted"] = new OpenApiSchema { Type = JsonSchemaType.Array, Items = Text("What would do there.") },
        },
    };

    private static OpenApiSchema Text(string description) => new() { Type = JsonSchemaType.String, Description = description };

    private static JsonNode ProblemExample() => JsonNode.Parse(
        """
        {
          "type": "about:blank",
          "title": "Bad Request",
          "status": 400,
          "detail": "The request cannot be read. Something in it is missing or is not in its form.",
          "traceId": "4bf92f3577b34da6a3ce929d0e0e4736",
          "problems": [{ "at": "/host", "found": "oak", "accepted": ["tomato", "potato"] }]
        }
        """)!;
}

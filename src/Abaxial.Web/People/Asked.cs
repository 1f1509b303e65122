using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.People;

/// <summary>
/// What a request about people asks: a form of a page, or an object of JSON, to the same endpoint. A form has to carry the page's token, and is answered by a page; JSON is answered
/// by JSON, and what is wrong with it by a problem document.
/// </summary>
internal sealed class Asked
{
    private const int MostMembers = 20;
    private const int MostLetters = 20_000;

    private readonly IReadOnlyDictionary<string, string> members;

    private Asked(IReadOnlyDictionary<string, string> members, bool isForm)
    {
        this.members = members;
        IsForm = isForm;
    }

    /// <summary>Whether a page sent it.</summary>
    public bool IsForm { get; }

    /// <summary>A member's text; empty where it was not sent.</summary>
    public string this[string member] => members.GetValueOrDefault(member, "");

    /// <summary>The lines of a member that are not empty.</summary>
    public ImmutableArray<string> Lines(string member) => [.. this[member].Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Distinct(StringComparer.Ordinal)];

    public static async ValueTask<Asked?> BindAsync(HttpContext context, ParameterInfo _)
    {
        if (context.Request.HasFormContentType)
        {
            if (!await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context)) throw new BadHttpRequestException("The form does not carry the token of its page.");
            var form = await context.Request.ReadFormAsync(context.RequestAborted);
            return new Asked(form.ToDictionary(field => field.Key, field => field.Value.ToString(), StringComparer.Ordinal), isForm: true);
        }

        if (context.Features.Get<IHttpRequestBodyDetectionFeature>() is { CanHaveBody: false }) return new Asked(new Dictionary<string, string>(), isForm: false);
        if (!context.Request.HasJsonContentType()) throw new BadHttpRequestException("JSON or a form is wanted.", StatusCodes.Status415UnsupportedMediaType);
        return new Asked(await ReadJsonAsync(context.Request, context.RequestAborted), isForm: false);
    }

    /// <summary>It was done: JSON for programs; for people the page, which may say so by a word.</summary>
    public IResult Done<T>(T answer, string page, int status = StatusCodes.Status200OK) => IsForm ? SeeOther(page) : TypedResults.Json(answer, statusCode: status);

    /// <summary>It was done, and there is nothing to tell.</summary>
    public IResult Done(string page) => IsForm ? SeeOther(page) : TypedResults.NoContent();

    /// <summary>It was refused: a problem document for programs; for people the page with the reason.</summary>
    public IResult Refuse(Fault fault, string page, int status = StatusCodes.Status400BadRequest) =>
        IsForm ? SeeOther($"{page}{(page.Contains('?', StringComparison.Ordinal) ? '&' : '?')}fault={fault.Word}") : Faults.Answer(fault, status);

    private static RedirectSeeOther SeeOther(string page) => new(page);

    private static async Task<Dictionary<string, string>> ReadJsonAsync(HttpRequest request, CancellationToken cancel)
    {
        try
        {
            using var document = await JsonDocument.ParseAsync(request.Body, new JsonDocumentOptions { MaxDepth = 8 }, cancel);
            if (document.RootElement.ValueKind != JsonValueKind.Object) throw new BadHttpRequestException("An object is wanted.");
            var members = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (var member in document.RootElement.EnumerateObject())
            {
                string? text = TextOf(member.Value);
                if (text is null || text.Length > MostLetters || members.Count >= MostMembers || !members.TryAdd(member.Name, text)) throw new BadHttpRequestException("Each member once, with a text; areas may be a list of texts.");
            }

            return members;
        }
        catch (Exception broken) when (broken is JsonException or InvalidOperationException)
        {
            throw new BadHttpRequestException("What was sent is no JSON.", broken);
        }
    }

    /// <summary>A text, or texts as lines; an object as it was written (a passkey is one).</summary>
    private static string? TextOf(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => value.GetString(),
        JsonValueKind.Object => value.GetRawText(),
        JsonValueKind.Array when value.EnumerateArray().All(item => item.ValueKind == JsonValueKind.String) => string.Join('\n', value.EnumerateArray().Select(item => item.GetString())),
        _ => null,
    };

    /// <summary>"See other": the browser asks for a page, whatever it sent.</summary>
    private sealed class RedirectSeeOther(string page) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
            httpContext.Response.Headers.Location = page;
            return Task.CompletedTask;
        }
    }
}

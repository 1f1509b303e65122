using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Claims;
using System.Threading.RateLimiting;
using Abaxial.Web.Hosting.Faults;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Hosting;

/// <summary>Keeps one person, or one address, from taking what is there for all. An endpoint says what it is by one of the <c>Takes…</c> methods.</summary>
internal static class RequestLimiting
{
    private const string SignIn = "sign-in";
    private const string Upload = "upload";

    /// <summary>The endpoint lets somebody try a password, a code or a PIN.</summary>
    public static TBuilder TakesSignIn<TBuilder>(this TBuilder endpoint)
        where TBuilder : IEndpointConventionBuilder => endpoint.RequireRateLimiting(SignIn);

    /// <summary>The endpoint takes a photograph: larger, slower, and fewer of them.</summary>
    public static TBuilder TakesUpload<TBuilder>(this TBuilder endpoint)
        where TBuilder : IEndpointConventionBuilder
    {
        endpoint.WithRequestTimeout(Upload);
        return endpoint.RequireRateLimiting(Upload).WithMetadata(new RequestSizeLimitAttribute(RequestLimits.UploadBytes));
    }

    public static void AddLimits(this WebApplicationBuilder builder, RequestLimits limits)
    {
        builder.Services.AddRequestTimeouts(timeouts =>
        {
            timeouts.DefaultPolicy = new() { Timeout = limits.RequestTime, TimeoutStatusCode = StatusCodes.Status504GatewayTimeout };
            timeouts.AddPolicy(Upload, new Microsoft.AspNetCore.Http.Timeouts.RequestTimeoutPolicy { Timeout = limits.UploadTime, TimeoutStatusCode = StatusCodes.Status504GatewayTimeout });
        });
        builder.Services.AddRateLimiter(limiter =>
        {
            limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limiter.OnRejected = RefuseAsync;
            limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context => Bucket(Asker(context), limits.RequestsPerMinute));
            limiter.AddPolicy(SignIn, context => Bucket(Address(context), limits.SignInsPerMinute));
            limiter.AddPolicy(Upload, context => Bucket(Asker(context), limits.UploadsPerMinute));
        });
    }

    /// <summary>Stands after whoever finds out who is signed in.</summary>
    public static void UseLimits(this WebApplication app)
    {
        app.UseRateLimiter();
        app.Use(RefuseTooLargeAsync);
    }

    /// <summary>A form of a page that says to be too large is told so; whoever reads it later would only find that it cannot be read. The API answers with the place.</summary>
    private static Task RefuseTooLargeAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Request.Path.StartsWithSegments("/api") || !(context.Request.ContentLength > context.Features.Get<IHttpMaxRequestBodySizeFeature>()?.MaxRequestBodySize)) return next(context);
        context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
        return Task.CompletedTask;
    }

    /// <summary>So many a minute, a quarter of them at once (of few, ten); what was taken comes back a little every second.</summary>
    private static RateLimitPartition<string> Bucket(string key, int aMinute) => RateLimitPartition.GetTokenBucketLimiter(key, _ => new TokenBucketRateLimiterOptions
    {
        TokenLimit = Math.Max(aMinute / 4, Math.Min(aMinute, 10)),
        TokensPerPeriod = Math.Max(aMinute / 60, 1),
        ReplenishmentPeriod = aMinute >= 60 ? TimeSpan.FromSeconds(1) : TimeSpan.FromSeconds(60.0 / aMinute),
        AutoReplenishment = true,
    });

    private static string Asker(HttpContext context) => context.User.FindFirstValue(ClaimTypes.NameIdentifier) is { } person ? $"person {person}" : Address(context);

    /// <summary>Of an IPv6 address the first half: the second one is the asker's to choose.</summary>
    private static string Address(HttpContext context)
    {
        var address = context.Connection.RemoteIpAddress ?? IPAddress.None;
        if (address.IsIPv4MappedToIPv6) address = address.MapToIPv4();
        return address.AddressFamily == AddressFamily.InterNetworkV6 ? Convert.ToHexString(address.GetAddressBytes().AsSpan(0, 8)) : address.ToString();
    }

    private static async ValueTask RefuseAsync(OnRejectedContext rejected, CancellationToken cancel)
    {
        var wait = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromSeconds(1);
        rejected.HttpContext.Response.Headers.RetryAfter = Math.Ceiling(Math.Max(wait.TotalSeconds, 1)).ToString(CultureInfo.InvariantCulture);
        await FaultAnswers.WriteAsync(rejected.HttpContext, StatusCodes.Status429TooManyRequests);
    }
}

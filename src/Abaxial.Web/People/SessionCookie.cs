using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.People;

/// <summary>The cookies that a browser keeps for the clinic: that of a session, and that of a shared bench computer. Under HTTPS they are held to this host alone.</summary>
internal static class SessionCookie
{
    private const string Session = "abaxial";
    private const string Bench = "abaxial-bench";

    /// <summary>What the cookie of a session is called.</summary>
    public static string Name(bool isHttps) => NameOf(isHttps, Session);

    public static string? Read(HttpContext context) => Value(context, Session);

    public static string? ReadBench(HttpContext context) => Value(context, Bench);

    /// <summary>Gives the browser a session's secret in place of any that it has.</summary>
    public static void Write(HttpContext context, string secret, TimeSpan lasts) => Append(context, Session, secret, lasts);

    public static void WriteBench(HttpContext context, string secret) => Append(context, Bench, secret, TimeSpan.FromDays(400)); // browsers keep none longer

    public static void Delete(HttpContext context) => context.Response.Cookies.Delete(NameOf(context, Session), Options(context));

    public static void DeleteBench(HttpContext context) => context.Response.Cookies.Delete(NameOf(context, Bench), Options(context));

    private static string? Value(HttpContext context, string name) => context.Request.Cookies[NameOf(context, name)] is { Length: > 0 and <= 100 } value ? value : null;

    private static void Append(HttpContext context, string name, string value, TimeSpan lasts)
    {
        var options = Options(context);
        options.MaxAge = lasts;
        context.Response.Cookies.Append(NameOf(context, name), value, options);
    }

    private static string NameOf(HttpContext context, string name) => NameOf(context.Request.IsHttps, name);

    private static string NameOf(bool isHttps, string name) => isHttps ? $"__Host-{name}" : name;

    private static CookieOptions Options(HttpContext context) => new() { HttpOnly = true, Secure = context.Request.IsHttps, SameSite = SameSiteMode.Lax, Path = "/", IsEssential = true };
}

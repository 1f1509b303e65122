namespace Abaxial.Web.People;

/// <summary>What a person recognizes a session by: the family of the browser and of what it runs on. Nothing finer is kept.</summary>
internal static class BrowserFamily
{
    private static readonly (string Part, string Name)[] Browsers =
        [("Edg", "Edge"), ("OPR/", "Opera"), ("SamsungBrowser", "Samsung Internet"), ("Firefox/", "Firefox"), ("FxiOS", "Firefox"), ("CriOS", "Chrome"), ("Chrome/", "Chrome"), ("Safari/", "Safari")];

    private static readonly (string Part, string Name)[] Systems =
        [("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Macintosh", "Mac"), ("CrOS", "ChromeOS"), ("Linux", "Linux")];

    public static string Of(string userAgent)
    {
        string browser = NameIn(Browsers, userAgent) ?? "A browser";
        return NameIn(Systems, userAgent) is { } system ? $"{browser} on {system}" : browser;
    }

    private static string? NameIn((string Part, string Name)[] names, string userAgent) =>
        names.Where(name => userAgent.Contains(name.Part, StringComparison.Ordinal)).Select(name => name.Name).FirstOrDefault();
}

namespace Abaxial.Browser.Tests.Browsing;

/// <summary>The folder that this program was built from.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Abaxial.slnx"))) return folder.FullName;
        }

        throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} holds Abaxial.slnx.");
    }
}

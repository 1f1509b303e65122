namespace Abaxial.Tests;

/// <summary>The folder that the project was checked out to.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string PathOf(params string[] names) => Path.Combine([Root, .. names]);

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Abaxial.slnx"))) return folder.FullName;
        }

        throw new InvalidOperationException("The tests do not run inside the project.");
    }
}

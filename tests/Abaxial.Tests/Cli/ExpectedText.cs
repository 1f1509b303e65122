using System.Runtime.CompilerServices;

namespace Abaxial.Tests.Cli;

/// <summary>Compares text with a file in the folder Expected. Set ABAXIAL_ACCEPT=1 to write what came as what is expected, and read the change before it is committed.</summary>
internal static class ExpectedText
{
    public static void Check(string name, string text)
    {
        string path = Path.Combine(Folder(), name);
        if (Environment.GetEnvironmentVariable("ABAXIAL_ACCEPT") == "1") File.WriteAllText(path, text);
        Assert.True(File.Exists(path), $"{path} is missing.");
        string[] expected = File.ReadAllText(path).Split('\n'), came = text.Split('\n');
        for (int line = 0; line < Math.Max(expected.Length, came.Length); line++)
        {
            string should = line < expected.Length ? expected[line] : "(nothing)", does = line < came.Length ? came[line] : "(nothing)";
            Assert.True(should == does, $"{name}, line {line + 1}\n  expected: {should}\n  came:     {does}");
        }
    }

    private static string Folder([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "Expected");
}

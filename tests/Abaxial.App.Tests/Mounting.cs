using System.Diagnostics;

namespace Abaxial.App.Tests;

/// <summary>Small file systems for tests, where the one who runs them may mount.</summary>
internal static class Mounting
{
    /// <summary>Runs mount or umount.</summary>
    /// <returns>Whether it did what it was told.</returns>
    public static bool Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}

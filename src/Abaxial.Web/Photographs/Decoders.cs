using ImageMagick;
using ImageMagick.Configuration;

namespace Abaxial.Web.Photographs;

/// <summary>
/// What the decoding library may do, for the whole program (decision 0019): read four kinds of photographs, write one, within limits of pixels, memory and time, and nothing
/// else. No other format, no program, no address, no file of another name can be reached through a photograph.
/// </summary>
internal static class Decoders
{
    /// <summary>A side of a picture, in pixels: no format of ours holds more but PNG, and no camera makes more.</summary>
    private const ulong LongestSide = 65_500;

    /// <summary>Bytes of one profile inside a photograph.</summary>
    private const ulong LargestProfile = 16 << 20;

    /// <summary>Bytes a pixel at most: five channels, and what is made of them on the way.</summary>
    private const ulong BytesPerPixel = 8;

    private const string Policy = """
        <policymap>
          <policy domain="delegate" rights="none" pattern="*"/>
          <policy domain="filter" rights="none" pattern="*"/>
          <policy domain="path" rights="none" pattern="@*"/>
          <policy domain="path" rights="none" pattern="|*"/>
          <policy domain="coder" rights="none" pattern="*"/>
          <policy domain="coder" rights="read" pattern="{JPEG,PNG,WEBP,HEIC}"/>
          <policy domain="coder" rights="read | write" pattern="JPEG"/>
        </policymap>
        """;

    private static readonly Lock Once = new();
    private static bool isPrepared;

    /// <summary>Sets the policy, the first time, and the limits.</summary>
    public static void Prepare(PhotographOptions options)
    {
        lock (Once)
        {
            if (!isPrepared) SetPolicy();
            isPrepared = true;
            ulong pixels = (ulong)options.MostPixels;
            ResourceLimits.Width = LongestSide;
            ResourceLimits.Height = LongestSide;
            ResourceLimits.Area = pixels * 2;
            ResourceLimits.Memory = pixels * BytesPerPixel * (ulong)options.DecodedAtOnce;
            ResourceLimits.MaxMemoryRequest = pixels * BytesPerPixel;
            ResourceLimits.Disk = 0;
            ResourceLimits.MaxProfileSize = LargestProfile;
            ResourceLimits.ListLength = 16;
            ResourceLimits.Thread = 1;
            ResourceLimits.Time = (ulong)Math.Max(1, options.LongestDecoding.TotalSeconds); // of one picture, not of the program
        }
    }

    /// <summary>Has the library read its policy, which it does when it first needs it, and makes sure that it holds.</summary>
    private static void RequirePolicy()
    {
        try
        {
            using var image = new MagickImage("xc:white"); // a plain picture, of no kind that is taken
        }
        catch (MagickPolicyErrorException)
        {
            return;
        }

        throw new InvalidOperationException("The decoders of photographs did not take their policy: no photograph may be decoded.");
    }

    private static void SetPolicy()
    {
        string folder = Directory.CreateTempSubdirectory("abaxial-decoders-").FullName;
        try
        {
            var files = ConfigurationFiles.Default;
            files.Policy.Data = Policy;
            files.Delegates.Data = "<delegatemap></delegatemap>";
            MagickNET.Initialize(files, folder); // the library takes its policy from files alone
            RequirePolicy();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}

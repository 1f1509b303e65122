namespace Abaxial.Web.People;

/// <summary>Where somebody is sent after signing in: only to a place of this clinic.</summary>
internal static class LocalAddress
{
    /// <summary>The address where it is a path of this site; the first page otherwise.</summary>
    public static string OrHome(string? address) => IsLocal(address) ? address! : "/";

    /// <summary>One slash and then neither slash nor backslash, which browsers read as another site; nothing that cannot be seen.</summary>
    public static bool IsLocal(string? address) =>
        address is ['/', ..] && (address.Length == 1 || address[1] is not ('/' or '\\')) && address.Length <= 2000 && !address.Any(letter => char.IsControl(letter) || letter == '\\');
}

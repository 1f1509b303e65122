using Abaxial.Data.People;

namespace Abaxial.Web.People;

/// <summary>How long sessions last.</summary>
internal static class SessionTimes
{
    /// <summary>Unused so long, a session is over.</summary>
    public static readonly TimeSpan Idle = TimeSpan.FromHours(12);

    /// <summary>However much it is used, it ends after so long.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(7);

    /// <summary>On a shared bench computer it ends with the working day.</summary>
    public static readonly TimeSpan LongestByPin = TimeSpan.FromHours(12);

    public static bool IsOpen(SessionRow session, DateTimeOffset now) => now < session.Ends && now - session.LastSeen < Idle;
}

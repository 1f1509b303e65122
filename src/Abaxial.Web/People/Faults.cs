using System.Collections.Immutable;
using Abaxial.Web.Hosting.Faults;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.People;

/// <summary>Why something about people was refused.</summary>
/// <param name="Word">A word by which pages find the sentence.</param>
/// <param name="At">The member that will not do, as a JSON Pointer.</param>
/// <param name="Accepted">What would do; the sentence that people read.</param>
internal sealed record Fault(string Word, string At, string Accepted);

/// <summary>Every refusal about people. What was typed is never repeated: it may be a password in the wrong field.</summary>
internal static class Faults
{
    /// <summary>One answer to everything that can be wrong with a try to sign in: it does not tell which accounts there are.</summary>
    public static readonly Fault SignIn = new("sign-in", "", "The name, the password or the code is not right, or there were too many tries. Check them; after many tries wait a quarter of an hour.");

    public static readonly Fault CodeUsed = new("code", "/code", "A code that was given out, is still valid and was not used.");
    public static readonly Fault Pin = new("pin", "/pin", "The PIN is not right, or there were too many tries: sign in with the password, then set a new one.");
    public static readonly Fault PinForm = new("pin-form", "/pin", "Four to twelve digits, neither all the same nor counting up or down.");
    public static readonly Fault PasswordShort = new("password-short", "/password", $"A password of {PasswordRules.Shortest} to {PasswordRules.Longest} characters.");
    public static readonly Fault PasswordCommon = new("password-common", "/password", "A password that is not among those tried first: no common one, no run of keys, no word over and over, not your name.");
    public static readonly Fault Name = new("name", "/name", "A name to sign in with: 2 to 40 letters, digits, dots, hyphens, that nobody else has.");
    public static readonly Fault DisplayName = new("display-name", "/displayName", "A name of 1 to 80 characters.");
    public static readonly Fault RoleWord = new("role", "/role", "submitter, scout, diagnostician, lead or administrator.");
    public static readonly Fault DeviceRole = new("device-role", "/role", "A role that your devices may have: scout, and for those at the bench also their own.");
    public static readonly Fault Areas = new("areas", "/areas", "At most 50 areas of at most 80 characters, one a line.");
    public static readonly Fault PersonId = new("person", "/id", "An id as d-01 that nobody had before: small letters, digits, hyphens.");
    public static readonly Fault ProofWanted = new("proof", "", "Show your password or passkey again: it was some time ago.");
    public static readonly Fault TotpCode = new("totp", "/code", "The six digits that the app shows now, not used before.");
    public static readonly Fault Passkey = new("passkey", "/credential", "A passkey of this clinic.");
    public static readonly Fault LastAdministrator = new("last-administrator", "", "One administrator who can sign in has to stay.");
    public static readonly Fault NoBench = new("bench", "", "A computer that was marked as a shared bench.");

    private static readonly ImmutableArray<Fault> All =
        [SignIn, CodeUsed, Pin, PinForm, PasswordShort, PasswordCommon, Name, DisplayName, RoleWord, DeviceRole, Areas, PersonId, ProofWanted, TotpCode, Passkey, LastAdministrator, NoBench];

    /// <summary>What a page says of a refusal; null for a word that is none of them.</summary>
    public static string? Sentence(string? word) => All.FirstOrDefault(fault => fault.Word == word)?.Accepted;

    /// <summary>The refusal as a problem document.</summary>
    public static IResult Answer(Fault fault, int status = StatusCodes.Status400BadRequest) => FaultAnswers.Refusal([new CaseProblem(fault.At, "(not repeated)", [fault.Accepted])], status);
}

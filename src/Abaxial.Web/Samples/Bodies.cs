using System.Text.Json;
using Abaxial.Samples;

namespace Abaxial.Web.Samples;

// The forms of what is sent, for the description of the API. What is sent is read member by member, more strictly than these say: see PlainPayload.

/// <summary>A sample to be taken in.</summary>
/// <param name="Host">tomato or potato.</param>
/// <param name="System">How it is grown or kept.</param>
/// <param name="Stage">How far the plants are.</param>
/// <param name="Purpose">home, market, seed or nursery.</param>
/// <param name="Noticed">The day the trouble was noticed.</param>
/// <param name="Cultivar">The cultivar.</param>
/// <param name="Area">Where it comes from, coarsely; worked out of the place where it is left out.</param>
/// <param name="Place">The exact place; it is sealed, and the entry holds a coarse area.</param>
/// <param name="Submitter">Id of the person who sent it; one is made where it is left out.</param>
/// <param name="Says">What the sender says; it is sealed.</param>
/// <param name="Promised">The moment by which an answer was promised.</param>
/// <param name="Cases">The plants or lots, each with looks and prior factors as a case file holds them.</param>
internal sealed record TakeInBody(
    string Host,
    string? System = null,
    string? Stage = null,
    string? Purpose = null,
    DateOnly? Noticed = null,
    string? Cultivar = null,
    Area? Area = null,
    PlaceBody? Place = null,
    string? Submitter = null,
    string? Says = null,
    DateTimeOffset? Promised = null,
    IReadOnlyList<CaseBody>? Cases = null);

/// <summary>An exact place, WGS 84.</summary>
internal sealed record PlaceBody(double Latitude, double Longitude, double? UncertaintyMeters = null);

/// <summary>A plant or lot that is taken in.</summary>
internal sealed record CaseBody(IReadOnlyList<JsonElement>? Looks = null, IReadOnlyList<JsonElement>? PriorFactors = null);

/// <summary>Something that is said of a sample.</summary>
/// <param name="Kind">look, prior-factor, photograph, photograph-marked, diagnosis, message, handed-over, snoozed, closed or reopened.</param>
/// <param name="Version">The version of the payload: 1.</param>
/// <param name="Payload">As the ledger holds it, with plain text in place of a seal; a diagnosis without what the engine said.</param>
/// <param name="Made">The moment it happened; left out for now.</param>
/// <param name="Heads">The newest entries that its author had seen; left out where they had seen all.</param>
internal sealed record EntryBody(string Kind, int Version, JsonElement Payload, DateTimeOffset? Made = null, IReadOnlyList<string>? Heads = null);

/// <summary>A correction.</summary>
/// <param name="Why">Why.</param>
/// <param name="Version">The version of the payload: 1; left out where there is none.</param>
/// <param name="Payload">What stands there from now on; left out where the entry is struck.</param>
/// <param name="Made">The moment of the correction; left out for now.</param>
/// <param name="Heads">As in <see cref="EntryBody"/>.</param>
internal sealed record CorrectionBody(string Why, int? Version = null, JsonElement? Payload = null, DateTimeOffset? Made = null, IReadOnlyList<string>? Heads = null);

/// <summary>What a device wrote.</summary>
/// <param name="Entries">Entries of its chain, in any order.</param>
/// <param name="Texts">The texts that they seal, with their salts in base 64.</param>
internal sealed record MergeBody(IReadOnlyList<JsonElement> Entries, IReadOnlyList<TextBody>? Texts = null);

/// <summary>A text that an entry seals.</summary>
internal sealed record TextBody(string Person, string Salt, string Text);

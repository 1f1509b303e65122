using System.Collections.Frozen;
using System.Collections.Immutable;
using Abaxial.Panel.Drawings.States;

namespace Abaxial.Panel.Drawings;

/// <summary>All drawings, found by character and state. Drawn when first asked for, then kept. May be used from several threads.</summary>
public static class StateDrawings
{
    private static readonly ImmutableArray<Sketch> Sketches =
    [
        .. Organs.All, .. Fields.All, .. Plants.All, .. LeafChanges.All, .. LeafSpots.All, .. LeafGrowth.All, .. Insects.All, .. Stems.All, .. Roots.All,
        .. Fruits.All, .. Tubers.All, .. CutTubers.All, .. Spores.All, .. Sporangia.All, .. Bench.All, .. Surfaces.All,
    ];

    private static readonly FrozenDictionary<(string Character, string State), Lazy<StateDrawing>> Drawn = Sketches.ToFrozenDictionary(
        sketch => (sketch.Character, sketch.State), sketch => new Lazy<StateDrawing>(() => new StateDrawing(sketch.Character, sketch.State, sketch.Elements())));

    /// <summary>Every drawing, by kind of organ.</summary>
    public static IEnumerable<StateDrawing> All => Sketches.Select(sketch => Drawn[(sketch.Character, sketch.State)].Value);

    /// <summary>The drawing of a state, or null: states that cannot be drawn are named in <see cref="Undrawn"/>.</summary>
    public static StateDrawing? Find(string characterId, string stateId) => Drawn.TryGetValue((characterId, stateId), out var drawing) ? drawing.Value : null;
}

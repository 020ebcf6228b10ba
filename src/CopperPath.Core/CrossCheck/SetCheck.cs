using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.CrossCheck;

/// <summary>
/// Holds the files of a board against each other before anything is judged: each may be sound by itself and yet be
/// shifted, mirrored, cut short, exchanged or of another board. docs/cross-check.md lists the checks with their evidence.
/// </summary>
internal static class SetCheck
{
    /// <returns>Remarks in a fixed order; those that leave the copper in doubt say so.</returns>
    public static IReadOnlyList<Diagnostic> Run(FabricationSet set)
    {
        (int vias, IReadOnlyList<PointNm> dead) = DeadEnds.Of(set.Nets);
        return
        [
            .. LayerPresence.Run(set),
            .. JobFileAgreement.Run(set),
            .. OutlineAgreement.Run(set),
            .. DrillRegistration.Run(set),
            .. HoleCopper.Run(set),
            .. LandsWithoutHole.Run(set),
            .. DeadEnds.Run(set, vias, dead),
            .. EqualLayers.Run(set, vias == 0 ? 0 : (double)dead.Count / vias),
            .. MaskRegistration.Run(set),
            .. NetlistCounts.Run(set),
        ];
    }
}

using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>What number plates keep clear of.</summary>
/// <param name="Extents">What each call-out is about, in the order of the spots; null where that is its spot.</param>
/// <param name="Marks">Marks that must be seen, such as vias over their limit.</param>
internal sealed record CallOutObstacles(IReadOnlyList<SKRect?> Extents, IReadOnlyList<SKRect> Marks)
{
    /// <summary>True when a plate covers nothing that it or another one points at.</summary>
    public bool LeaveFree(SKRect plate) =>
        Extents.All(extent => extent is not { } box || !box.IntersectsWith(plate)) && Marks.All(mark => !mark.IntersectsWith(plate));
}

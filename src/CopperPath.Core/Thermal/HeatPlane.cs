using CopperPath.Electrical;

namespace CopperPath.Thermal;

/// <summary>
/// One level of nodes through the thickness of the board: a copper layer with half of the laminate on either side of
/// it, or a level inside a thick laminate.
/// </summary>
/// <param name="CopperLayer">Layer number, 1 = top; 0 for a level inside the laminate.</param>
/// <param name="CopperM">Thickness of its copper, metres; 0 inside the laminate.</param>
/// <param name="LaminateM">Thickness of laminate that conducts sideways with it, metres.</param>
/// <param name="GapBelowM">Distance through laminate to the next level, metres; 0 at the last.</param>
public sealed record HeatPlane(int CopperLayer, double CopperM, double LaminateM, double GapBelowM)
{
    /// <summary>The levels of a build-up, top to bottom.</summary>
    /// <param name="stack">Copper and dielectric thicknesses.</param>
    /// <param name="baseM">Laminate below the last copper layer, metres: the carrier of a board with one copper layer; else 0.</param>
    /// <param name="thickestGapM">Laminates thicker than this get levels of their own, metres, positive.</param>
    public static IReadOnlyList<HeatPlane> Of(Stackup stack, double baseM, double thickestGapM) => LevelSet
        .Of(stack, baseM, [.. Enumerable.Repeat(double.PositiveInfinity, stack.ThicknessM.Count)], thickestGapM).In(stack, baseM);
}

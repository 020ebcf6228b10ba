using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>The wall of a plated hole in columns of cells.</summary>
internal static class BarrelWall
{
    /// <summary>Shares of the wall by columns: those of the ring between its outer and its inner face.</summary>
    public static IReadOnlyList<(int Column, double Share)> SharesOf(TreeCells cells, Barrel barrel, Stackup stack)
    {
        double outsideToolNm = stack.WallOutsideToolM * Units.NmPerM;
        double insideToolNm = outsideToolNm - (stack.PlatingM * Units.NmPerM);
        IEnumerable<PointNm[]> rings = barrel.Feature.IsRoundHole && (barrel.Feature.ToolDiameterNm / 2.0) + insideToolNm > 0
            ? [HoleOutline.Of(barrel.Feature, outsideToolNm), [.. HoleOutline.Of(barrel.Feature, insideToolNm).Reverse()]]
            : [barrel.Outline];
        return AreaShares.Of(cells, rings);
    }
}

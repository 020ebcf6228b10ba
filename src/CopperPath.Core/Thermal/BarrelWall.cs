using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>The wall of a plated hole in columns of cells.</summary>
internal static class BarrelWall
{
    /// <summary>Shares of the wall by columns: those of the ring of its thickness, which is where its heat reaches the layers.</summary>
    public static IReadOnlyList<(int Column, double Share)> SharesOf(TreeCells cells, Barrel barrel, Stackup stack)
    {
        double outsideNm = Units.NmFromMetres(stack.WallOutsideToolM);
        double insideNm = outsideNm - Units.NmFromMetres(stack.PlatingM);
        PointNm[] outside = HoleOutline.Of(barrel.Feature, outsideNm);
        return AreaShares.Of(cells, barrel.Feature.IsRoundHole && (barrel.Feature.ToolDiameterNm / 2.0) + insideNm > 0
            ? [outside, [.. HoleOutline.Of(barrel.Feature, insideNm).Reverse()]] : [outside]);
    }
}

using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>The wall of a plated hole in columns of cells.</summary>
internal static class BarrelWall
{
    /// <summary>Thickness the wall is taken to have where its place matters: as thick as plating commonly is, metres (common practice, no source).</summary>
    private const double ThicknessM = 25e-6;

    /// <summary>Shares of the wall by columns: those of the ring just inside the drilled hole.</summary>
    public static IReadOnlyList<(int Column, double Share)> SharesOf(TreeCells cells, Barrel barrel)
    {
        double growthNm = -Units.NmFromMetres(ThicknessM);
        return AreaShares.Of(cells, barrel.Feature.IsRoundHole && (barrel.Feature.ToolDiameterNm / 2.0) + growthNm > 0
            ? [barrel.Outline, [.. HoleOutline.Of(barrel.Feature, growthNm).Reverse()]] : [barrel.Outline]);
    }
}

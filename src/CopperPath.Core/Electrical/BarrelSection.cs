using CopperPath.Artwork;
using CopperPath.Quantities;

namespace CopperPath.Electrical;

/// <summary>
/// Cross-section of the copper on the wall of a plated hole: A = pi (d + t) t for a finished diameter d, the wall's inner
/// face; A = pi (D - t) t for the diameter D of the drill; a slot adds its two straight walls.
/// </summary>
public static class BarrelSection
{
    /// <param name="feature">The plated feature.</param>
    /// <param name="stack">Thickness of the wall, and which of its faces the tool's diameter is.</param>
    /// <returns>Section in square metres.</returns>
    public static double AreaM2(DrilledFeature feature, Stackup stack) => MeanCircumferenceM(feature, stack) * stack.PlatingM;

    /// <summary>Length of the wall's middle line around the hole, metres.</summary>
    public static double MeanCircumferenceM(DrilledFeature feature, Stackup stack)
    {
        double straightNm = 0;
        for (int i = 1; i < feature.Path.Length; i++)
        {
            straightNm += feature.Path[i - 1].DistanceNmTo(feature.Path[i]);
        }

        double meanDiameterM = Units.MetresFromNm(feature.ToolDiameterNm) + (2 * stack.WallOutsideToolM) - stack.PlatingM;
        return (Math.PI * meanDiameterM) + (2 * Units.MetresFromNm(straightNm));
    }
}

using CopperPath.Artwork;
using CopperPath.Quantities;

namespace CopperPath.Electrical;

/// <summary>
/// Cross-section of the copper on the wall of a plated hole. The tool diameter is taken as the finished hole,
/// the wall's inner face: A = pi (d + t) t; a slot adds its two straight walls.
/// </summary>
public static class BarrelSection
{
    /// <param name="feature">The plated feature.</param>
    /// <param name="platingM">Wall thickness, metres.</param>
    /// <returns>Section in square metres.</returns>
    public static double AreaM2(DrilledFeature feature, double platingM) => MeanCircumferenceM(feature, platingM) * platingM;

    /// <summary>Length of the wall's middle line around the hole, metres.</summary>
    public static double MeanCircumferenceM(DrilledFeature feature, double platingM)
    {
        double straightNm = 0;
        for (int i = 1; i < feature.Path.Length; i++)
        {
            straightNm += feature.Path[i - 1].DistanceNmTo(feature.Path[i]);
        }

        return (Math.PI * (Units.MetresFromNm(feature.ToolDiameterNm) + platingM)) + (2 * Units.MetresFromNm(straightNm));
    }
}

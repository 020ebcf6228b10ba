namespace CopperPath.Thermal;

/// <summary>
/// Mean film coefficient of a plate in still air. Vertical: Churchill and Chu's laminar form, length = height.
/// Horizontal: McAdams' 0.54 and 0.27 Ra^(1/4), length = area over perimeter. Forms as in Incropera and DeWitt,
/// chapter 9; from memory. Correlations of this kind scatter by 15 to 25 % against measurements (from memory).
/// </summary>
public static class NaturalConvection
{
    private const double GravityMPerS2 = 9.80665;

    /// <summary>Film coefficient, watts per square metre and kelvin; 0 without a difference on a horizontal plate.</summary>
    /// <param name="posture">How the face meets the air.</param>
    /// <param name="riseK">Face less air, kelvin; a face cooler than the air sends it the other way round.</param>
    /// <param name="airK">Air away from the board, kelvin.</param>
    /// <param name="lengthM">Height of a vertical plate, area over perimeter of a horizontal one, metres, positive.</param>
    public static double FilmWPerM2K(FacePosture posture, double riseK, double airK, double lengthM)
    {
        Air air = Air.At(airK + (riseK / 2));
        double grashof = GravityMPerS2 * air.ExpansionPerK * Math.Abs(riseK) * Math.Pow(lengthM, 3)
            / (air.KinematicViscosityM2PerS * air.KinematicViscosityM2PerS);
        double fourthRoot = Math.Sqrt(Math.Sqrt(grashof * air.Prandtl));
        bool isStable = posture == FacePosture.Down ? riseK >= 0 : riseK < 0;
        double nusselt = posture == FacePosture.Vertical
            ? 0.68 + (0.670 * fourthRoot / Math.Pow(1 + Math.Pow(0.492 / air.Prandtl, 9.0 / 16), 4.0 / 9))
            : (isStable ? 0.27 : 0.54) * fourthRoot;
        return nusselt * air.ConductivityWPerMK / lengthM;
    }
}

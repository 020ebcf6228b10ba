namespace CopperPath.Thermal;

/// <summary>
/// Mean film coefficient of a plate in still air. Vertical: Churchill and Chu's laminar form, length = height.
/// Horizontal: McAdams' 0.54 and 0.27 Ra^(1/4), length = area over perimeter. Forms and their ranges as in Incropera and
/// DeWitt, chapter 9; from memory. Correlations of this kind scatter by 15 to 25 % against measurements (from memory).
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
        double fourthRoot = Math.Sqrt(Math.Sqrt(Rayleigh(air, riseK, lengthM)));
        double nusselt = posture == FacePosture.Vertical
            ? 0.68 + (0.670 * fourthRoot / Math.Pow(1 + Math.Pow(0.492 / air.Prandtl, 9.0 / 16), 4.0 / 9))
            : (IsStable(posture, riseK) ? 0.27 : 0.54) * fourthRoot;
        return nusselt * air.ConductivityWPerMK / lengthM;
    }

    /// <summary>
    /// The Rayleigh number of a face beside the range its form is published for: Churchill and Chu up to 1e9, McAdams' 0.54
    /// from 1e4 to 1e7 and 0.27 from 1e5 to 1e10. Beyond its range a form is still used, having no better one beside it.
    /// </summary>
    /// <inheritdoc cref="FilmWPerM2K" path="/param"/>
    public static StillAir At(FacePosture posture, double riseK, double airK, double lengthM)
    {
        double rayleigh = Rayleigh(Air.At(airK + (riseK / 2)), riseK, lengthM);
        return posture == FacePosture.Vertical ? new StillAir("Churchill and Chu, laminar", lengthM, rayleigh, 0, 1e9)
            : IsStable(posture, riseK) ? new StillAir("McAdams, 0.27", lengthM, rayleigh, 1e5, 1e10)
            : new StillAir("McAdams, 0.54", lengthM, rayleigh, 1e4, 1e7);
    }

    private static double Rayleigh(Air air, double riseK, double lengthM) => air.Prandtl
        * GravityMPerS2 * air.ExpansionPerK * Math.Abs(riseK) * Math.Pow(lengthM, 3)
        / (air.KinematicViscosityM2PerS * air.KinematicViscosityM2PerS);

    /// <summary>True where warm air lies above cold: it stays.</summary>
    private static bool IsStable(FacePosture posture, double riseK) => posture == FacePosture.Down ? riseK >= 0 : riseK < 0;
}

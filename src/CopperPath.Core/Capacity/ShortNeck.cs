using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>
/// What a chart for a long conductor leaves of its rise when the conductor is a short neck between copper that stays cool: a fin
/// that is heated evenly along its length and held at both ends (F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass
/// Transfer, chapter 3, extended surfaces; from memory).
/// </summary>
/// <remarks>
/// The long conductor gives g theta_long watts per metre to its surroundings, and makes I^2 rho / A; that fixes g. With
/// k A theta'' = g theta - I^2 rho / A the rise falls off from the middle over lambda = sqrt(k A / g) = (A / I) sqrt(k theta_long / rho),
/// and theta = 0 at both ends leaves theta_mid = theta_long (1 - 1 / cosh(L / 2 lambda)) in the middle of a neck of length L.
/// </remarks>
public static class ShortNeck
{
    /// <summary>Where the figure comes from and what must hold.</summary>
    public static EstimateBasis Basis { get; } = new(
        "evenly heated fin with its ends held (Incropera and DeWitt, chapter 3; from memory), its loss to the surroundings that of the chart relation",
        "the copper at both ends stays as it would without the neck: add its own rise; the crowding of current in it and what it warms there are left out, "
        + "so a neck shorter than about its width is warmer than this; screening only");

    /// <summary>Length over which the rise of a conductor falls off along it, metres.</summary>
    /// <param name="currentA">Current, amperes, positive.</param>
    /// <param name="sectionM2">Copper, square metres, positive.</param>
    /// <param name="longRiseK">Rise of a long conductor of this section by the relation, kelvin, not negative.</param>
    /// <param name="resistivityOhmM">Of the copper, ohm metres, positive.</param>
    /// <param name="conductivityWPerMK">Thermal conductivity of the copper, watts per metre and kelvin, positive.</param>
    public static double HeatLengthM(double currentA, double sectionM2, double longRiseK, double resistivityOhmM, double conductivityWPerMK) =>
        Checked.Positive(sectionM2) / Checked.Positive(currentA)
        * Math.Sqrt(Checked.Positive(conductivityWPerMK) * Checked.NotNegative(longRiseK) / Checked.Positive(resistivityOhmM));

    /// <summary>Rise in the middle of a neck above its ends, kelvin.</summary>
    /// <param name="longRiseK">Rise of a long conductor, kelvin, not negative.</param>
    /// <param name="lengthM">Length of the neck, metres, not negative.</param>
    /// <param name="heatLengthM">Length over which its rise falls off, metres, positive.</param>
    public static double RiseK(double longRiseK, double lengthM, double heatLengthM) =>
        Checked.NotNegative(longRiseK) * (1 - (1 / Math.Cosh(Checked.NotNegative(lengthM) / (2 * Checked.Positive(heatLengthM)))));
}

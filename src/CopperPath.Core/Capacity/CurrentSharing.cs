using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>One frequency beside the copper that is to carry it.</summary>
/// <param name="FrequencyHz">Hertz.</param>
/// <param name="DepthM">Skin depth, metres.</param>
/// <param name="FillsCopper">The wave still fills the copper: thickness not above the skin depth.</param>
public sealed record SkinNote(double FrequencyHz, double DepthM, bool FillsCopper);

/// <summary>
/// Whether direct-current sharing still tells where alternating current runs. Within the thickness it does while copper is
/// no thicker than the skin depth. Across the width it ends far earlier: current takes the path of least inductance, close
/// over its return, once inductive drop exceeds resistive drop.
/// </summary>
public static class CurrentSharing
{
    /// <summary>Skin depth against thickness at a switching frequency and its harmonics.</summary>
    /// <param name="thicknessM">Copper, metres.</param>
    /// <param name="switchingHz">Fundamental, hertz, positive.</param>
    /// <param name="copperK">Temperature of the copper, kelvin.</param>
    /// <param name="harmonics">How many, the fundamental included.</param>
    public static IReadOnlyList<SkinNote> Of(double thicknessM, double switchingHz, double copperK, int harmonics)
    {
        double resistivity = CopperMaterial.Iacs.ResistivityOhmM(copperK);
        return [.. Enumerable.Range(1, harmonics).Select(n =>
        {
            double depth = SkinDepth.DepthM(n * switchingHz, resistivity);
            return new SkinNote(n * switchingHz, depth, thicknessM <= depth);
        })];
    }

    /// <summary>
    /// Frequency from which a strip over its return no longer shares current like direct current across its width,
    /// hertz: where the reactance of the loop, mu0 h / w per length, equals the resistance of strip and plane,
    /// rho / w (1 / t + 1 / tp). The widths cancel. An order of magnitude, from the definitions.
    /// </summary>
    /// <param name="heightM">Distance to the plane that carries the return, metres.</param>
    /// <param name="thicknessM">Strip, metres.</param>
    /// <param name="planeM">Plane, metres.</param>
    /// <param name="copperK">Temperature of the copper, kelvin.</param>
    public static double LateralLimitHz(double heightM, double thicknessM, double planeM, double copperK) =>
        CopperMaterial.Iacs.ResistivityOhmM(copperK) * ((1 / Checked.Positive(thicknessM)) + (1 / Checked.Positive(planeM)))
        / (2 * Math.PI * PhysicalConstants.Mu0HPerM * Checked.Positive(heightM));
}

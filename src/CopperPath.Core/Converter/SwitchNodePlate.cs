using CopperPath.Quantities;

namespace CopperPath.Converter;

/// <summary>
/// The capacitor a switch node forms with the plane beneath it: no limit is published, so its numbers serve to compare
/// layouts, not to pass or fail them.
/// </summary>
/// <param name="CapacitanceF">Capacitance, farads.</param>
/// <param name="Basis">What it rests on.</param>
public sealed record SwitchNodePlate(double CapacitanceF, EstimateBasis Basis)
{
    private static readonly EstimateBasis s_basis = new(
        "parallel plates, C = eps0 eps_r A / d", "no fringing field, so on the low side; plane under the whole area");

    /// <param name="areaM2">Area of the node over the plane, square metres, not negative.</param>
    /// <param name="distanceM">Dielectric between them, metres, positive.</param>
    /// <param name="relativePermittivity">Relative permittivity of the dielectric, at least 1; FR-4 about 4.3.</param>
    public static SwitchNodePlate Of(double areaM2, double distanceM, double relativePermittivity)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(relativePermittivity, 1);
        return new SwitchNodePlate(
            PhysicalConstants.Epsilon0FPerM * relativePermittivity * Checked.NotNegative(areaM2) / Checked.Positive(distanceM), s_basis);
    }

    /// <summary>Current pushed into the plane while the node swings, amperes.</summary>
    public double DisplacementCurrentA(double swingV, double edgeS) =>
        CapacitanceF * Checked.NotNegative(swingV) / Checked.Positive(edgeS);

    /// <summary>Power lost charging and discharging through the switches, watts: <c>C V^2 f</c>.</summary>
    public double SwitchingLossW(double swingV, double switchingHz) =>
        CapacitanceF * Checked.NotNegative(swingV) * swingV * Checked.NotNegative(switchingHz);
}

using CopperPath.Quantities;

namespace CopperPath.Converter;

/// <summary>Current that charges capacitors along a straight ramp.</summary>
public static class Inrush
{
    private static readonly EstimateBasis s_basis = new(
        "definition of capacitance, I = C dV/dt", "straight voltage ramp, constant capacitance, no load current");

    /// <param name="capacitanceF">Capacitance charged, farads, positive.</param>
    /// <param name="stepV">Voltage gained, volts, not negative.</param>
    /// <param name="rampS">Duration of the ramp, seconds, positive.</param>
    public static CurrentEstimate Current(double capacitanceF, double stepV, double rampS) =>
        new(Checked.Positive(capacitanceF) * Checked.NotNegative(stepV) / Checked.Positive(rampS), s_basis);
}

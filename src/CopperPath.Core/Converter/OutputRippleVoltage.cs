using CopperPath.Quantities;

namespace CopperPath.Converter;

/// <summary>
/// The two parts of the ripple voltage on the output capacitors, peak to peak. They peak at different moments, so their
/// sum is an upper bound.
/// </summary>
/// <param name="ResistiveV">Ripple current through the equivalent series resistance, volts.</param>
/// <param name="CapacitiveV">Ripple charge on the capacitance, volts; exact for a triangular ripple.</param>
/// <param name="Basis">What the numbers rest on.</param>
public sealed record OutputRippleVoltage(double ResistiveV, double CapacitiveV, EstimateBasis Basis)
{
    private static readonly EstimateBasis s_basis = new(
        "charge of a triangular wave: dI / (8 N f C), and dI times the series resistance",
        "summed inductor ripple is triangular and flows in the capacitors alone; no series inductance");

    /// <summary>Ripple of a stage on a bank of capacitors.</summary>
    /// <param name="stage">The converter.</param>
    /// <param name="capacitanceF">Capacitance of the bank at its bias, farads, positive.</param>
    /// <param name="seriesResistanceOhm">Equivalent series resistance of the bank, ohms, not negative.</param>
    public static OutputRippleVoltage Of(BuckStage stage, double capacitanceF, double seriesResistanceOhm) => new(
        stage.OutputRippleA * Checked.NotNegative(seriesResistanceOhm),
        stage.OutputRippleA / (8 * stage.Phases * stage.SwitchingHz * Checked.Positive(capacitanceF)),
        s_basis);
}

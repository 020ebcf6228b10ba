using CopperPath.Quantities;

namespace CopperPath.Converter;

/// <summary>
/// Inductance of the loop of input capacitor and switches over its return plane. No limit is published, so the number
/// serves to compare layouts, not to pass or fail them.
/// </summary>
public static class HotLoop
{
    /// <summary>Below this ratio of width to height the formula is called out of range. The project's own choice.</summary>
    private const double LeastWidthToHeight = 10;

    private static readonly EstimateBasis s_basis = new(
        "wide parallel strips, L = mu0 h l / w",
        "strip much wider than its height above the plane, uniform current, thin copper; parts' own inductance not included");

    /// <param name="heightM">Dielectric between strip and plane, metres, positive.</param>
    /// <param name="lengthM">Length of the strip along the current, metres, positive.</param>
    /// <param name="widthM">Width of the strip across the current, metres, positive.</param>
    public static InductanceEstimate Inductance(double heightM, double lengthM, double widthM)
    {
        double inductanceH = PhysicalConstants.Mu0HPerM * Checked.Positive(heightM) * Checked.Positive(lengthM) / Checked.Positive(widthM);
        return new InductanceEstimate(inductanceH, s_basis.WithReasons(widthM >= LeastWidthToHeight * heightM ? []
            : [$"the width of {QuantityText.Length(widthM)} is less than ten times the height of {QuantityText.Length(heightM)}"]));
    }
}

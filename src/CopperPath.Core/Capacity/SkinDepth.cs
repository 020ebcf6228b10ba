using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>How deep an alternating current reaches into copper.</summary>
public static class SkinDepth
{
    /// <summary>
    /// Depth at which the current density of a sine wave has fallen to 1/e in a thick conductor, metres:
    /// <c>sqrt(rho / (pi f mu0))</c>. Copper thinner than this carries the wave in its whole thickness.
    /// </summary>
    /// <param name="frequencyHz">Frequency, hertz, positive.</param>
    /// <param name="resistivityOhmM">Resistivity at the conductor's temperature, ohm metres, positive.</param>
    public static double DepthM(double frequencyHz, double resistivityOhmM) =>
        Math.Sqrt(Checked.Positive(resistivityOhmM) / (Math.PI * Checked.Positive(frequencyHz) * PhysicalConstants.Mu0HPerM));
}

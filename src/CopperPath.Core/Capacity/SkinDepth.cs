using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>How deep an alternating current reaches into copper.</summary>
public static class SkinDepth
{
    /// <summary>Magnetic constant, henries per metre (CODATA 2018).</summary>
    private const double Mu0HPerM = 1.25663706212e-6;

    /// <summary>
    /// Depth at which the current density of a sine wave has fallen to 1/e in a thick conductor, metres:
    /// <c>sqrt(rho / (pi f mu0))</c>. Copper thinner than this carries the wave in its whole thickness.
    /// </summary>
    /// <param name="frequencyHz">Frequency, hertz, positive.</param>
    /// <param name="resistivityOhmM">Resistivity at the conductor's temperature, ohm metres, positive.</param>
    public static double DepthM(double frequencyHz, double resistivityOhmM) =>
        Math.Sqrt(Checked.Positive(resistivityOhmM) / (Math.PI * Checked.Positive(frequencyHz) * Mu0HPerM));
}

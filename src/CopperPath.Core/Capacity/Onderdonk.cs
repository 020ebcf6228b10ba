using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>
/// Melting of copper by a short current, no heat lost: <c>33 (I/A)^2 t = log10(1 + (Tm - Ta)/(234 + Ta))</c> with A in
/// circular mils, after Onderdonk; from memory.
/// </summary>
public static class Onderdonk
{
    private const double MeltingC = 1083;
    private const double OffsetC = 234;
    private const double Constant = 33;
    private const double M2PerCircularMil = Math.PI / 4 * Units.M2PerSquareMil;
    private const double LongestS = 5;

    private static readonly EstimateBasis s_basis = new(
        "Onderdonk's equation, from memory",
        "melting, no heat lost to the board, so for seconds at most; the board is ruined long before: "
        + "use the adiabatic limit at 130 to 160 °C for design");

    /// <summary>Current that melts a section in a time.</summary>
    /// <param name="sectionM2">Section, square metres, positive.</param>
    /// <param name="timeS">Duration, seconds, positive; the formula holds to about 5 s.</param>
    /// <param name="ambientK">Temperature before, kelvin, below melting.</param>
    public static CurrentEstimate Current(double sectionM2, double timeS, double ambientK)
    {
        double circularMils = Checked.Positive(sectionM2) / M2PerCircularMil;
        double currentA = circularMils * Math.Sqrt(Exponent(ambientK) / (Constant * Checked.Positive(timeS)));
        return new CurrentEstimate(currentA, BasisOf(timeS));
    }

    /// <summary>Time in which a current melts a section.</summary>
    /// <param name="sectionM2">Section, square metres, positive.</param>
    /// <param name="currentA">Current, amperes, positive.</param>
    /// <param name="ambientK">Temperature before, kelvin, below melting.</param>
    public static TimeEstimate Time(double sectionM2, double currentA, double ambientK)
    {
        double perCircularMil = Checked.Positive(currentA) / (Checked.Positive(sectionM2) / M2PerCircularMil);
        double timeS = Exponent(ambientK) / (Constant * perCircularMil * perCircularMil);
        return new TimeEstimate(timeS, BasisOf(timeS));
    }

    private static double Exponent(double ambientK)
    {
        double ambientC = ambientK - Units.ZeroCelsiusK;
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(ambientC, MeltingC, nameof(ambientK));
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(ambientC, -OffsetC, nameof(ambientK));
        return Math.Log10(1 + ((MeltingC - ambientC) / (OffsetC + ambientC)));
    }

    private static EstimateBasis BasisOf(double timeS) => s_basis.WithReasons(timeS <= LongestS ? []
        : [$"{QuantityText.Time(timeS)} is longer than {QuantityText.Time(LongestS)}: heat lost to the board is no longer small"]);
}

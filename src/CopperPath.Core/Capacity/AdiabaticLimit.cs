using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>
/// Short current that heats copper from one temperature to another, no heat lost:
/// <c>I = 226 A sqrt(ln((234.5 + Tf)/(234.5 + Ti)) / t)</c> with A in square millimetres; the form of IEC 60949,
/// from memory.
/// </summary>
public static class AdiabaticLimit
{
    private const double ConstantAPerMm2 = 226;
    private const double OffsetC = 234.5;
    private const double Mm2PerM2 = 1e6;
    private const double LongestS = 5;

    private static readonly EstimateBasis s_basis = new(
        "adiabatic form of IEC 60949 for copper, from memory",
        "no heat lost to the board, so on the safe side, increasingly for longer times");

    /// <summary>Current that reaches the final temperature in a time.</summary>
    /// <param name="sectionM2">Section, square metres, positive.</param>
    /// <param name="timeS">Duration, seconds, positive.</param>
    /// <param name="initialK">Temperature before, kelvin.</param>
    /// <param name="finalK">Temperature after, kelvin, above the one before.</param>
    public static CurrentEstimate Current(double sectionM2, double timeS, double initialK, double finalK)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(finalK, Checked.Positive(initialK));
        double initialC = initialK - Units.ZeroCelsiusK;
        double finalC = finalK - Units.ZeroCelsiusK;
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(initialC, -OffsetC, nameof(initialK));
        double currentA = ConstantAPerMm2 * Checked.Positive(sectionM2) * Mm2PerM2
            * Math.Sqrt(Math.Log((OffsetC + finalC) / (OffsetC + initialC)) / Checked.Positive(timeS));
        return new CurrentEstimate(currentA, s_basis.WithReasons(timeS <= LongestS ? []
            : [$"{QuantityText.Time(timeS)} is longer than {QuantityText.Time(LongestS)}: heat lost to the board is no longer small"]));
    }

    /// <summary>
    /// Integral of the squared current that heats a section between two temperatures, ampere squared seconds.
    /// </summary>
    /// <param name="sectionM2">Section, square metres, positive.</param>
    /// <param name="initialK">Temperature before, kelvin.</param>
    /// <param name="finalK">Temperature after, kelvin, above the one before.</param>
    public static double SquaredCurrentSeconds(double sectionM2, double initialK, double finalK) =>
        Math.Pow(Current(sectionM2, 1, initialK, finalK).CurrentA, 2);

    /// <summary>Temperature a section reaches, kelvin; above 1356 K it has melted.</summary>
    /// <param name="sectionM2">Section, square metres, positive.</param>
    /// <param name="squaredCurrentSeconds">Integral of the squared current, ampere squared seconds, not negative.</param>
    /// <param name="initialK">Temperature before, kelvin.</param>
    public static double FinalK(double sectionM2, double squaredCurrentSeconds, double initialK)
    {
        double offsetK = OffsetC - Units.ZeroCelsiusK;
        double capacity = Math.Pow(ConstantAPerMm2 * Checked.Positive(sectionM2) * Mm2PerM2, 2);
        return ((Checked.Positive(initialK) + offsetK) * Math.Exp(Checked.NotNegative(squaredCurrentSeconds) / capacity)) - offsetK;
    }
}

using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>
/// Current, section and temperature rise of a board conductor by the curve fit of IPC-2221:
/// <c>I = k dT^0.44 A^0.725</c> with A in square mils, k = 0.048 on a face and 0.024 inside.
/// </summary>
/// <remarks>
/// The formula is the one commonly quoted; the standard itself was not read for this project. The curves go back to
/// measurements of 1956, and the internal constant is half the external one by decision, not by measurement. Neither
/// planes, nor board thickness, nor length enter.
/// </remarks>
public static class Ipc2221
{
    private const double ExternalK = 0.048;
    private const double InternalK = 0.024;
    private const double RiseExponent = 0.44;
    private const double SectionExponent = 0.725;

    // The extent of the charts as commonly quoted; from memory, not read in the standard.
    private const double LeastRiseK = 10;
    private const double MostRiseK = 100;
    private const double MostExternalA = 35;
    private const double MostInternalA = 17.5;
    private const double MostSectionSquareMil = 700;

    private static readonly EstimateBasis s_external = Basis("on a face of the board");
    private static readonly EstimateBasis s_internal = Basis("inside the board");

    /// <summary>Temperature rise of a conductor.</summary>
    /// <param name="currentA">Current, amperes, not negative.</param>
    /// <param name="sectionM2">Section of the copper, square metres, positive.</param>
    /// <param name="placement">On a face or inside.</param>
    public static RiseEstimate Rise(double currentA, double sectionM2, ConductorPlacement placement)
    {
        double riseK = RiseK(currentA, sectionM2, placement);
        return new RiseEstimate(riseK, BasisOf(currentA, riseK, sectionM2, placement));
    }

    /// <summary>The number alone, for searches over many conductors.</summary>
    /// <inheritdoc cref="Rise"/>
    public static double RiseK(double currentA, double sectionM2, ConductorPlacement placement)
    {
        double scale = K(placement) * Math.Pow(SquareMils(sectionM2), SectionExponent);
        return Math.Pow(Checked.NotNegative(currentA) / scale, 1 / RiseExponent);
    }

    /// <summary>Current that gives a temperature rise.</summary>
    /// <param name="riseK">Rise above ambient, kelvin, not negative.</param>
    /// <param name="sectionM2">Section of the copper, square metres, positive.</param>
    /// <param name="placement">On a face or inside.</param>
    public static CurrentEstimate Current(double riseK, double sectionM2, ConductorPlacement placement)
    {
        double currentA = K(placement) * Math.Pow(Checked.NotNegative(riseK), RiseExponent)
            * Math.Pow(SquareMils(sectionM2), SectionExponent);
        return new CurrentEstimate(currentA, BasisOf(currentA, riseK, sectionM2, placement));
    }

    /// <summary>Section that keeps a current to a temperature rise.</summary>
    /// <param name="currentA">Current, amperes, not negative.</param>
    /// <param name="riseK">Rise above ambient, kelvin, positive.</param>
    /// <param name="placement">On a face or inside.</param>
    public static SectionEstimate Section(double currentA, double riseK, ConductorPlacement placement)
    {
        double scale = K(placement) * Math.Pow(Checked.Positive(riseK), RiseExponent);
        double sectionM2 = Math.Pow(Checked.NotNegative(currentA) / scale, 1 / SectionExponent) * Units.M2PerSquareMil;
        return new SectionEstimate(sectionM2, BasisOf(currentA, riseK, sectionM2, placement));
    }

    private static double K(ConductorPlacement placement) => placement == ConductorPlacement.External ? ExternalK : InternalK;

    private static double SquareMils(double sectionM2) => Checked.Positive(sectionM2) / Units.M2PerSquareMil;

    private static EstimateBasis BasisOf(double currentA, double riseK, double sectionM2, ConductorPlacement placement)
    {
        bool external = placement == ConductorPlacement.External;
        double mostA = external ? MostExternalA : MostInternalA;
        List<string> reasons = [];
        if (riseK is < LeastRiseK or > MostRiseK)
        {
            reasons.Add($"the rise of {QuantityText.TemperatureDifference(riseK)} is not within 10 to 100 K");
        }

        if (currentA > mostA)
        {
            reasons.Add($"the current of {QuantityText.Current(currentA)} is above {QuantityText.Current(mostA)}");
        }

        if (sectionM2 > MostSectionSquareMil * Units.M2PerSquareMil)
        {
            reasons.Add($"the section of {QuantityText.Area(sectionM2)} is above {QuantityText.Area(MostSectionSquareMil * Units.M2PerSquareMil)}");
        }

        return (external ? s_external : s_internal).WithReasons(reasons);
    }

    private static EstimateBasis Basis(string where) => new(
        "IPC-2221 curve fit, as commonly quoted; the standard was not read",
        $"single conductor {where}, steady state, no planes, still air; range of the charts, from memory: "
        + "rise 10 to 100 K, current to 35 A outside and 17.5 A inside, section to 0.452 mm² (700 square mils)");
}

using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>
/// Temperature rise of an external conductor by a fit to the IPC-2152 baseline data:
/// <c>dT = 215.3 I^2 W^-1.15 Th^-1.0</c> (amperes, mils, kelvin), after Brooks and Adam, 2015.
/// </summary>
/// <remarks>
/// IPC-2152 gives charts and no equation; this fit is recalled from memory and was not read again in the article, and
/// the range of the data behind it is not known to this project. The range checked here is the project's own choice;
/// it has no lower end for current, because there the fit is Joule's law and nothing else.
/// No fit for internal conductors and no modifier for planes, board thickness or material is given, because no source
/// for one was read. Every such modifier of the standard makes a conductor near a plane cooler than this baseline.
/// </remarks>
public static class Ipc2152StyleFit
{
    private const double Factor = 215.3;
    private const double WidthExponent = 1.15;

    // The project's own working range (see remarks).
    private const double MostCurrentA = 30;
    private const double LeastWidthM = 10 * Units.MPerMil;
    private const double MostWidthM = 400 * Units.MPerMil;
    private const double LeastThicknessM = 0.5 * Units.MPerOunceCopper;
    private const double MostThicknessM = 3.1 * Units.MPerOunceCopper;
    private const double MostRiseK = 100;

    private static readonly EstimateBasis s_basis = new(
        "fit to IPC-2152 data after Brooks and Adam, 2015, from memory",
        "isolated trace on a face of the board, no planes, still air, steady state, average trace temperature; "
        + "working range of this project, the fit's own is unknown: current to 30 A, 0.254 to 10.2 mm (10 to 400 mil) wide, 17 to 108 µm (0.5 to 3 oz) thick, rise to 100 K");

    /// <summary>Temperature rise of a conductor.</summary>
    /// <param name="currentA">Current, amperes, not negative.</param>
    /// <param name="widthM">Width, metres, positive.</param>
    /// <param name="thicknessM">Copper thickness, metres, positive.</param>
    public static RiseEstimate Rise(double currentA, double widthM, double thicknessM)
    {
        double riseK = RiseK(currentA, widthM, thicknessM);
        return new RiseEstimate(riseK, BasisOf(currentA, riseK, widthM, thicknessM));
    }

    /// <summary>The number alone, for searches over many conductors.</summary>
    /// <inheritdoc cref="Rise"/>
    public static double RiseK(double currentA, double widthM, double thicknessM) =>
        Checked.NotNegative(currentA) * currentA * RisePerSquareAmpere(widthM, thicknessM);

    /// <summary>Current that gives a temperature rise.</summary>
    /// <param name="riseK">Rise above ambient, kelvin, not negative.</param>
    /// <param name="widthM">Width, metres, positive.</param>
    /// <param name="thicknessM">Copper thickness, metres, positive.</param>
    public static CurrentEstimate Current(double riseK, double widthM, double thicknessM)
    {
        double currentA = Math.Sqrt(Checked.NotNegative(riseK) / RisePerSquareAmpere(widthM, thicknessM));
        return new CurrentEstimate(currentA, BasisOf(currentA, riseK, widthM, thicknessM));
    }

    /// <summary>Width that keeps a current to a temperature rise.</summary>
    /// <param name="currentA">Current, amperes, not negative.</param>
    /// <param name="riseK">Rise above ambient, kelvin, positive.</param>
    /// <param name="thicknessM">Copper thickness, metres, positive.</param>
    public static WidthEstimate Width(double currentA, double riseK, double thicknessM)
    {
        double power = Factor * Math.Pow(Checked.NotNegative(currentA), 2)
            / (Checked.Positive(riseK) * Checked.Positive(thicknessM) / Units.MPerMil);
        double widthM = Math.Pow(power, 1 / WidthExponent) * Units.MPerMil;
        return new WidthEstimate(widthM, BasisOf(currentA, riseK, widthM, thicknessM));
    }

    private static double RisePerSquareAmpere(double widthM, double thicknessM) =>
        Factor * Math.Pow(Checked.Positive(widthM) / Units.MPerMil, -WidthExponent)
        * Units.MPerMil / Checked.Positive(thicknessM);

    private static EstimateBasis BasisOf(double currentA, double riseK, double widthM, double thicknessM)
    {
        List<string> reasons = [];
        if (currentA > MostCurrentA)
        {
            reasons.Add($"the current of {QuantityText.Current(currentA)} is above 30 A");
        }

        if (widthM is < LeastWidthM or > MostWidthM)
        {
            reasons.Add($"the width of {QuantityText.Length(widthM)} is not within 0.254 to 10.2 mm (10 to 400 mil)");
        }

        if (thicknessM is < LeastThicknessM or > MostThicknessM)
        {
            reasons.Add($"the thickness of {QuantityText.Length(thicknessM)} is not within 17 to 108 µm (0.5 to 3 oz)");
        }

        if (riseK > MostRiseK)
        {
            reasons.Add($"the rise of {QuantityText.TemperatureDifference(riseK)} is above 100 K");
        }

        return s_basis.WithReasons(reasons);
    }
}

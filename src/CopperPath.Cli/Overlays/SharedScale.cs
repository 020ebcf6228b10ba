namespace CopperPath.Cli.Overlays;

/// <summary>
/// The one rule for the ends of a scale that several pictures share: round ends, of densities so far apart that two
/// revisions of one board mostly get the same, and few square millimetres, such as one neck, do not shift them.
/// </summary>
internal static class SharedScale
{
    /// <summary>
    /// Share of the copper that may lie above the top: current density is singular at inner corners, which would else
    /// take most of the scale, and a hot spot is found by its hatching.
    /// </summary>
    private const double MostShareAbove = 0.002;

    /// <summary>A logarithmic scale ends at this share of its top.</summary>
    private const double BottomShare = 0.01;

    /// <summary>A logarithmic scale needs a top above zero, also where nothing flows.</summary>
    private const double LeastTop = 1e-12;

    /// <summary>A field without values above zero still needs a linear scale with two ends.</summary>
    private const double LeastLinearTop = 0.01;

    /// <summary>Round steps that a linear scale has at least.</summary>
    private const int LeastSteps = 4;

    /// <summary>Two decades below the least of 1, 2, 5, 10 ... that all but the smallest share of the copper stays below.</summary>
    public static ScaleSpec Logarithmic(string quantityName, string unitSymbol, AreaRanking copper)
    {
        double top = TopOf(copper);
        return new ScaleSpec(quantityName, unitSymbol, ScaleKind.Logarithmic, top, top * BottomShare);
    }

    /// <summary>
    /// From zero to a round number above all the copper, or from about its half where nothing lies below that: a part of the
    /// range would then go unused. Nothing is left above it, for most such values are within their limits.
    /// </summary>
    public static ScaleSpec Linear(string quantityName, string unitSymbol, AreaRanking copper)
    {
        double most = Math.Max(copper.Most, LeastLinearTop);
        double step = RoundNumbers.AtMost(most / LeastSteps);
        double top = RoundNumbers.Multiple((long)Math.Ceiling((most / step) - 1e-9), step);
        double middle = RoundNumbers.Multiple((long)Math.Floor((top / 2 / step) + 1e-9), step);
        double bottom = copper.Least < 0 ? -RoundNumbers.AtLeast(-copper.Least) : copper.Least >= middle ? middle : 0;
        return new ScaleSpec(quantityName, unitSymbol, ScaleKind.Linear, top, bottom);
    }

    private static double TopOf(AreaRanking copper)
    {
        double top = RoundNumbers.AtLeast(Math.Max(copper.Most, LeastTop));
        for (double lower = RoundNumbers.Below(top);
            lower >= LeastTop && copper.ShareAbove(lower) <= MostShareAbove;
            lower = RoundNumbers.Below(lower))
        {
            top = lower;
        }

        return top;
    }
}

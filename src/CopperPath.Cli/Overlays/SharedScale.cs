namespace CopperPath.Cli.Overlays;

/// <summary>
/// The one rule for the ends of a scale that several pictures share: round ends far enough apart that two revisions of
/// one board mostly get the same, and few square millimetres, such as one neck, do not shift them.
/// </summary>
internal static class SharedScale
{
    /// <summary>
    /// Share of the copper that may lie above the top: current density is singular at inner corners, which would else
    /// take most of the scale.
    /// </summary>
    private const double MostShareAbove = 0.002;

    /// <summary>A logarithmic scale ends at this share of its top.</summary>
    private const double BottomShare = 0.01;

    /// <summary>A logarithmic scale needs a top above zero, also where nothing flows; a linear one a range.</summary>
    private const double LeastTop = 1e-12;

    /// <summary>The least step of a linear scale: a field without differences still needs two ends.</summary>
    private const double LeastStep = 0.01;

    /// <summary>Steps of a linear scale.</summary>
    private const int MostSteps = 2;

    /// <summary>A least value on a step, but for rounding, is its own bottom.</summary>
    private const double StepSlack = 1e-9;

    /// <summary>Two decades below the least of 1, 2, 5, 10 ... that all but the smallest share of the copper stays below.</summary>
    public static ScaleSpec Logarithmic(string quantityName, string unitSymbol, AreaRanking copper)
    {
        double top = RoundNumbers.AtLeast(Math.Max(copper.Most, LeastTop));
        for (double lower = RoundNumbers.Below(top);
            lower >= LeastTop && copper.ShareAbove(lower) <= MostShareAbove;
            lower = RoundNumbers.Below(lower))
        {
            top = lower;
        }

        return new ScaleSpec(quantityName, unitSymbol, ScaleKind.Logarithmic, top, top * BottomShare);
    }

    /// <summary>One or two of the smallest round steps that reach from the least value to what all but the smallest share stays below.</summary>
    public static ScaleSpec Linear(string quantityName, string unitSymbol, AreaRanking copper)
    {
        for (double step = RoundNumbers.AtLeast(Math.Max((copper.Most - copper.Least) / 100, LeastStep)); ; step = RoundNumbers.Above(step))
        {
            long first = (long)Math.Floor((copper.Least / step) + StepSlack);
            long last = first + 1;
            while (last < first + MostSteps && copper.ShareAbove(RoundNumbers.Multiple(last, step)) > MostShareAbove)
            {
                last++;
            }

            double top = RoundNumbers.Multiple(last, step);
            if (copper.ShareAbove(top) <= MostShareAbove)
            {
                return new ScaleSpec(quantityName, unitSymbol, ScaleKind.Linear, top, RoundNumbers.Multiple(first, step));
            }
        }
    }
}

using CopperPath.Brief;
using CopperPath.Cli.Plots;
using CopperPath.Judging;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board's rise over the load profile as a plot: its hottest place, what each stretch adds to its own copper, the limits.</summary>
internal static class LoadProfilePlot
{
    private const int MostStretches = 10;

    /// <summary>A limit this many times higher than all curves would press them to the foot; it is named below the plot.</summary>
    private const double HighestLimitRatio = 3;

    /// <param name="review">A review whose board was solved through its load profile.</param>
    public static TimePlot Of(Review review)
    {
        LoadedHeat heat = review.InTime!;
        LoadProfile profile = review.Brief!.LoadProfile!;
        (double scale, string unit) = profile.DurationS >= 1 ? (1.0, "s") : profile.DurationS >= 1e-3 ? (1e3, "ms") : (1e6, "\u00B5s");
        (SolvedNet Net, StretchInTime InTime)[] stretches = [.. LoadText.Stretches(review, heat).OrderByDescending(one => one.InTime.Peak.RiseK)];
        (SolvedNet Net, StretchInTime InTime)[] drawn = [.. stretches.Take(MostStretches)];
        TimeCurve[] curves =
        [
            new("Hottest place of the board", $"all heat; {PeakOf(heat.Most.Hottest(), heat.HottestTimeS)}", null, Points(heat.TimesS, heat.HottestK, scale)),
            .. drawn.Select(one => new TimeCurve(
                one.Net.Bound.Review.Name, $"own current; {PeakOf(one.InTime.Peak, one.InTime.PeakTimeS)}",
                StagePictures.KindOf(one.Net.Bound.Review.Role), Points(one.InTime.TimesS, one.InTime.RiseK, scale))),
        ];
        double mostK = curves.SelectMany(curve => curve.Points).Max(point => point.Value);
        ILookup<bool, TimeLimit> limits = LimitsOf(review, drawn).ToLookup(limit => limit.Value <= HighestLimitRatio * mostK);
        return new TimePlot(
            $"{review.Brief.Board.Name}: temperature rise {LoadText.Over(profile)}",
            profile.IsPeriodic ? $"Time within a period, {unit}" : $"Time, {unit}",
            "Rise above ambient, K", scale * profile.DurationS, curves, [.. limits[true]], [.. Notes(review, stretches.Length, limits[false])]);
    }

    private static string PeakOf(HottestPlace peak, double timeS) =>
        $"peak {QuantityText.TemperatureDifference(peak.RiseK)} at {QuantityText.Time(timeS)}";

    private static IReadOnlyList<(double Time, double Value)> Points(IReadOnlyList<double> timesS, IReadOnlyList<double> risesK, double scale) =>
        [.. timesS.Zip(risesK, (timeS, riseK) => (scale * timeS, riseK))];

    private static IEnumerable<TimeLimit> LimitsOf(Review review, (SolvedNet Net, StretchInTime InTime)[] drawn)
    {
        IGrouping<double, string>[] own = [.. drawn.GroupBy(one => one.Net.Bound.Review.Limits.TemperatureRiseK, one => one.Net.Bound.Review.Name)];
        foreach (IGrouping<double, string> group in own)
        {
            yield return new TimeLimit(
                own.Length == 1 ? "Limit, own current" : $"Limit, own current of {string.Join(", ", group)}", QuantityText.TemperatureDifference(group.Key), group.Key);
        }

        if (review.PartsHeat is { IsKnown: true })
        {
            double riseK = review.Brief!.Limits.TemperatureK - review.Brief.AmbientK;
            yield return new TimeLimit("Limit, hottest place",
                $"{QuantityText.Temperature(review.Brief.Limits.TemperatureK)}, {QuantityText.TemperatureDifference(riseK)} above ambient", riseK);
        }
    }

    private static IEnumerable<string> Notes(Review review, int stretchCount, IEnumerable<TimeLimit> above)
    {
        foreach (TimeLimit limit in above)
        {
            yield return $"Above the plot: {limit.Name.ToLowerInvariant()} {limit.Facts}.";
        }

        yield return $"Ambient {QuantityText.Temperature(review.Brief!.AmbientK)}. A dot marks each peak. {LoadText.Basis(review.InTime!)}";
        if (stretchCount > MostStretches)
        {
            yield return FormattableString.Invariant($"The {MostStretches} stretches with the highest peaks; {stretchCount - MostStretches} more are in {Tables.LoadProfileTable.FileName}.");
        }
    }
}

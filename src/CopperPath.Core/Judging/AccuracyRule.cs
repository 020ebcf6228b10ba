using System.Globalization;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// Speaks of copper that was not solved as closely as asked for. Where a limit lies within what is then open, nobody can say
/// whether it is kept; where none does, the bounds are wide enough to judge by, and that is a remark.
/// </summary>
internal static class AccuracyRule
{
    public static IEnumerable<Finding> Judge(SolvedNet net, IReadOnlyList<ConductorRating> charts, OwnRise heat)
    {
        ConductionResult result = net.Conduction;
        bool isReached = result.Status == ConductionStatus.Solved;
        if (isReached && result.CoarseLayers.Count == 0)
        {
            yield break;
        }

        double width = result.Rounds[^1].WidthShare;
        string[] open = isReached ? [] : [.. Open(net, charts, heat, width)];
        (int layer, PointNm at) = DropRule.PlaceOf(net.Bound.Terminals[0]);
        yield return new Finding(
            RuleCatalogue.Accuracy.Id, open.Length > 0 ? FindingLevel.Undecided : FindingLevel.Remark, net.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y), null,
            isReached ? $"The mesh of layer {string.Join(", ", result.CoarseLayers)} ended at its limit of vertices; the bounds are as close as asked for all the same."
                : $"This net was not solved as closely as asked for: {result.Explanation}. "
                    + (open.Length > 0 ? $"Within that lies the limit of {string.Join(", of ", open)}." : "No limit lies within that."),
            isReached ? "Nothing to mend."
                : "Ask for less accuracy if it will do, or divide the net; where the drawn outlines take most, they are too rough to follow more closely.",
            RuleCatalogue.Accuracy.Evidence);
    }

    /// <summary>The quantities whose limit lies within what is open.</summary>
    private static IEnumerable<string> Open(SolvedNet net, IReadOnlyList<ConductorRating> charts, OwnRise heat, double width)
    {
        ConductionResult result = net.Conduction;
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        if (net.Bound.Review.Limits.VoltageDropV is { } limitV && DropRule.IsOpen(net, limitV))
        {
            yield return $"the drop, {QuantityText.Voltage(limitV)}, which is between {QuantityText.Voltage(result.DropBoundsV.Least)} "
                + $"and {QuantityText.Voltage(result.DropBoundsV.Greatest)}";
        }

        // The current of a cut has no estimate of its own; it is taken to be as far off as loss and drop.
        int sections = net.Sections.Count(section => charts.Any(chart => chart.CanJudge(section) && chart.TraceRiseK(section) <= limitK
            && chart.TraceRiseK(section with { CurrentA = section.CurrentA * (1 + width) }) > limitK));
        if (sections > 0)
        {
            yield return string.Create(CultureInfo.InvariantCulture,
                $"the rise of sections, {QuantityText.TemperatureDifference(limitK)}, which {sections} may pass with {100 * width:G2} % more current");
        }

        int holes = result.Barrels.Count(barrel => charts.Any(chart =>
            chart.CanJudge(barrel) && chart.BarrelRiseK(barrel) <= limitK && chart.BarrelRiseK(barrel.AtMost()) > limitK));
        if (holes > 0)
        {
            yield return string.Create(CultureInfo.InvariantCulture,
                $"the rise of plated holes, {QuantityText.TemperatureDifference(limitK)}, which {holes} may pass with the most they may carry");
        }

        if (heat.Result.Status == ThermalStatus.Solved && NetTemperatures.Of(net, heat).PeakK is var peakK
            && peakK <= limitK && peakK * (1 + width) > limitK)
        {
            yield return $"the board's own rise, {QuantityText.TemperatureDifference(limitK)}, of which {QuantityText.TemperatureDifference(peakK)} is found";
        }
    }
}

using CopperPath.Geometry;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// Judges the copper of each net by what its own current adds to this board's temperatures: one finding for each
/// region that is warmed beyond the limit.
/// </summary>
internal static class HeatRule
{
    private const string Assumption =
        "heat of the solved copper, with and without; films by correlation or as stated, good to some tenths";

    /// <summary>The iteration ends at 1e-8 of the heat; more is no rounding.</summary>
    private const double RoundingShare = 1e-6;

    /// <summary>A cut this near to the hottest point is the copper that is hot there, metres.</summary>
    private const double CutReachM = 2e-3;

    /// <param name="nets">Solved nets.</param>
    /// <param name="heat">A solved board.</param>
    /// <param name="during">What is added where the rises are the largest over some time; with a blank before it.</param>
    public static IEnumerable<Finding> Judge(IReadOnlyList<SolvedNet> nets, OwnRise heat, string during = "") =>
        nets.SelectMany(net => OfNet(net, heat, during)).OrderByDescending(finding => finding.Measure!.Value);

    private static IEnumerable<Finding> OfNet(SolvedNet net, OwnRise heat, string during)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        IReadOnlyList<HotCopper> regions = HotCopper.Of(net, heat, limitK);
        if (regions.Count > 0)
        {
            return regions.Select(region => FindingOf(net, region, during));
        }

        NetTemperatures peak = NetTemperatures.Of(net, heat);
        return peak.PeakK + peak.EstimateK > limitK ? [Straddling(net, peak, during)] : [];
    }

    /// <summary>The limit lies within what the width of cells leaves open.</summary>
    private static Finding Straddling(SolvedNet net, NetTemperatures peak, string during)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        return new Finding(
            RuleCatalogue.Heat.Id, FindingLevel.Undecided, net.Bound.Review.Name, peak.Layer, peak.XM, peak.YM,
            new Measure("temperature rise", "K", peak.PeakK, limitK),
            $"Its own current warms this copper by {QuantityText.TemperatureDifference(peak.PeakK)} on this board{during}, which may be "
                + $"{QuantityText.TemperatureDifference(peak.EstimateK)} off; {QuantityText.TemperatureDifference(limitK)} is allowed. "
                + "Whether it is within can not be said.",
            "Take it as beyond the limit, or leave it more room: widen or double the copper here, or cool the board better.",
            Assumption);
    }

    /// <summary>Why no temperatures can be given, or null where they can.</summary>
    public static string? Unsettled(OwnRise heat)
    {
        if (heat.Result.Status != ThermalStatus.Solved)
        {
            return heat.Result.Explanation;
        }

        double error = Math.Max(heat.All.Result.Balance.ErrorRatio, heat.WithoutCopperLoss?.Result.Balance.ErrorRatio ?? 0);
        return error <= RoundingShare ? null : FormattableString.Invariant($"heat in and out differ by {100 * error:G3} %");
    }

    /// <summary>What is said where no temperatures were found.</summary>
    public static Finding Unsolved(SolvedNet net, ThermalResult result, string reason)
    {
        (int layer, PointNm at) = DropRule.PlaceOf(net.Bound.Terminals[0]);
        bool isTooHot = result.Status is ThermalStatus.Runaway or ThermalStatus.TooHot or ThermalStatus.NoWayOut;
        return new Finding(
            RuleCatalogue.Heat.Id, isTooHot ? FindingLevel.BeyondLimit : FindingLevel.Undecided, net.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y), null,
            $"No temperatures can be given: {reason}.",
            isTooHot ? "Reduce the loss or cool the board better." : "Please report this board; its temperatures are unknown.",
            Assumption);
    }

    private static Finding FindingOf(SolvedNet net, HotCopper region, string during)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        return new Finding(
            RuleCatalogue.Heat.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, region.Layer,
            Units.MetresFromNm(region.At.X), Units.MetresFromNm(region.At.Y),
            new Measure("temperature rise", "K", region.PeakK, limitK),
            $"Its own current warms this copper by {QuantityText.TemperatureDifference(region.PeakK)} on this board{during}, "
                + $"give or take {QuantityText.TemperatureDifference(region.EstimateK)}; {QuantityText.TemperatureDifference(limitK)} is allowed{CutBeside(net, region)}.",
            "Widen or double the copper here, tie it to planes with more plated holes, or cool the board better.",
            Assumption)
        {
            Extent = region.Extent,
        };
    }

    /// <summary>The narrowest copper for its current that lies beside the hottest point.</summary>
    private static string CutBeside(SolvedNet net, HotCopper region) =>
        net.Sections.Where(cut => cut.Layer == region.Layer && cut.WidthM > 0
            && Units.MetresFromNm(new PointNm((long)Units.NmFromMetres(cut.AtXM), (long)Units.NmFromMetres(cut.AtYM)).DistanceNmTo(region.At)) < CutReachM)
            .MaxBy(cut => cut.CurrentA / cut.WidthM) is { } narrow
            ? $"; {QuantityText.Current(narrow.CurrentA)} passes copper {QuantityText.Length(narrow.WidthM)} wide beside the hottest point" : "";
}

using CopperPath.Electrical;
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

    /// <summary>What is left over of the heat when an iteration ends, and as much again for rounding; more is a fault of the books.</summary>
    private const double BooksShare = 2 * RefinedHeat.Tolerance;

    /// <summary>A cut this near to the hottest point is the copper that is hot there, metres.</summary>
    private const double CutReachM = 2e-3;

    /// <param name="nets">Solved nets.</param>
    /// <param name="heat">A solved board.</param>
    /// <param name="stack">Thicknesses.</param>
    /// <param name="study">The range of what is not known, of the steady board.</param>
    /// <param name="during">What is added where the rises are the largest over some time; with a blank before it.</param>
    public static IEnumerable<Finding> Judge(IReadOnlyList<SolvedNet> nets, OwnRise heat, Stackup stack, ToleranceStudy study, string during = "") =>
        nets.SelectMany(net => OfNet(net, heat, stack, study, during)).OrderByDescending(finding => finding.Level).ThenByDescending(finding => finding.Measure!.Value);

    private static IEnumerable<Finding> OfNet(SolvedNet net, OwnRise heat, Stackup stack, ToleranceStudy study, string during)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        NetTolerance range = study.Of(net)!;
        (NetTemperatures peak, Spread own, HottestPlace at) = during.Length == 0 ? (range.Own!, range.OwnRiseK!, range.OwnAt!) : InTime(net, heat, range);
        IReadOnlyList<HotCopper> regions = HotCopper.Of(net, heat, limitK);
        return regions.Count > 0 ? regions.Select(region => FindingOf(net, region, stack, study, during))
            : peak.PeakK + peak.EstimateK > limitK ? [Straddling(net, peak, own, during)]
            : own.Worst + (own.Worst / own.Nominal * peak.EstimateK) > limitK ? [AsStated(net, own, at, during)]
            : [];
    }

    /// <summary>The largest rise over some time. What is not known scales it as it scales the steady rise.</summary>
    private static (NetTemperatures Peak, Spread Own, HottestPlace At) InTime(SolvedNet net, OwnRise heat, NetTolerance range)
    {
        NetTemperatures peak = NetTemperatures.Of(net, heat);
        Spread steady = range.OwnRiseK!;
        double scale = steady.Nominal > 0 ? peak.PeakK / steady.Nominal : 1;
        return (peak, steady with { Nominal = peak.PeakK, Worst = scale * steady.Worst, WorstBounds = null },
            new HottestPlace(peak.PeakK, peak.EstimateK, peak.Layer, peak.XM, peak.YM));
    }

    /// <summary>
    /// Within as stated, not over the range of what is not known. The estimate grows with the value; where only the two together pass
    /// the limit, it is not within over the range either.
    /// </summary>
    private static Finding AsStated(SolvedNet net, Spread own, HottestPlace at, string during)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        string widthOfCells = own.Worst > limitK ? ""
            : $" That may be {QuantityText.TemperatureDifference(own.Worst / own.Nominal * at.EstimateK)} off for the width of cells.";
        return new Finding(
            RuleCatalogue.Heat.Id, FindingLevel.WithinAsStated, net.Bound.Review.Name, at.Layer, at.XM, at.YM,
            new Measure("temperature rise", "K", own.Nominal, limitK) { Worst = own.Worst },
            $"Its own current warms this copper{during} by {RangeWords.Of(own, limitK, QuantityText.TemperatureDifference)}{widthOfCells}",
            "Leave it more room, or state what is known better: measured films, the laminate's own values, the copper ordered.",
            $"{Assumption}; {RangeWords.Assumption}");
    }

    /// <summary>The limit lies within what the width of cells leaves open.</summary>
    private static Finding Straddling(SolvedNet net, NetTemperatures peak, Spread own, string during)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        return new Finding(
            RuleCatalogue.Heat.Id, FindingLevel.Undecided, net.Bound.Review.Name, peak.Layer, peak.XM, peak.YM,
            new Measure("temperature rise", "K", peak.PeakK, limitK) { Worst = own.Worst },
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
        return error <= BooksShare ? null : FormattableString.Invariant($"heat in and out differ by {100 * error:G3} %");
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

    private static Finding FindingOf(SolvedNet net, HotCopper region, Stackup stack, ToleranceStudy study, string during)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        (double xM, double yM) = (Units.MetresFromNm(region.At.X), Units.MetresFromNm(region.At.Y));
        return new Finding(
            RuleCatalogue.Heat.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, region.Layer,
            xM, yM, new Measure("temperature rise", "K", region.PeakK, limitK)
            {
                Worst = study.WorstOwnRiseK(net, new HottestPlace(region.PeakK, region.EstimateK, region.Layer, xM, yM)),
            },
            $"Its own current warms this copper by {QuantityText.TemperatureDifference(region.PeakK)} on this board{during}, "
                + $"give or take {QuantityText.TemperatureDifference(region.EstimateK)}; {QuantityText.TemperatureDifference(limitK)} is allowed{CutBeside(net, region, stack)}.",
            "Widen or double the copper here, tie it to planes with more plated holes, or cool the board better.",
            Assumption)
        {
            Extent = region.Extent,
        };
    }

    /// <summary>The narrowest copper for its current that lies beside the hottest point: on its layer, or over all that carry the current together.</summary>
    private static string CutBeside(SolvedNet net, HotCopper region, Stackup stack)
    {
        Section? narrow = net.Sections.Where(cut => cut.Layer == region.Layer && cut.WidthM > 0
            && Units.MetresFromNm(PointNm.FromMetres(cut.AtXM, cut.AtYM).DistanceNmTo(region.At)) < CutReachM)
            .MaxBy(cut => cut.CurrentA / cut.WidthM);
        double atXM = Units.MetresFromNm(region.At.X), atYM = Units.MetresFromNm(region.At.Y);
        JointSection? joint = net.Joint.Necks.Where(cut => cut.Layers.Any(layer => layer.Layer == region.Layer)
            && atXM > cut.LeftM - CutReachM && atXM < cut.RightM + CutReachM && atYM > cut.BottomM - CutReachM && atYM < cut.TopM + CutReachM)
            .MaxBy(cut => cut.CurrentA / cut.SectionM2(stack));
        return joint is not null && joint.CurrentA > (narrow?.CurrentA ?? 0) * (1 + NeckLength.SameCurrentShare)
                ? $"; {QuantityText.Current(joint.CurrentA)} passes {JointText.Of(joint, stack)} here"
            : narrow is not null ? $"; {QuantityText.Current(narrow.CurrentA)} passes copper {QuantityText.Length(narrow.WidthM)} wide beside the hottest point" : "";
    }
}

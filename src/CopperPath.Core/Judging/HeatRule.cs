using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>Judges each net by the board's own temperatures: its hottest copper against the allowed rise.</summary>
internal static class HeatRule
{
    public static IEnumerable<Finding> Judge(IReadOnlyList<SolvedNet> nets, TemperatureField heat)
    {
        if (heat.Result.Status != ThermalStatus.Solved)
        {
            return [Unsolved(nets[0], heat.Result)];
        }

        return nets.Select(net => (Net: net, Temperatures: NetTemperatures.Of(net, heat)))
            .Where(judged => judged.Temperatures.PeakK + judged.Temperatures.EstimateK > judged.Net.Bound.Review.Limits.TemperatureRiseK)
            .OrderByDescending(judged => judged.Temperatures.PeakK)
            .Select(judged => judged.Temperatures.PeakK - judged.Temperatures.EstimateK > judged.Net.Bound.Review.Limits.TemperatureRiseK
                ? FindingOf(judged.Net, judged.Temperatures) : Straddling(judged.Net, judged.Temperatures));
    }

    /// <summary>The limit lies within what the cells leave open.</summary>
    private static Finding Straddling(SolvedNet net, NetTemperatures temperatures)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        return new Finding(
            RuleCatalogue.Heat.Id, FindingLevel.Undecided, net.Bound.Review.Name, temperatures.Layer, temperatures.XM, temperatures.YM,
            new Measure("temperature rise", "K", temperatures.PeakK, limitK),
            $"The board's own temperatures reach a rise of {QuantityText.TemperatureDifference(temperatures.PeakK)} here, which may be "
                + $"{QuantityText.TemperatureDifference(temperatures.EstimateK)} off; {QuantityText.TemperatureDifference(limitK)} is allowed. "
                + "Whether it is within can not be said.",
            "Take it as beyond the limit, or leave it more room: widen or double the hottest copper, or cool the board better.",
            Assumption);
    }

    private static Finding FindingOf(SolvedNet net, NetTemperatures temperatures)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        return new Finding(
            RuleCatalogue.Heat.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, temperatures.Layer, temperatures.XM, temperatures.YM,
            new Measure("temperature rise", "K", temperatures.PeakK, limitK),
            $"The board's own temperatures reach a rise of {QuantityText.TemperatureDifference(temperatures.PeakK)} here, "
                + $"give or take {QuantityText.TemperatureDifference(temperatures.EstimateK)} "
                + $"({QuantityText.TemperatureDifference(temperatures.MeanK)} on average over this net); {QuantityText.TemperatureDifference(limitK)} is allowed.",
            "Widen or double the hottest copper, tie it to planes with more plated holes, or cool the board better.",
            Assumption);
    }

    private static Finding Unsolved(SolvedNet net, ThermalResult result)
    {
        (int layer, Geometry.PointNm at) = DropRule.PlaceOf(net.Bound.Terminals[0]);
        bool isTooHot = result.Status is ThermalStatus.Runaway or ThermalStatus.TooHot or ThermalStatus.NoWayOut;
        return new Finding(
            RuleCatalogue.Heat.Id, isTooHot ? FindingLevel.BeyondLimit : FindingLevel.Undecided, net.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y), null,
            $"No temperatures can be given: {result.Explanation}.",
            isTooHot ? "Reduce the loss or cool the board better." : "Please report this board; its temperatures are unknown.",
            Assumption);
    }

    private const string Assumption =
        "heat of the solved copper and the stated components only; films by correlation or as stated, good to some tenths";
}

using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// Judges the hottest place of the board, reviewed or not, with all heat counted. Where the heat of parts is not known
/// it can only find the board too hot; that it is cool enough is then not said.
/// </summary>
internal static class TemperatureRule
{
    /// <param name="brief">Limit and surroundings.</param>
    /// <param name="heat">A solved board.</param>
    /// <param name="parts">Heat of parts, and whether it is known.</param>
    /// <param name="during">What is added where temperatures are the largest over some time; with a blank before it.</param>
    public static IEnumerable<Finding> Judge(ReviewBrief brief, TemperatureField heat, PartsHeat parts, string during = "")
    {
        HottestPlace hottest = heat.Hottest();
        double hottestK = brief.AmbientK + hottest.RiseK;
        double limitK = brief.Limits.TemperatureK;
        if (hottestK + hottest.EstimateK > limitK)
        {
            bool isBeyond = hottestK > limitK;
            yield return new Finding(
                RuleCatalogue.Temperature.Id, isBeyond ? FindingLevel.BeyondLimit : FindingLevel.Undecided, "the whole board", hottest.Layer, hottest.XM, hottest.YM,
                new Measure("temperature", "K", hottestK, limitK),
                $"The hottest place of the board reaches {QuantityText.Temperature(hottestK)}{(parts.IsKnown ? "" : " without the heat of its parts")}{during}, "
                    + $"give or take {QuantityText.TemperatureDifference(hottest.EstimateK)}; {QuantityText.Temperature(limitK)} is allowed."
                    + (isBeyond ? "" : " Whether it is within can not be said."),
                "Spread the heat: more copper and plated holes at the hottest part, more air, or a heat sink.",
                "heat of the solved copper and of the parts counted; films by correlation or as stated, good to some tenths");
        }
    }
}

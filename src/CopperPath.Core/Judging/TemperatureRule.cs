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
    private const string Advice = "Spread the heat: more copper and plated holes at the hottest part, more air, or a heat sink.";

    private const string Assumption = "heat of the solved copper and of the parts counted; films by correlation or as stated, good to some tenths";

    /// <param name="brief">Limit and surroundings.</param>
    /// <param name="heat">A solved board.</param>
    /// <param name="parts">Heat of parts, and whether it is known.</param>
    /// <param name="study">The range of what is not known, of the steady board.</param>
    /// <param name="during">What is added where temperatures are the largest over some time; with a blank before it.</param>
    public static IEnumerable<Finding> Judge(ReviewBrief brief, TemperatureField heat, PartsHeat parts, ToleranceStudy study, string during = "")
    {
        HottestPlace hottest = heat.Hottest();
        double hottestK = brief.AmbientK + hottest.RiseK;
        double limitK = brief.Limits.TemperatureK;
        Spread? range = during.Length == 0 ? study.TemperatureK : InTime(study.TemperatureK, hottestK, brief.AmbientK);
        if (hottestK + hottest.EstimateK > limitK)
        {
            bool isBeyond = hottestK > limitK;
            yield return new Finding(
                RuleCatalogue.Temperature.Id, isBeyond ? FindingLevel.BeyondLimit : FindingLevel.Undecided, "the whole board", hottest.Layer, hottest.XM, hottest.YM,
                new Measure("temperature", "K", hottestK, limitK) { Worst = range?.Worst },
                $"The hottest place of the board reaches {QuantityText.Temperature(hottestK)}{(parts.IsKnown ? "" : " without the heat of its parts")}{during}, "
                    + $"give or take {QuantityText.TemperatureDifference(hottest.EstimateK)}; {QuantityText.Temperature(limitK)} is allowed."
                    + (isBeyond ? "" : " Whether it is within can not be said."),
                Advice, Assumption);
        }
        else if (range is { } worst && (during.Length == 0 ? study.HottestAt : hottest) is { } at
            && worst.Worst + ((worst.Worst - brief.AmbientK) / hottest.RiseK * hottest.EstimateK) > limitK)
        {
            yield return new Finding(
                RuleCatalogue.Temperature.Id, FindingLevel.WithinAsStated, "the whole board", at.Layer, at.XM, at.YM,
                new Measure("temperature", "K", hottestK, limitK) { Worst = worst.Worst },
                $"The hottest place of the board reaches{during} {(parts.IsKnown ? "" : "without the heat of its parts ")}{RangeWords.Of(worst, limitK, QuantityText.Temperature)}",
                Advice, $"{Assumption}; {RangeWords.Assumption}");
        }
    }

    /// <summary>The hottest of some time. What is not known scales its rise as it scales the steady one.</summary>
    private static Spread? InTime(Spread? steady, double hottestK, double ambientK) => steady is null || steady.Nominal <= ambientK ? null
        : steady with { Nominal = hottestK, Worst = ambientK + ((steady.Worst - ambientK) * (hottestK - ambientK) / (steady.Nominal - ambientK)), WorstBounds = null };
}

using CopperPath.Brief;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Compares the hot loops of a converter's phases with the best among them.</summary>
internal static class HotLoopRule
{
    public static IEnumerable<Finding> Judge(PathContext path, IReadOnlyList<HotLoopFacts> loops)
    {
        PracticeLimit limit = path.Limits.HotLoopRatio;
        foreach (IGrouping<int, HotLoopFacts> converter in loops.Where(loop => loop.Inductance is not null).GroupBy(loop => loop.Converter))
        {
            HotLoopFacts best = converter.First();
            foreach (HotLoopFacts loop in converter.Where(loop => loop.Inductance!.InductanceH > limit.Value * best.Inductance!.InductanceH))
            {
                double ratio = loop.Inductance!.InductanceH / best.Inductance!.InductanceH;
                yield return PathContext.FindingAt(RuleCatalogue.HotLoop, PathContext.LevelOf(limit), loop.SwitchNode.Name,
                    loop.Capacitor.Pads[0].Pad.Layer, BoxNm.Of(loop.Corners).Centre,
                    new Measure("inductance over best phase", "", ratio, limit.Value),
                    $"The loop over {loop.Capacitor.Name} and the switches is {QuantityText.Length(loop.LengthM)} long and encloses {QuantityText.Area(loop.AreaM2)}: "
                        + $"about {QuantityText.Inductance(loop.Inductance.InductanceH)}, {QuantityText.Ratio(ratio)} times that of the best phase ({best.SwitchNode.Name}).",
                    "Move an input capacitor closer to the high side, its return end to the low side.");
            }
        }
    }
}

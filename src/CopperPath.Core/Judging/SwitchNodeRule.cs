using CopperPath.Brief;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Compares each switch node with the least copper that carries its current; too little copper is the business of the neck rule.</summary>
internal static class SwitchNodeRule
{
    public static IEnumerable<Finding> Judge(PathContext path, IReadOnlyList<SwitchNodeFacts> nodes)
    {
        PracticeLimit limit = path.Limits.LeastAreaRatio;
        foreach (SwitchNodeFacts node in nodes.Where(node => node.AreaM2 > limit.Value * node.LeastAreaM2))
        {
            NetSheet largest = node.Net.Bound.Net.Sheets.MaxBy(sheet => sheet.AreaM2)!;
            PointNm at = largest.Islands.MaxBy(island => island.AreaNm2)!.Bounds.Centre;
            double ratio = node.AreaM2 / node.LeastAreaM2;
            string cost = node is { DisplacementA: { } displacementA, SwitchingLossW: { } lossW }
                ? $"; each edge pushes {QuantityText.Current(displacementA)} into it, and charging it costs {QuantityText.Power(lossW)}" : "";
            yield return PathContext.FindingAt(RuleCatalogue.SwingLeast, PathContext.LevelOf(limit), node.Net.Bound.Review.Name, largest.Layer, at,
                new Measure("area over least area", "", ratio, limit.Value),
                $"This switch node has {QuantityText.Area(node.AreaM2)} of copper, {QuantityText.Ratio(ratio)} times the {QuantityText.Area(node.LeastAreaM2)} that carry its current "
                    + $"at the allowed rise; {(node.IsCapacitanceTheMost ? "at most " : "")}{QuantityText.Capacitance(node.CapacitanceF)} to the return beside it{cost}.",
                "Trim what the current does not use.");
        }
    }
}

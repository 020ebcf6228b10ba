using System.Globalization;
using CopperPath.Brief;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Compares the copper of each switch node with the smallest of its siblings: copper that swings with every edge
/// couples noise in proportion to its area, so a fill much larger than a sibling that carries the same current is waste.
/// </summary>
internal static class SwingAreaRule
{
    public static IEnumerable<Finding> Judge(IReadOnlyList<SolvedNet> nets, double allowedRatio)
    {
        foreach (IGrouping<string, SolvedNet> group in nets
            .Where(net => net.Bound.Review.Role == NetRole.SwitchNode && net.Bound.Review.Siblings is not null)
            .GroupBy(net => net.Bound.Review.Siblings!))
        {
            SolvedNet least = group.MinBy(net => net.Bound.Net.AreaM2)!;
            foreach (SolvedNet net in group.Where(net => net.Bound.Net.AreaM2 > allowedRatio * least.Bound.Net.AreaM2))
            {
                yield return FindingOf(net.Bound.Review.Name, net.Bound.Net, least, allowedRatio);
            }
        }
    }

    private static Finding FindingOf(string subject, Net net, SolvedNet least, double allowedRatio)
    {
        NetSheet largest = net.Sheets.MaxBy(sheet => sheet.AreaM2)!;
        PointNm at = largest.Islands.MaxBy(island => island.AreaNm2)!.Bounds.Centre;
        double ratio = net.AreaM2 / least.Bound.Net.AreaM2;
        return new Finding(
            RuleCatalogue.SwingArea.Id, FindingLevel.BeyondLimit, subject, largest.Layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y),
            new Measure("area over smallest sibling", "", ratio, allowedRatio),
            string.Create(CultureInfo.InvariantCulture,
                $"This switch node has {QuantityText.Area(net.AreaM2)} of copper over all layers, {ratio:0.0} times the ")
                + $"{QuantityText.Area(least.Bound.Net.AreaM2)} of {least.Bound.Review.Name}, for the same job.",
            "Trim the fill to what its current needs; copper that swings with each edge radiates and couples in proportion to its area.",
            "areas of drawn copper, all layers summed; the ratio is common practice, no source");
    }
}

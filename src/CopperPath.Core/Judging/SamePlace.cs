using CopperPath.Geometry;

namespace CopperPath.Judging;

/// <summary>Makes one finding of what the board's own rise and a chart relation say of one place.</summary>
internal static class SamePlace
{
    /// <summary>A hottest point this near to what a chart speaks of is the same place, nanometres.</summary>
    private const long ReachNm = 2_000_000;

    /// <param name="ofBoard">Findings by the board's own temperatures.</param>
    /// <param name="ofCharts">Findings by chart relations.</param>
    /// <returns>The findings of the board, with what charts say of their hottest points, then those of charts elsewhere.</returns>
    public static IEnumerable<Finding> Fold(IReadOnlyList<Finding> ofBoard, IReadOnlyList<Finding> ofCharts)
    {
        List<Finding> elsewhere = [.. ofCharts];
        foreach (Finding own in ofBoard)
        {
            Finding[] same = [.. elsewhere.Where(chart => IsSame(own, chart))];
            elsewhere.RemoveAll(same.Contains);
            yield return same.Length == 0 ? own : own with
            {
                Sentence = string.Join(' ', same.Select(chart => chart.Sentence).Prepend(own.Sentence)),
                Assumption = string.Join("; ", same.Select(chart => chart.Assumption).Prepend(own.Assumption).Distinct()),
            };
        }

        foreach (Finding chart in elsewhere)
        {
            yield return chart;
        }
    }

    private static bool IsSame(Finding own, Finding chart) =>
        own.Rule == RuleCatalogue.Heat.Id && own.Level == FindingLevel.BeyondLimit && own.Measure is not null && own.Subject == chart.Subject
        && (chart.Extent ?? BoxNm.Of([PointNm.FromMetres(chart.XM, chart.YM)])).GrownBy(ReachNm).Contains(PointNm.FromMetres(own.XM, own.YM));
}

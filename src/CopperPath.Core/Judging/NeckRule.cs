using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// Judges every cut across the current as if it were a long isolated conductor, where the brief chose a chart relation and the cut lies
/// inside its range: cuts of single layers, and cuts through all copper that carries a current together. One neck is one
/// finding, of its worst cut by the relation that sees most in it. The rule is far on the safe side for short necks between wide
/// pours and for boards with planes.
/// </summary>
internal static class NeckRule
{
    /// <param name="net">A solved net.</param>
    /// <param name="charts">Relations that judge; none yields no findings.</param>
    /// <param name="heat">The board's own rises.</param>
    public static IEnumerable<Finding> Judge(SolvedNet net, IReadOnlyList<ConductorRating> charts, OwnRise heat)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        List<NeckCut> waiting = [.. net.Sections.SelectMany(section => charts.Where(chart => chart.CanJudge(section)).Select(chart => NeckCut.Of(section, chart)))
            .Concat(net.Joint.Necks.Where(section => !IsOfHoles(section)).SelectMany(section => charts.Where(chart => chart.CanJudge(section)).Select(chart => NeckCut.Of(section, chart))))
            .Where(cut => cut.RiseK > limitK)
            .OrderByDescending(cut => cut.RiseK).ThenBy(cut => cut.AtXM).ThenBy(cut => cut.AtYM)];
        while (waiting.Count > 0)
        {
            NeckCut worst = waiting[0];
            List<NeckCut> neck = worst.Neck(waiting);
            waiting.RemoveAll(cut => neck.Exists(own => own.IsBeside(cut)));
            Finding finding = worst.Joint is { } joint ? FindingOf(net, worst, joint, heat, limitK) : FindingOf(net, worst, worst.Single!, heat, limitK);
            yield return finding with { Extent = BoxNm.Around(neck.Select(cut => cut.Extent)) };
        }
    }

    /// <summary>The ring where holes meet a plane, cut together with their walls, is the neck <see cref="BarrelRule"/> speaks of.</summary>
    private static bool IsOfHoles(JointSection section) => section.IsClosed && section.Holes.Count > 0;

    private static Finding FindingOf(SolvedNet net, NeckCut worst, Section section, OwnRise heat, double limitK)
    {
        double neededM = worst.Rating.TraceWidthM(section, limitK);
        return FindingOf(net, worst, limitK,
            $"{QuantityText.Current(section.CurrentA)} runs through copper {QuantityText.Length(section.WidthM)} wide on layer {section.Layer}; "
                + $"{worst.Rating.Name} puts the rise at {worst.Rating.TraceRiseText(section)}, {QuantityText.TemperatureDifference(limitK)} is allowed "
                + $"({worst.Rating.BesideTrace(section)}{(NeckFigures.Of(net, section, worst.Rating) is { } figures ? $"; {figures}" : "")}"
                + $"{heat.Beside(section.Layer, section.AtXM, section.AtYM)}).",
            $"Widen it to {QuantityText.Length(neededM)} or more, or carry part of the current on another layer.",
            worst.Rating.TraceAssumption(section));
    }

    private static Finding FindingOf(SolvedNet net, NeckCut worst, JointSection section, OwnRise heat, double limitK) =>
        FindingOf(net, worst, limitK,
            $"{QuantityText.Current(section.CurrentA)} runs through {JointText.Of(section, worst.Rating.Stack)}; "
                + $"{worst.Rating.Name} puts the rise of one conductor of that section at {worst.Rating.JointRiseText(section)}, "
                + $"{QuantityText.TemperatureDifference(limitK)} is allowed ({worst.Rating.BesideJoint(section)}; {NeckFigures.Of(section, worst.Rating)}"
                + $"{heat.Beside(worst.AtLayer, section.AtXM, section.AtYM)}).",
            $"Give it {QuantityText.Area(worst.Rating.NeededRatio(section, limitK) * worst.Rating.CopperSectionM2(section))} of copper or more: "
                + (section.IsClosed ? "a larger contact, or more layers and plated holes at it." : "wider webs, fewer or smaller clearances, or another layer."),
            worst.Rating.JointAssumption(section));

    private static Finding FindingOf(SolvedNet net, NeckCut worst, double limitK, string sentence, string advice, string assumption) => new(
        RuleCatalogue.Neck.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, worst.AtLayer, worst.AtXM, worst.AtYM,
        new Measure("temperature rise", "K", worst.RiseK, limitK), sentence, advice, assumption);
}

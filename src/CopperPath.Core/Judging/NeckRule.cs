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
    /// <param name="study">The range of what is not known.</param>
    public static IEnumerable<Finding> Judge(SolvedNet net, IReadOnlyList<ConductorRating> charts, OwnRise heat, ToleranceStudy study)
    {
        List<NeckCut> found = [];
        foreach ((NeckCut worst, List<NeckCut> neck) in Necks(net, CutsOf(net, [.. charts.Select(chart => new ChartAtWorst(chart, 1))])))
        {
            found.AddRange(neck);
            Spread rise = RiseOf(net, worst, study);
            yield return (worst.Joint is { } joint ? FindingOf(net, worst, joint, heat, rise) : FindingOf(net, worst, worst.Single!, heat, rise)) with
            {
                Extent = BoxNm.Around(neck.Select(cut => cut.Extent)),
            };
        }

        // Those that were not found as stated, with the build and the currents at their worse ends.
        ChartAtWorst[] atWorst = [.. charts.Select(study.AtWorst)];
        foreach ((NeckCut worst, _) in Necks(net, CutsOf(net, atWorst).Where(cut => !found.Exists(own => own.IsBeside(cut)))))
        {
            ChartAtWorst by = atWorst.First(chart => chart.Rating == worst.Rating);
            yield return AsStated(net, worst, by, charts[Array.IndexOf(atWorst, by)], study);
        }
    }

    /// <summary>Every cut that a relation may judge, with the relation's build and currents.</summary>
    private static IEnumerable<NeckCut> CutsOf(SolvedNet net, IReadOnlyList<ChartAtWorst> charts) => charts.SelectMany(chart =>
        net.Sections.Select(chart.Of).Where(chart.Rating.CanJudge).Select(section => NeckCut.Of(section, chart.Rating))
            .Concat(net.Joint.Necks.Where(section => !IsOfHoles(section)).Select(chart.Of).Where(chart.Rating.CanJudge).Select(section => NeckCut.Of(section, chart.Rating))));

    /// <summary>The worst cut of each neck beyond a limit, and the cuts of the same neck, hottest first.</summary>
    private static IEnumerable<(NeckCut Worst, List<NeckCut> Neck)> Necks(SolvedNet net, IEnumerable<NeckCut> cuts)
    {
        List<NeckCut> waiting = [.. cuts.Where(cut => cut.RiseK > net.Bound.Review.Limits.TemperatureRiseK)
            .OrderByDescending(cut => cut.RiseK).ThenBy(cut => cut.AtXM).ThenBy(cut => cut.AtYM)];
        while (waiting.Count > 0)
        {
            NeckCut worst = waiting[0];
            List<NeckCut> neck = worst.Neck(waiting);
            waiting.RemoveAll(cut => neck.Exists(own => own.IsBeside(cut)));
            yield return (worst, neck);
        }
    }

    /// <summary>The ring where holes meet a plane, cut together with their walls, is the neck <see cref="BarrelRule"/> speaks of.</summary>
    private static bool IsOfHoles(JointSection section) => section.IsClosed && section.Holes.Count > 0;

    private static Spread RiseOf(SolvedNet net, NeckCut cut, ToleranceStudy study) =>
        cut.Joint is { } joint ? study.OfCut(net, joint, cut.Rating) : study.OfCut(net, cut.Single!, cut.Rating);

    private static Finding AsStated(SolvedNet net, NeckCut worst, ChartAtWorst by, ConductorRating rating, ToleranceStudy study)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        if (worst.Joint is { } joint)
        {
            JointSection together = by.AsStated(joint);
            Spread ofAll = study.OfCut(net, together, rating);
            return FindingOf(net, worst, FindingLevel.WithinAsStated, ofAll,
                $"{QuantityText.Current(together.CurrentA)} runs through {JointText.Of(together, rating.Stack)}; "
                    + $"{rating.Name} puts the rise of one conductor of that section at {RangeWords.Of(ofAll, limitK, QuantityText.TemperatureDifference)}",
                $"Give it {QuantityText.Area(by.Rating.NeededRatio(joint, limitK) * rating.CopperSectionM2(together))} of copper or more, or state the copper that is ordered.",
                $"{rating.JointAssumption(together)}; {RangeWords.Assumption}");
        }

        Section section = by.AsStated(worst.Single!);
        Spread rise = study.OfCut(net, section, rating);
        return FindingOf(net, worst, FindingLevel.WithinAsStated, rise,
            $"{QuantityText.Current(section.CurrentA)} runs through copper {QuantityText.Length(section.WidthM)} wide on layer {section.Layer}; "
                + $"{rating.Name} puts the rise at {RangeWords.Of(rise, limitK, QuantityText.TemperatureDifference)}",
            $"Widen it to {QuantityText.Length(by.Rating.TraceWidthM(worst.Single!, limitK))} or more, or state the copper that is ordered.",
            $"{rating.TraceAssumption(section)}; {RangeWords.Assumption}");
    }

    private static Finding FindingOf(SolvedNet net, NeckCut worst, Section section, OwnRise heat, Spread rise)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        double neededM = worst.Rating.TraceWidthM(section, limitK);
        return Beyond(net, worst, rise,
            $"{QuantityText.Current(section.CurrentA)} runs through copper {QuantityText.Length(section.WidthM)} wide on layer {section.Layer}; "
                + $"{worst.Rating.Name} puts the rise at {worst.Rating.TraceRiseText(section)}, {QuantityText.TemperatureDifference(limitK)} is allowed "
                + $"({worst.Rating.BesideTrace(section)}{(NeckFigures.Of(net, section, worst.Rating) is { } figures ? $"; {figures}" : "")}"
                + $"{heat.Beside(section.Layer, section.AtXM, section.AtYM)}).",
            $"Widen it to {QuantityText.Length(neededM)} or more, or carry part of the current on another layer.",
            worst.Rating.TraceAssumption(section));
    }

    private static Finding FindingOf(SolvedNet net, NeckCut worst, JointSection section, OwnRise heat, Spread rise)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        return Beyond(net, worst, rise,
            $"{QuantityText.Current(section.CurrentA)} runs through {JointText.Of(section, worst.Rating.Stack)}; "
                + $"{worst.Rating.Name} puts the rise of one conductor of that section at {worst.Rating.JointRiseText(section)}, "
                + $"{QuantityText.TemperatureDifference(limitK)} is allowed ({worst.Rating.BesideJoint(section)}; {NeckFigures.Of(section, worst.Rating)}"
                + $"{heat.Beside(worst.AtLayer, section.AtXM, section.AtYM)}).",
            $"Give it {QuantityText.Area(worst.Rating.NeededRatio(section, limitK) * worst.Rating.CopperSectionM2(section))} of copper or more: "
                + (section.IsClosed ? "a larger contact, or more layers and plated holes at it." : "wider webs, fewer or smaller clearances, or another layer."),
            worst.Rating.JointAssumption(section));
    }

    private static Finding Beyond(SolvedNet net, NeckCut worst, Spread rise, string sentence, string advice, string assumption) =>
        FindingOf(net, worst, FindingLevel.BeyondLimit, rise, sentence, advice, assumption);

    private static Finding FindingOf(
        SolvedNet net, NeckCut worst, FindingLevel level, Spread rise, string sentence, string advice, string assumption)
    {
        Measure measure = new("temperature rise", "K", rise.Nominal, net.Bound.Review.Limits.TemperatureRiseK) { Worst = rise.Worst };
        return new Finding(
            RuleCatalogue.Neck.Id, level, net.Bound.Review.Name, worst.AtLayer, worst.AtXM, worst.AtYM, measure, sentence, advice, assumption)
        {
            Extent = worst.Extent,
        };
    }
}

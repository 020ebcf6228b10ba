using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// Judges every cut across the current as if it were a long isolated conductor of that width, where the brief chose a
/// chart relation and the cut lies inside its range. It is far on the safe side for short necks between wide pours and
/// for boards with planes, and blind to copper in parallel.
/// </summary>
internal static class NeckRule
{
    /// <summary>Cuts this near the worst one of a neck, or near one like it, are the same neck, metres.</summary>
    private const double SameNeckM = 2e-3;

    /// <summary>Cuts along a long neck are like the worst one: width and current within this share of its own.</summary>
    private const double AlikeShare = 0.05;

    public static IEnumerable<Finding> Judge(SolvedNet net, ConductorRating rating, OwnRise heat, ToleranceStudy study)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        List<Section> found = [];
        foreach ((Section worst, List<Section> cuts) in Necks([.. net.Sections.Where(rating.CanJudge)], rating, limitK))
        {
            found.AddRange(cuts);
            yield return FindingOf(net, rating, heat, worst, study.OfCut(net, worst, rating));
        }

        // Those that were not found as stated, with the build and the currents at their worse ends.
        ChartAtWorst atWorst = study.AtWorst(rating);
        List<Section> others = [.. net.Sections.Where(section => !found.Exists(cut => cut.Layer == section.Layer && IsBeside(cut, section)))
            .Select(atWorst.Of).Where(atWorst.Rating.CanJudge)];
        foreach ((Section worst, _) in Necks(others, atWorst.Rating, limitK))
        {
            Section stated = worst with { CurrentA = worst.CurrentA / atWorst.CurrentScale };
            yield return AsStated(net, rating, stated, study.OfCut(net, stated, rating), atWorst.Rating.TraceWidthM(worst, limitK));
        }
    }

    /// <summary>The worst cut of each neck beyond a limit, and the cuts along it, hottest first.</summary>
    private static IEnumerable<(Section Worst, List<Section> Cuts)> Necks(List<Section> sections, ConductorRating rating, double limitK)
    {
        List<Section> waiting = [.. sections.Select(section => (section, RiseK: rating.TraceRiseK(section)))
            .Where(judged => judged.RiseK > limitK)
            .OrderByDescending(judged => judged.RiseK).ThenBy(judged => judged.section.AtXM).ThenBy(judged => judged.section.AtYM)
            .Select(judged => judged.section)];
        while (waiting.Count > 0)
        {
            Section worst = waiting[0];
            List<Section> cuts = AlongTheNeckOf(worst, waiting);
            waiting.RemoveAll(section => section.Layer == worst.Layer && cuts.Exists(cut => IsBeside(cut, section)));
            yield return (worst, cuts);
        }
    }

    /// <summary>The worst cut of a neck and the row of cuts like it, each beside one before it.</summary>
    private static List<Section> AlongTheNeckOf(Section worst, List<Section> cuts)
    {
        List<Section> neck = [worst];
        List<Section> alike = [.. cuts.Where(cut => cut != worst && cut.Layer == worst.Layer && IsAlike(worst, cut))];
        for (int next = 0; next < neck.Count; next++)
        {
            Section from = neck[next];
            neck.AddRange(alike.Where(cut => IsBeside(from, cut)));
            alike.RemoveAll(cut => IsBeside(from, cut));
        }

        return neck;
    }

    private static bool IsBeside(Section a, Section b) => Distance(a, b) < SameNeckM + (0.75 * a.WidthM);

    private static bool IsAlike(Section worst, Section section) =>
        Math.Abs(section.WidthM - worst.WidthM) <= AlikeShare * worst.WidthM
        && Math.Abs(section.CurrentA - worst.CurrentA) <= AlikeShare * worst.CurrentA;

    private static Finding AsStated(SolvedNet net, ConductorRating rating, Section section, Spread rise, double neededM)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        return new Finding(
            RuleCatalogue.Neck.Id, FindingLevel.WithinAsStated, net.Bound.Review.Name, section.Layer, section.AtXM, section.AtYM,
            new Measure("temperature rise", "K", rise.Nominal, limitK) { Worst = rise.Worst },
            $"{QuantityText.Current(section.CurrentA)} runs through copper {QuantityText.Length(section.WidthM)} wide on layer {section.Layer}; "
                + $"{rating.Name} puts the rise at {RangeWords.Of(rise, limitK, QuantityText.TemperatureDifference)}",
            $"Widen it to {QuantityText.Length(neededM)} or more, or state the copper that is ordered.",
            $"{rating.TraceAssumption(section)}; {RangeWords.Assumption}")
        {
            Extent = ExtentOf(section),
        };
    }

    private static Finding FindingOf(SolvedNet net, ConductorRating rating, OwnRise heat, Section section, Spread rise)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        double neededM = rating.TraceWidthM(section, limitK);
        return new Finding(
            RuleCatalogue.Neck.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, section.Layer, section.AtXM, section.AtYM,
            new Measure("temperature rise", "K", rise.Nominal, limitK) { Worst = rise.Worst },
            $"{QuantityText.Current(section.CurrentA)} runs through copper {QuantityText.Length(section.WidthM)} wide on layer {section.Layer}; "
                + $"{rating.Name} puts the rise at {rating.TraceRiseText(section)}, {QuantityText.TemperatureDifference(limitK)} is allowed "
                + $"({rating.BesideTrace(section)}"
                + $"{heat.Beside(section.Layer, section.AtXM, section.AtYM)}).",
            $"Widen it to {QuantityText.Length(neededM)} or more, or carry part of the current on another layer.",
            rating.TraceAssumption(section))
        {
            Extent = ExtentOf(section),
        };
    }

    private static BoxNm ExtentOf(Section section) =>
        BoxNm.Of([PointNm.FromMetres(section.FromXM, section.FromYM), PointNm.FromMetres(section.ToXM, section.ToYM)]);

    private static double Distance(Section a, Section b) =>
        Math.Sqrt(((a.AtXM - b.AtXM) * (a.AtXM - b.AtXM)) + ((a.AtYM - b.AtYM) * (a.AtYM - b.AtYM)));
}

using System.Globalization;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Polygons;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// Judges every plated hole as a long conductor of equal section, where the brief chose a chart relation and the hole
/// lies inside its range, with the current the field solve gives it (not the average of its group); speaks once per
/// group of neighbouring holes. A hole is within the limit when the largest current it may carry is; where the accuracy
/// asked for was not reached, <see cref="AccuracyRule"/> leaves others undecided. A hole is no long conductor: measured
/// ones stay within some kelvin of the copper they join (docs/thermal.md), so the rule is far on the safe side.
/// </summary>
internal static class BarrelRule
{
    /// <summary>Holes nearer than this belong to one group, metres.</summary>
    private const double GroupReachM = 2.5e-3;

    public static IEnumerable<Finding> Judge(SolvedNet net, IReadOnlyList<ConductorRating> charts, OwnRise heat, ToleranceStudy study)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        bool isAccurate = net.Conduction.Status == ConductionStatus.Solved;
        ChartAtWorst[] atWorst = [.. charts.Select(study.AtWorst)];
        foreach (List<BarrelCurrent> group in Groups(net.Conduction.Barrels))
        {
            // The relation that sees most in the group speaks for it.
            if (charts.Select(rating => (Rating: rating, Hot: HotIn(group, rating, limitK, isAccurate))).Where(judged => judged.Hot.Count > 0)
                .OrderByDescending(judged => judged.Rating.BarrelRiseK(judged.Hot[0])).FirstOrDefault() is ({ } rating, var hot))
            {
                yield return FindingOf(net, rating, heat, group, hot, study.OfHole(net, hot[0], rating));
            }
            else if (Enumerable.Range(0, charts.Count).Select(c => (Chart: c, Hot: HotIn([.. group.Select(atWorst[c].Of)], atWorst[c].Rating, limitK, isAccurate)))
                .Where(judged => judged.Hot.Count > 0).OrderByDescending(judged => atWorst[judged.Chart].Rating.BarrelRiseK(judged.Hot[0])).FirstOrDefault() is (var chart, { } hotAtWorst))
            {
                BarrelCurrent stated = hotAtWorst[0] with { CurrentA = hotAtWorst[0].CurrentA / atWorst[chart].CurrentScale };
                yield return AsStated(net, charts[chart], stated, study.OfHole(net, stated, charts[chart]));
            }
        }
    }

    private static Finding AsStated(SolvedNet net, ConductorRating rating, BarrelCurrent barrel, Spread rise)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        return new Finding(
            RuleCatalogue.Barrel.Id, FindingLevel.WithinAsStated, net.Bound.Review.Name, barrel.UpperLayer,
            Units.MetresFromNm(barrel.Barrel.Centre.X), Units.MetresFromNm(barrel.Barrel.Centre.Y),
            new Measure("temperature rise", "K", rise.Nominal, limitK) { Worst = rise.Worst },
            $"This plated hole carries {QuantityText.Current(Math.Abs(barrel.CurrentA))} between layers {barrel.UpperLayer} and {barrel.LowerLayer}; "
                + $"{rating.Name} puts the rise at {RangeWords.Of(rise, limitK, QuantityText.TemperatureDifference)}",
            "Use more holes here, or state the plating that is ordered.",
            $"{rating.BarrelAssumption(barrel)}; {RangeWords.Assumption}");
    }

    private static List<BarrelCurrent> HotIn(List<BarrelCurrent> group, ConductorRating rating, double limitK, bool isAccurate) =>
        [.. group.Where(rating.CanJudge)
            .Select(barrel => rating.BarrelRiseK(barrel) > limitK || !isAccurate ? barrel : barrel.AtMost())
            .Where(barrel => rating.BarrelRiseK(barrel) > limitK)
            .OrderByDescending(rating.BarrelRiseK)];

    private static Finding FindingOf(
        SolvedNet net, ConductorRating rating, OwnRise heat, List<BarrelCurrent> group, List<BarrelCurrent> hot, Spread rise)
    {
        double limitK = net.Bound.Review.Limits.TemperatureRiseK;
        BarrelCurrent worst = hot[0];
        double allowedA = rating.BarrelCurrentA(worst.Barrel.Feature, limitK);

        // Scaling the whole group by the worst hole's excess keeps the uneven sharing the field solve found.
        int needed = (int)Math.Ceiling(group.Count * Math.Abs(worst.CurrentA) / allowedA);
        return new Finding(
            RuleCatalogue.Barrel.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, worst.UpperLayer,
            Units.MetresFromNm(worst.Barrel.Centre.X), Units.MetresFromNm(worst.Barrel.Centre.Y),
            new Measure("temperature rise", "K", rise.Nominal, limitK) { Worst = rise.Worst },
            Load(worst, group, hot.Count, allowedA)
                + $": a rise of {rating.BarrelRiseText(worst)} by {rating.Name}, "
                + $"{QuantityText.TemperatureDifference(limitK)} is allowed "
                + $"({rating.BesideBarrel(worst)}"
                + $"{heat.Beside(worst.UpperLayer, Units.MetresFromNm(worst.Barrel.Centre.X), Units.MetresFromNm(worst.Barrel.Centre.Y))}).",
            string.Create(CultureInfo.InvariantCulture, $"Use about {needed} holes of this size here, spread across the path of the current."),
            rating.BarrelAssumption(worst))
        {
            Extent = BoxNm.Of(hot.Select(judged => judged.Barrel.Centre)).GrownBy(worst.Barrel.Feature.ToolDiameterNm / 2),
        };
    }

    private static string Load(BarrelCurrent worst, List<BarrelCurrent> group, int hot, double allowedA)
    {
        string worstA = $"{QuantityText.Current(Math.Abs(worst.CurrentA))} (give or take {QuantityText.Current(worst.AccuracyA)})";
        string layers = FormattableString.Invariant($"between layers {worst.UpperLayer} and {worst.LowerLayer}");
        return group.Count == 1
            ? $"This plated hole carries {worstA} {layers}, more than the {QuantityText.Current(allowedA)} allowed"
            : FormattableString.Invariant($"{hot} of {group.Count} plated holes in this group {(hot == 1 ? "carries" : "carry")} more than the {QuantityText.Current(allowedA)} allowed; ")
                + $"the worst takes {worstA} of the group's {QuantityText.Current(group.Sum(barrel => Math.Abs(barrel.CurrentA)))} {layers}";
    }

    internal static List<List<BarrelCurrent>> Groups(IReadOnlyList<BarrelCurrent> barrels)
    {
        List<BarrelCurrent> busiest = [.. BarrelCurrent.BusiestOfEachHole(barrels)
            .OrderBy(barrel => barrel.Barrel.Centre.X).ThenBy(barrel => barrel.Barrel.Centre.Y)];
        DisjointSets sets = new(busiest.Count);
        for (int i = 0; i < busiest.Count; i++)
        {
            for (int j = i + 1; j < busiest.Count
                && Units.MetresFromNm(busiest[j].Barrel.Centre.X - busiest[i].Barrel.Centre.X) < GroupReachM; j++)
            {
                if (Units.MetresFromNm(busiest[i].Barrel.Centre.DistanceNmTo(busiest[j].Barrel.Centre)) < GroupReachM)
                {
                    sets.Join(i, j);
                }
            }
        }

        return [.. Enumerable.Range(0, busiest.Count).GroupBy(sets.Find)
            .Select(group => group.Select(i => busiest[i]).ToList())];
    }
}

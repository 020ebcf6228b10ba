using CopperPath.Artwork;
using CopperPath.Core.Tests.Copper;
using CopperPath.Polygons;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>How the counted work of a union grows with the number of shapes on one spot: the count is the same on any machine.</summary>
public sealed class CrowdWorkTests
{
    public static TheoryData<string> Shapes => ["flashes", "strokes", "arcs", "regions"];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void EqualShapesCostNoMoreThanOne(string shape)
    {
        long one = WorkOf(Steps(shape, 1, 0));

        WorkOf(Steps(shape, 100, 0)).ShouldBe(one);
        WorkOf(Steps(shape, 10_000, 0)).ShouldBe(one);
    }

    /// <summary>From 125 to 1 000 that is 11.4 times the work.</summary>
    [Theory]
    [MemberData(nameof(Shapes))]
    public void ShapesANanometreApartCostNoMoreThanTheirNumberTimesItsLogarithm(string shape)
    {
        double few = WorkOf(Steps(shape, 125, 1)), many = WorkOf(Steps(shape, 1_000, 1));

        (many / few).ShouldBeLessThan(1_000 * Math.Log(1_000) / (125 * Math.Log(125)));
    }

    /// <summary>Eight times as many take 12.2 times the work, a power of 1.2; all pairs would be 64 times.</summary>
    [Fact]
    public void BoxesOfAllSizesInOneCornerCostLittleMoreThanTheirNumber()
    {
        double few = WorkOf(Nested(500)), many = WorkOf(Nested(4_000));

        (many / few).ShouldBeLessThan(Math.Pow(8, 1.25));

        static List<PaintStep> Nested(int count) =>
            [.. Enumerable.Range(1, count).Select(i => new PaintStep(true, [Scene.Box(0, 0, 1_000 * i, 1_000 * i)], default))];
    }

    [Fact]
    public void ASpentBudgetEndsTheWorkAtTheSamePlaceWhateverTheNumberOfWorkers()
    {
        Segment[] segments = SegmentsOf([new PaintStep(true, [new Scene(1).Scribble(600, 50_000_000)], default)], out CoverageRule rule);

        EntangledOutlinesException[] spent = [.. new[] { 1, 2, 8 }.Select(workers =>
            Should.Throw<EntangledOutlinesException>(() => SnapRounding.Run(segments, rule, new WorkBudget(1_000_000), workers)))];

        spent.Select(exception => exception.Place).Distinct().ShouldHaveSingleItem();
        spent.ShouldAllBe(exception => exception.SourceNumber == 0);
        Should.NotThrow(() => SnapRounding.Run(segments, rule, WorkBudget.For(segments.Length)));
    }

    private static List<PaintStep> Steps(string shape, int count, long stepNm)
    {
        string text = shape switch
        {
            "flashes" => StackedGerber.Flashes(count, 10, stepNm),
            "strokes" => StackedGerber.Strokes(count, 0.5, stepNm),
            "arcs" => StackedGerber.ShiftedArcs(count, 0.5, 5_000_000, stepNm),
            _ => StackedGerber.Regions(count, stepNm),
        };
        return [.. GerberReader.Read("crowd.gbr", System.Text.Encoding.ASCII.GetBytes(text)).Artwork!.Objects
            .Select(painted => new PaintStep(painted.Polarity == Polarity.Dark, painted.Rings, painted.Offset))];
    }

    private static long WorkOf(List<PaintStep> steps)
    {
        Segment[] segments = SegmentsOf(steps, out CoverageRule rule);
        WorkBudget budget = WorkBudget.For(segments.Length);
        SnapRounding.Run(segments, rule, budget);
        return budget.SpentUnits;
    }

    private static Segment[] SegmentsOf(List<PaintStep> steps, out CoverageRule rule)
    {
        List<int> seen = LastOfEqual.Of(steps);
        var segments = new SegmentSet();
        for (int i = 0; i < seen.Count; i++)
        {
            segments.AddRings(steps[seen[i]].Rings, i, steps[seen[i]].Offset);
        }

        rule = CoverageRule.Painted([.. seen.Select(_ => 1)], [false, true]);
        return segments.ToSegments();
    }
}

using CopperPath.Geometry;
using CopperPath.Polygons;
using NetTopologySuite.Operation.Distance;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>Narrow gaps between polygons, judged by NetTopologySuite's distance of every pair.</summary>
public sealed class PolygonGapsTests
{
    [Fact]
    public void CornersThatTouchHaveNoWidth() =>
        Gaps(10, Scene.Box(0, 0, 10, 10), Scene.Box(10, 10, 20, 20)).ShouldBe([new PolygonGap(0, 1, 0, new(10, 10))]);

    [Fact]
    public void CornerOnASideHasNoWidth() =>
        Gaps(10, Scene.Box(0, 0, 100, 100), [new(100, 41), new(180, 11), new(180, 91)])
            .ShouldBe([new PolygonGap(0, 1, 0, new(100, 41))]);

    [Fact]
    public void GapIsFoundBelowTheLimitOnly()
    {
        Gaps(30, Scene.Box(0, 0, 100, 100), Scene.Box(129, 20, 200, 80)).Single().WidthNm.ShouldBe(29);
        Gaps(30, Scene.Box(0, 0, 100, 100), Scene.Box(130, 20, 200, 80)).ShouldBeEmpty();
    }

    [Fact]
    public void IslandInAHoleIsMeasuredToTheHole()
    {
        PolygonNm frame = new(Scene.Box(0, 0, 100, 100), [[.. Scene.Box(10, 10, 90, 90).Reverse()]]);

        PolygonGaps.Below([frame, new PolygonNm(Scene.Box(13, 30, 60, 60), [])], 5).Gaps.Single().WidthNm.ShouldBe(3);
    }

    [Fact]
    public void NothingIsNearNothing() => PolygonGaps.Below([], 1).Gaps.ShouldBeEmpty();

    [Fact]
    public void PiecesThatAreAllNearEachOtherAreGivenUpAtTheSamePlaceEachTime()
    {
        static PolygonGapsFound Among(int count) => PolygonGaps.Below(
            [.. Enumerable.Range(0, count).Select(i => new PolygonNm(Scene.Box(2 * i, 0, (2 * i) + 1, 1_000_000), []))], 50_000);

        (PolygonGapsFound few, PolygonGapsFound many) = (Among(200), Among(5_000));

        few.IsComplete.ShouldBeTrue();
        few.Gaps.Count.ShouldBe(200 * 199 / 2);
        many.IsComplete.ShouldBeFalse();
        many.Gaps.Count.ShouldBeInRange(1, 1_000_000);
        Among(5_000).Gaps.ShouldBe(many.Gaps);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2_000)]
    [InlineData(80_000)]
    public void RandomPolygonsHaveTheGapsTheOracleFinds(long limitNm)
    {
        for (int seed = 0; seed < 12; seed++)
        {
            var scene = new Scene(15_000 + seed);
            var polygons = seed % 3 == 0
                ? PolygonOperations.Union(scene.Lattice(40, 14, limitNm / 2 is 0 ? 3 : limitNm / 2))
                : PolygonOperations.Union(scene.Copper(60, 6_000_000, 250_000));
            NtsGeometry[] judges = [.. polygons.Select(polygon => Oracle.ToNts([polygon]))];
            List<(int, int, double)> expected = [];
            for (int a = 0; a < judges.Length; a++)
            {
                for (int b = a + 1; b < judges.Length; b++)
                {
                    double distanceNm = polygons[a].Bounds.GrownBy(limitNm).Touches(polygons[b].Bounds)
                        ? DistanceOp.Distance(judges[a], judges[b]) : double.MaxValue;
                    if (distanceNm < limitNm)
                    {
                        expected.Add((a, b, Math.Round(distanceNm, 3)));
                    }
                }
            }

            PolygonGaps.Below(polygons, limitNm).Gaps.Select(gap => (gap.A, gap.B, Math.Round(gap.WidthNm, 3))).ShouldBe(expected, $"seed {seed}");
        }
    }

    private static IReadOnlyList<PolygonGap> Gaps(long limitNm, params PointNm[][] rings) =>
        PolygonGaps.Below([.. rings.Select(ring => new PolygonNm(ring, []))], limitNm).Gaps;
}

using CopperPath.Geometry;
using CopperPath.Polygons;
using NetTopologySuite.Operation.Overlay;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>
/// Painting order. Rule: dark steps add, clear steps remove what lies there already (Gerber layer format,
/// polarity of graphical steps). Random pictures are painted object by object with NetTopologySuite.
/// </summary>
public class PaintTests
{
    [Fact]
    public void ClearRemovesOnlyWhatWasPaintedBefore()
    {
        var image = PolygonOperations.Paint(
        [
            Dark(Scene.Box(0, 0, 100, 100)),
            Clear(Scene.Box(20, 20, 80, 80)),
            Dark(Scene.Box(40, 40, 60, 60)),
        ]);

        image.Count.ShouldBe(2);
        image.Sum(p => p.AreaNm2).ShouldBe(10000 - 3600 + 400);
        image[0].Holes.Length.ShouldBe(1);
    }

    [Fact]
    public void ClearingFirstRemovesNothing()
    {
        var image = PolygonOperations.Paint(
            [Clear(Scene.Box(0, 0, 50, 50)), Dark(Scene.Box(0, 0, 10, 10))]);

        image.Single().AreaNm2.ShouldBe(100);
    }

    [Fact]
    public void OffsetsMoveSharedRings()
    {
        PointNm[][] shared = [Scene.Box(-5, -5, 5, 5)];
        var image = PolygonOperations.Paint(
            [.. Enumerable.Range(0, 4).Select(i => new PaintStep(true, shared, new PointNm(i * 8, 0)))]);

        image.Single().Outer.ShouldBe(Scene.Box(-5, -5, 29, 5));
    }

    [Fact]
    public void DirectionOfASingleContourDoesNotMatter()
    {
        PointNm[] clockwise = [.. Scene.Box(0, 0, 10, 10).Reverse()];
        var image = PolygonOperations.Paint([Dark(Scene.Box(5, 0, 15, 10)), Dark(clockwise)]);

        image.Single().Outer.ShouldBe(Scene.Box(0, 0, 15, 10));
    }

    [Fact]
    public void SelfCrossingContourDoesNotCancelItsNeighbour()
    {
        // The left lobe of the eight winds clockwise; together with the square its winding number would be zero.
        PointNm[] eight = [new(0, 0), new(10, 10), new(10, 0), new(0, 10)];
        var image = PolygonOperations.Paint([Dark(eight), Dark(Scene.Box(0, 0, 10, 10))]);

        image.Single().Outer.ShouldBe(Scene.Box(0, 0, 10, 10));
    }

    [Fact]
    public void HoleOfOneObjectIsFilledByAnother()
    {
        PointNm[][] ringPad = [Scene.Box(0, 0, 30, 30), [.. Scene.Box(10, 10, 20, 20).Reverse()]];
        var image = PolygonOperations.Paint(
            [new PaintStep(true, ringPad, default), Dark(Scene.Box(15, 15, 17, 17))]);

        image.Sum(p => p.AreaNm2).ShouldBe(900 - 100 + 4);
        image.Count.ShouldBe(2);
    }

    [Fact]
    public void RandomPicturesAgreeWithPaintingObjectByObject()
    {
        for (int seed = 0; seed < 30; seed++)
        {
            var scene = new Scene(8000 + seed);
            var rings = seed % 2 == 0 ? scene.Lattice(25, 8, 1_000) : scene.Copper(25, 1_000_000, 250_000);
            List<PaintStep> steps = [];
            var expected = Oracle.UnionOfSimple([]);
            foreach (PointNm[] ring in rings)
            {
                bool dark = scene.Below(3) > 0;
                steps.Add(new PaintStep(dark, [ring], default));
                expected = Oracle.Overlay(expected, Oracle.UnionOfSimple([ring]),
                    dark ? SpatialFunction.Union : SpatialFunction.Difference);
            }

            Oracle.ShouldAgree(PolygonOperations.Paint(steps), expected, $"picture seed {seed}");
        }
    }

    [Fact]
    public void ThousandsOfAlternatingRunsKeepTheirOrder()
    {
        // Each square hides all but a frame, one nanometre wide, of the one painted before.
        List<PaintStep> steps = [];
        for (int half = 3000; half > 0; half--)
        {
            steps.Add(new PaintStep(half % 2 == 0, [Scene.Box(-half, -half, half, half)], default));
        }

        // Dark frames between half sides k and k - 1, k = 2, 4, ... 3000: (2 k)^2 - (2 k - 2)^2 = 8 k - 4 each.
        double expected = Enumerable.Range(1, 1500).Sum(i => (16.0 * i) - 4);
        var image = PolygonOperations.Paint(steps);

        image.Count.ShouldBe(1500);
        image.Sum(p => p.AreaNm2).ShouldBe(expected);
    }

    private static PaintStep Dark(PointNm[] ring) => new(true, [ring], default);

    private static PaintStep Clear(PointNm[] ring) => new(false, [ring], default);
}

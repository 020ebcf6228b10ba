using CopperPath.Artwork;
using CopperPath.Core.Tests.Reading.Gerber;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using NetTopologySuite.Geometries;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Core.Tests.ArtworkRoom;

/// <summary>Strokes against NetTopologySuite: buffers of finely divided paths, hulls of two stamps.</summary>
public sealed class StrokeOutlineTests
{
    private static readonly GeometryFactory Factory = new(new PrecisionModel());

    [Fact]
    public void ARoundPenCoversTheBufferOfItsPath()
    {
        var random = new Random(77);
        for (int i = 0; i < 40; i++)
        {
            var from = new PointNm(random.Next(-3_000_000, 3_000_000), random.Next(-3_000_000, 3_000_000));
            double radiusNm = random.Next(50_000, 2_000_000);
            double penNm = random.Next(20_000, 1_000_000);
            double startRad = random.NextDouble() * 6;
            double sweepRad = 0.05 + (random.NextDouble() * 6);
            Vector centre = Vector.Of(from) - (radiusNm * Direction(startRad));
            PointNm to = (centre + (radiusNm * Direction(startRad + sweepRad))).Rounded();
            Arc arc = Arc.Between(Vector.Of(from), Vector.Of(to), centre, Turn.CounterClockwise);
            var cap = new RoundCap(penNm, 500);
            Coordinate[] fine = [.. Enumerable.Range(0, 2001).Select(k => centre + (radiusNm * Direction(startRad + (sweepRad * k / 2000)))).Select(v => new Coordinate(v.X, v.Y))];
            ShouldCover(StrokeOutline.RoundPenArc(from, to, arc, cap), Factory.CreateLineString(fine).Buffer(penNm, 128));
            ShouldCover(
                StrokeOutline.RoundPenLine(from, to, cap),
                Factory.CreateLineString([new Coordinate(from.X, from.Y), new Coordinate(to.X, to.Y)]).Buffer(penNm, 128));
        }
    }

    [Fact]
    public void AConvexPenCoversTheHullOfItsEnds()
    {
        var random = new Random(78);
        PointNm[] hexagon = [.. Enumerable.Range(0, 6).Select(i => (300_000 * Direction(i * Math.PI / 3)).Rounded())];
        PointNm[] square = [new(-200_000, -100_000), new(200_000, -100_000), new(200_000, 100_000), new(-200_000, 100_000)];
        for (int i = 0; i < 200; i++)
        {
            PointNm[] stamp = i % 2 == 0 ? hexagon : square;
            var to = new PointNm(random.Next(-3, 4) * 100_000, random.Next(-3, 4) * 100_000);
            PointNm[] ring = StrokeOutline.ConvexPenLine(default, to, stamp).ShouldHaveSingleItem();
            NtsGeometry hull = Factory.CreateMultiPointFromCoords(
                [.. stamp.Concat(stamp.Select(p => p + to)).Select(p => new Coordinate(p.X, p.Y))]).ConvexHull();
            Ring.SignedAreaNm2(ring).ShouldBe(hull.Area, 1e-9 * hull.Area);
        }
    }

    private static void ShouldCover(PointNm[][] rings, NtsGeometry expected)
    {
        var stroke = new PaintedObject(
            PaintKind.Stroke, Polarity.Dark, rings, default, default, ObjectLabels.None, SourcePosition.WholeFile("test"));
        NtsGeometry covered = ImageOracle.AreaOf(stroke);

        // The buffer's own chords: 128 to a quarter turn lose at most 1e-5 of a cap; its path lies within 1 nm.
        covered.Area.ShouldBe(expected.Area, (5e-5 * expected.Area) + expected.Length);
    }

    private static Vector Direction(double angleRad) => new(Math.Cos(angleRad), Math.Sin(angleRad));
}

using CopperPath.Geometry;
using CopperPath.Polygons;
using NetTopologySuite.Operation.Overlay;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>
/// Set operations. Areas of the hand-made figures follow from plane geometry; random scenes are judged by
/// NetTopologySuite (OverlayNG), an independent general-purpose geometry library.
/// </summary>
public class PolygonOperationsTests
{
    [Fact]
    public void TwoOverlappingSquaresBecomeOneOctagonalOutline()
    {
        var union = PolygonOperations.Union([Scene.Box(0, 0, 10, 10), Scene.Box(5, 5, 15, 15)]);

        union.Count.ShouldBe(1);
        union[0].Outer.ShouldBe([new(0, 0), new(10, 0), new(10, 5), new(15, 5), new(15, 15), new(5, 15), new(5, 10), new(0, 10)]);
        union[0].Holes.ShouldBeEmpty();
    }

    [Fact]
    public void AbuttingSquaresLoseTheirSharedEdgeAndItsCollinearCorners()
    {
        var union = PolygonOperations.Union([Scene.Box(0, 0, 10, 10), Scene.Box(10, 0, 20, 10)]);

        union.Single().Outer.ShouldBe(Scene.Box(0, 0, 20, 10));
    }

    [Fact]
    public void SquaresThatTouchAtACornerStayTwoPolygons()
    {
        var union = PolygonOperations.Union([Scene.Box(0, 0, 10, 10), Scene.Box(10, 10, 20, 20)]);

        union.Count.ShouldBe(2);
        Oracle.ShouldBeValid(union, "corner contact");
    }

    [Fact]
    public void AFrameWithItsHoleTouchingTheOutlineIsOneValidPolygon()
    {
        PointNm[] hole = [new(0, 10), new(5, 15), new(10, 10), new(5, 5)];
        var frame = PolygonOperations.Union([Scene.Box(0, 0, 20, 20), hole]);

        frame.Single().Holes.Single().ShouldBe([new(0, 10), new(5, 15), new(10, 10), new(5, 5)]);
        frame[0].AreaNm2.ShouldBe(400 - 50);
        Oracle.ShouldBeValid(frame, "hole touches outline");
    }

    [Fact]
    public void AHoleThatCutsThePolygonAtTwoPointsLeavesTwoPolygons()
    {
        PointNm[] hole = [new(0, 10), new(10, 15), new(20, 10), new(10, 5)];
        var halves = PolygonOperations.Union([Scene.Box(0, 0, 20, 20), hole]);

        halves.Count.ShouldBe(2);
        halves.Sum(p => p.AreaNm2).ShouldBe(400 - 100);
        Oracle.ShouldBeValid(halves, "hole touches twice");
    }

    [Fact]
    public void NestedRingsMakeIslandsInsideHoles()
    {
        List<PointNm[]> rings = [];
        for (int k = 0; k < 6; k++)
        {
            PointNm[] box = Scene.Box(k * 10, k * 10, 200 - (k * 10), 200 - (k * 10));
            rings.Add(k % 2 == 0 ? box : [.. box.Reverse()]);
        }

        var nested = PolygonOperations.Union(rings);

        nested.Count.ShouldBe(3);
        nested.ShouldAllBe(p => p.Holes.Length == 1);
        nested.Sum(p => p.AreaNm2).ShouldBe(200 * 200 - (180 * 180) + (160 * 160) - (140 * 140) + (120 * 120) - (100 * 100));
    }

    [Fact]
    public void AContourWithACutInLosesTheCut()
    {
        // A region drawn as one contour that runs to its hole and back along the same line (Gerber "cut-in").
        PointNm[] contour =
        [
            new(0, 0), new(30, 0), new(30, 30), new(0, 30), new(0, 15),
            new(10, 15), new(10, 20), new(20, 20), new(20, 10), new(10, 10), new(10, 15), new(0, 15),
        ];

        var result = PolygonOperations.Union([contour]);

        result.Single().AreaNm2.ShouldBe(900 - 100);
        result[0].Holes.Single().Length.ShouldBe(4);
        result[0].Outer.ShouldBe(Scene.Box(0, 0, 30, 30));
    }

    [Fact]
    public void AFigureOfEightCoversBothLobes()
    {
        var eight = PolygonOperations.Union([[new(0, 0), new(10, 10), new(10, 0), new(0, 10)]]);

        eight.Count.ShouldBe(2);
        eight.Sum(p => p.AreaNm2).ShouldBe(50);
    }

    [Fact]
    public void AHoleOfWindingZeroAndADoubleWindingCoverAsNonzeroSays()
    {
        // A pentagram: its middle has winding two and is covered under nonzero (it would not be under even-odd).
        PointNm[] corners = Scene.Disc(new PointNm(0, 0), 1_000_000, 5);
        var star = PolygonOperations.Union([[corners[0], corners[2], corners[4], corners[1], corners[3]]]);

        // Area of the filled pentagram with circumradius R: 5 R^2 sin(36 deg) sin(18 deg) / sin(126 deg)
        // (ten triangles centre - tip - inner corner; law of sines).
        double sine(double degrees) => Math.Sin(degrees * Math.PI / 180);
        star.Single().AreaNm2.ShouldBe(5e12 * sine(36) * sine(18) / sine(126), 1e7);
    }

    [Fact]
    public void DegenerateRingsCoverNothing()
    {
        PolygonOperations.Union([[], [new(1, 1)], [new(0, 0), new(5, 5)], [new(0, 0), new(5, 5), new(9, 9)]]).ShouldBeEmpty();
        PolygonOperations.Union([]).ShouldBeEmpty();
    }

    [Theory]
    [InlineData(0, 400)]
    [InlineData(1, 50)]
    [InlineData(2, 350)]
    [InlineData(3, 400 + 200 - 100)]
    public void PairOperationsGiveThePlainAreas(int operation, double areaNm2)
    {
        List<PointNm[]> a = [Scene.Box(0, 0, 20, 20)], b = [Scene.Box(15, 5, 25, 15), Scene.Box(40, 40, 50, 50)];
        var result = operation switch
        {
            0 => PolygonOperations.Union(a),
            1 => PolygonOperations.Intersect(a, b),
            2 => PolygonOperations.Subtract(a, b),
            _ => PolygonOperations.SymmetricDifference(a, b),
        };

        result.Sum(p => p.AreaNm2).ShouldBe(areaNm2);
    }

    [Fact]
    public void CoordinatesAtTheLimitOfTheReadersAreExact()
    {
        const long Limit = PointNm.LimitNm;
        PointNm[] left = [new(-Limit, -Limit), new(Limit, Limit - 1), new(Limit, Limit), new(-Limit, Limit)];
        PointNm[] right = [new(-Limit, -Limit), new(Limit, -Limit), new(Limit, Limit - 1)];

        var union = PolygonOperations.Union([left, right]);
        union.Single().Outer.ShouldBe(Scene.Box(-Limit, -Limit, Limit, Limit));

        PolygonOperations.Intersect([left], [right]).ShouldBeEmpty();
    }

    [Fact]
    public void RandomCopperAgreesWithTheOracle()
    {
        for (int seed = 0; seed < 100; seed++)
        {
            var scene = new Scene(seed);
            (long extent, long feature) = seed % 3 == 0 ? (60L, 12L) : seed % 3 == 1 ? (20_000L, 3000L) : (100_000_000L, 9_000_000L);
            var rings = scene.Copper(2 + scene.Below(60), extent, feature);

            Oracle.ShouldAgree(PolygonOperations.Union(rings), Oracle.UnionOfSimple(Oracle.Simple(rings)), $"copper seed {seed}");
        }
    }

    [Fact]
    public void LatticeScenesAgreeWithTheOracle()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            var scene = new Scene(1000 + seed);
            var rings = scene.Lattice(2 + scene.Below(40), 3 + scene.Below(8), seed % 2 == 0 ? 1 : 1_000_003);

            Oracle.ShouldAgree(PolygonOperations.Union(rings), Oracle.UnionOfSimple(rings), $"lattice seed {seed}");
        }
    }

    [Fact]
    public void PairOperationsAgreeWithTheOracle()
    {
        for (int seed = 0; seed < 60; seed++)
        {
            var scene = new Scene(2000 + seed);
            bool lattice = seed % 2 == 0;
            var a = lattice ? scene.Lattice(12, 7, 997) : scene.Copper(20, 1_000_000, 150_000);
            var b = lattice ? scene.Lattice(12, 7, 997) : scene.Copper(20, 1_000_000, 150_000);
            var (na, nb) = (Oracle.UnionOfSimple(a), Oracle.UnionOfSimple(b));

            Oracle.ShouldAgree(PolygonOperations.Intersect(a, b), Oracle.Overlay(na, nb, SpatialFunction.Intersection), $"and, seed {seed}");
            Oracle.ShouldAgree(PolygonOperations.Subtract(a, b), Oracle.Overlay(na, nb, SpatialFunction.Difference), $"minus, seed {seed}");
            Oracle.ShouldAgree(PolygonOperations.SymmetricDifference(a, b), Oracle.Overlay(na, nb, SpatialFunction.SymDifference), $"xor, seed {seed}");
        }
    }

    [Fact]
    public void ScribblesGiveValidPolygonsWithTheWindingNumbersOfTheInput()
    {
        for (int seed = 0; seed < 100; seed++)
        {
            var scene = new Scene(3000 + seed);
            long extent = seed % 3 == 0 ? 12 : seed % 3 == 1 ? 300 : 50_000_000;
            List<PointNm[]> rings = [.. Enumerable.Range(0, 1 + scene.Below(4)).Select(_ => scene.Scribble(3 + scene.Below(20), extent))];

            var union = PolygonOperations.Union(rings);

            Oracle.ShouldBeValid(union, $"scribble seed {seed}");
            var locator = new PolygonLocator(union);
            for (int i = 0; i < 100; i++)
            {
                PointNm p = scene.Point(extent);
                if (ClearanceNm(rings, p) > 2)
                {
                    (locator.Find(p) >= 0).ShouldBe(WindingNumber(rings, p) != 0, $"scribble seed {seed} at {p}");
                }
            }
        }
    }

    [Fact]
    public void NeedleThinCrossingsStayValid()
    {
        for (int seed = 0; seed < 30; seed++)
        {
            var scene = new Scene(4000 + seed);
            List<PointNm[]> rings = [];
            for (int i = 0; i < 40; i++)
            {
                PointNm a = new(scene.Below(30), scene.Below(30)), b = new(10_000_000 + scene.Below(30), scene.Below(30));
                rings.Add([a, b, b + new PointNm(scene.Below(3), 1 + scene.Below(3))]);
            }

            Oracle.ShouldBeValid(PolygonOperations.Union(rings), $"needles seed {seed}");
        }
    }

    [Fact]
    public void ResultsDoNotDependOnTheOrderOfRingsOrTheirStartingPoints()
    {
        for (int seed = 0; seed < 25; seed++)
        {
            var scene = new Scene(5000 + seed);
            var rings = scene.Copper(50, 3_000_000, 400_000);
            var expected = PolygonOperations.Union(rings);

            List<PointNm[]> shuffled = [.. rings.OrderBy(_ => scene.Below(1000)).Select(r => r[3..].Concat(r[..3]).ToArray())];
            ShouldBeSame(PolygonOperations.Union(shuffled), expected, new PointNm(0, 0));
        }
    }

    [Fact]
    public void ResultsMoveWithTheInput()
    {
        for (int seed = 0; seed < 25; seed++)
        {
            var scene = new Scene(6000 + seed);
            var rings = scene.Copper(50, 3_000_000, 400_000);
            PointNm shift = new(scene.Below(100_000_000) - 50_000_000, scene.Below(100_000_000) - 50_000_000);
            var expected = PolygonOperations.Union(rings);

            List<PointNm[]> moved = [.. rings.Select(r => r.Select(p => p + shift).ToArray())];
            ShouldBeSame(PolygonOperations.Union(moved), expected, shift);
        }
    }

    [Fact]
    public void AQuarterTurnKeepsTheArea()
    {
        for (int seed = 0; seed < 25; seed++)
        {
            var scene = new Scene(7000 + seed);
            var rings = scene.Copper(50, 3_000_000, 400_000);
            List<PointNm[]> turned = [.. rings.Select(r => r.Select(p => new PointNm(-p.Y, p.X)).ToArray())];
            var (expected, actual) = (PolygonOperations.Union(rings), PolygonOperations.Union(turned));

            actual.Count.ShouldBe(expected.Count);
            actual.Sum(p => p.AreaNm2).ShouldBe(expected.Sum(p => p.AreaNm2), 1e-6 * expected.Sum(p => p.AreaNm2));
        }
    }

    private static void ShouldBeSame(IReadOnlyList<PolygonNm> actual, IReadOnlyList<PolygonNm> expected, PointNm shift)
    {
        actual.Count.ShouldBe(expected.Count);
        for (int i = 0; i < actual.Count; i++)
        {
            actual[i].Rings.SelectMany(r => r).ShouldBe(expected[i].Rings.SelectMany(r => r).Select(p => p + shift));
        }
    }

    private static int WindingNumber(List<PointNm[]> rings, PointNm p)
    {
        int winding = 0;
        foreach (var (a, b) in Sides(rings))
        {
            Int128 side = ((Int128)(b.X - a.X) * (p.Y - a.Y)) - ((Int128)(b.Y - a.Y) * (p.X - a.X));
            winding += a.Y <= p.Y && b.Y > p.Y && side > 0 ? 1 : a.Y > p.Y && b.Y <= p.Y && side < 0 ? -1 : 0;
        }

        return winding;
    }

    private static double ClearanceNm(List<PointNm[]> rings, PointNm p) => Sides(rings).Min(s =>
    {
        var (a, b) = s;
        double dx = b.X - a.X, dy = b.Y - a.Y, length2 = (dx * dx) + (dy * dy);
        double t = length2 == 0 ? 0 : Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / length2, 0, 1);
        return Math.Sqrt(Math.Pow(p.X - a.X - (t * dx), 2) + Math.Pow(p.Y - a.Y - (t * dy), 2));
    });

    private static IEnumerable<(PointNm A, PointNm B)> Sides(List<PointNm[]> rings) =>
        rings.SelectMany(r => r.Select((p, i) => (p, r[(i + 1) % r.Length])));
}

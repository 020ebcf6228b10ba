using CopperPath.Artwork;
using CopperPath.Geometry;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;

namespace CopperPath.Core.Tests.ArtworkRoom;

/// <summary>Rings that cross themselves, against every pair of edges tried with NetTopologySuite's line intersector.</summary>
public sealed class SelfCrossingTests
{
    private readonly SelfCrossing _crossing = new();

    [Fact]
    public void RandomRingsAgreeWithAllPairs()
    {
        var random = new Random(4_242);
        int crossing = 0;
        for (int i = 0; i < 3_000; i++)
        {
            PointNm[] ring = RandomRing(random, random.Next(4, 40), 1 << random.Next(3, 34));
            bool expected = AnyPairCrosses(ring);
            crossing += expected ? 1 : 0;
            _crossing.IsFoundIn(ring).ShouldBe(expected, string.Join(' ', ring));
        }

        crossing.ShouldBeInRange(300, 2_700);
    }

    [Fact]
    public void CutInsTouchButDoNotCross() => _crossing.IsFoundIn(
    [
        new(0, 0), new(10, 0), new(10, 10), new(0, 10), new(0, 3), new(3, 3), new(3, 7), new(7, 7), new(7, 3), new(3, 3), new(0, 3),
    ]).ShouldBeFalse();

    [Fact]
    public void ALongCombIsSearchedSoonAndItsOneCrossingFound()
    {
        List<PointNm> comb = [];
        for (int tooth = 0; tooth < 20_000; tooth++)
        {
            comb.Add(new PointNm(0, 10 * tooth));
            comb.Add(new PointNm(1_000_000, (10 * tooth) + 5));
        }

        comb.Add(new PointNm(-10, 200_000));
        _crossing.IsFoundIn([.. comb]).ShouldBeFalse();
        comb[20_001] = comb[20_001] with { Y = comb[20_001].Y + 20 };
        _crossing.IsFoundIn([.. comb]).ShouldBeTrue();
    }

    /// <summary>A star about the origin, simple, or one with two corners exchanged.</summary>
    private static PointNm[] RandomRing(Random random, int corners, long reachNm)
    {
        double[] angles = [.. Enumerable.Range(0, corners).Select(_ => random.NextDouble() * 2 * Math.PI).Order()];
        PointNm[] ring = [.. angles.Select(a =>
        {
            double radius = reachNm * (0.3 + (0.7 * random.NextDouble()));
            return new PointNm((long)(radius * Math.Cos(a)), (long)(radius * Math.Sin(a)));
        })];
        if (random.Next(2) == 0)
        {
            int at = random.Next(corners - 1);
            (ring[at], ring[at + 1]) = (ring[at + 1], ring[at]);
        }

        return ring;
    }

    private static bool AnyPairCrosses(PointNm[] ring)
    {
        var intersector = new RobustLineIntersector();
        for (int i = 0; i < ring.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                intersector.ComputeIntersection(At(i), At(i + 1), At(j), At(j + 1));
                if (intersector.IsProper)
                {
                    return true;
                }
            }
        }

        return false;

        Coordinate At(int index) => new(ring[index % ring.Length].X, ring[index % ring.Length].Y);
    }
}

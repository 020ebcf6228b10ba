using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Core.Tests.ArtworkRoom;

/// <summary>Flattened circles and arcs against pi r^2 and the circle itself.</summary>
public sealed class ChordsTests
{
    private const double ToleranceNm = 500;

    [Theory]
    [InlineData(1_000)]
    [InlineData(50_000)]
    [InlineData(300_000)]
    [InlineData(5_000_000)]
    [InlineData(1_000_000_000)]
    public void ACircleKeepsItsAreaAndStaysWithinTheTolerance(double radiusNm)
    {
        PointNm[] ring = CircleOutline.Ring(default, radiusNm, ToleranceNm);
        (ring.Length % 4).ShouldBe(0);

        // Each vertex is rounded by at most 0.71 nm: that times the circumference bounds the change of area.
        Ring.SignedAreaNm2(ring).ShouldBe(Math.PI * radiusNm * radiusNm, 0.71 * 2 * Math.PI * radiusNm);
        for (int i = 0; i < ring.Length; i++)
        {
            PointNm a = ring[i];
            PointNm b = ring[(i + 1) % ring.Length];
            var middle = new Vector((a.X + b.X) / 2.0, (a.Y + b.Y) / 2.0);
            Math.Abs(Vector.Of(a).Length - radiusNm).ShouldBeLessThan(ToleranceNm + 1);
            Math.Abs(middle.Length - radiusNm).ShouldBeLessThan(ToleranceNm + 1);
            ring.ShouldContain(new PointNm(-a.X, -a.Y));
        }
    }

    [Fact]
    public void AnArcKeepsItsEndsItsSectorAndItsTolerance()
    {
        var random = new Random(31);
        for (int i = 0; i < 500; i++)
        {
            double radiusNm = Math.Exp(random.NextDouble() * 9) * 2_000;
            double startRad = random.NextDouble() * 6;
            double sweepRad = 0.01 + (random.NextDouble() * 6.2);
            PointNm from = At(radiusNm, startRad);
            PointNm to = At(radiusNm, startRad + sweepRad);
            Arc arc = Arc.Between(Vector.Of(from), Vector.Of(to), default, Turn.CounterClockwise);
            List<PointNm> path = [default, from];
            arc.AppendInner(path, ToleranceNm);
            path.Add(to);
            Ring.SignedAreaNm2([.. path]).ShouldBe(arc.SweepRad * radiusNm * radiusNm / 2, 3 * 7 * radiusNm);
            path.Skip(1).ShouldAllBe(p => Math.Abs(Vector.Of(p).Length - radiusNm) < ToleranceNm + 1.5);

            List<PointNm> back = [];
            Arc.Between(Vector.Of(to), Vector.Of(from), default, Turn.Clockwise).AppendInner(back, ToleranceNm);
            back.Reverse();
            back.ShouldBe(path.Skip(2).SkipLast(1), "an arc and its way back must coincide");
        }
    }

    private static PointNm At(double radiusNm, double angleRad) =>
        (radiusNm * new Vector(Math.Cos(angleRad), Math.Sin(angleRad))).Rounded();
}

using System.Numerics;
using CopperPath.Meshing;

namespace CopperPath.Core.Tests.Meshing;

/// <summary>The signs against determinants written out in unlimited integers.</summary>
public sealed class ExactPredicatesTests
{
    [Fact]
    public void OrientationIsExactNearLines()
    {
        Random random = new(1);
        int flat = 0;
        for (int i = 0; i < 20_000; i++)
        {
            // c lies on or within a unit or two of the line through a and b, far out on the lattice.
            long ax = random.NextInt64(-(1L << 38), 1L << 38), ay = random.NextInt64(-(1L << 38), 1L << 38);
            long ux = random.NextInt64(-(1L << 19), 1L << 19), uy = random.NextInt64(-(1L << 19), 1L << 19);
            long k = random.NextInt64(1, 1L << 17), m = random.NextInt64(1, 1L << 17);
            long bx = ax + (k * ux), by = ay + (k * uy);
            long cx = ax + (m * ux) + random.Next(-1, 2), cy = ay + (m * uy) + random.Next(-1, 2);
            int expected = ((new BigInteger(bx - ax) * (cy - ay)) - (new BigInteger(by - ay) * (cx - ax))).Sign;
            ExactPredicates.Orientation(ax, ay, bx, by, cx, cy).ShouldBe(expected);
            flat += expected == 0 ? 1 : 0;
        }

        flat.ShouldBeGreaterThan(1000);
    }

    [Fact]
    public void InCircleIsExactNearCircles()
    {
        Random random = new(2);
        int onCircle = 0;
        for (int i = 0; i < 20_000; i++)
        {
            // Corners of a rectangle are concyclic; the fourth is moved by a unit or not at all.
            long px = random.NextInt64(-(1L << 37), 1L << 37), py = random.NextInt64(-(1L << 37), 1L << 37);
            long ux = random.NextInt64(1, 1L << 18), uy = random.NextInt64(-(1L << 18), 1L << 18);
            long k = random.NextInt64(1, 1L << 18), m = random.NextInt64(1, 1L << 18);
            (long X, long Y) a = (px, py), b = (px + (k * ux), py + (k * uy));
            (long X, long Y) c = (b.X - (m * uy), b.Y + (m * ux));
            (long X, long Y) d = (a.X - (m * uy) + random.Next(-1, 2), a.Y + (m * ux) + random.Next(-1, 2));
            int expected = InCircle(a, b, c, d).Sign;
            ExactPredicates.InCircle(a.X, a.Y, b.X, b.Y, c.X, c.Y, d.X, d.Y).ShouldBe(expected);
            onCircle += expected == 0 ? 1 : 0;
        }

        onCircle.ShouldBeGreaterThan(1000);
    }

    private static BigInteger InCircle((long X, long Y) a, (long X, long Y) b, (long X, long Y) c, (long X, long Y) d)
    {
        BigInteger ax = a.X - d.X, ay = a.Y - d.Y, bx = b.X - d.X, by = b.Y - d.Y, cx = c.X - d.X, cy = c.Y - d.Y;
        return (((ax * ax) + (ay * ay)) * ((bx * cy) - (by * cx)))
            + (((bx * bx) + (by * by)) * ((cx * ay) - (cy * ax)))
            + (((cx * cx) + (cy * cy)) * ((ax * by) - (ay * bx)));
    }
}

using CopperPath.Geometry;

namespace CopperPath.Cli.Report.Html;

/// <summary>Copper outlines for the screen: within two hundredths of a millimetre of the copper, as small differences.</summary>
internal static class OutlinePacking
{
    public const long UnitNm = 10_000;

    private const double ToleranceNm = 12_000;

    /// <summary>Adds a count of rings, then for each its count of points and their steps, in units from the origin.</summary>
    /// <returns>Where it starts.</returns>
    public static int Add(PackedBytes bytes, IEnumerable<PolygonNm> polygons, PointNm origin)
    {
        int start = bytes.Length;
        List<PointNm[]> rings = [.. polygons.SelectMany(polygon => polygon.Rings).Select(Simplified)];
        bytes.AddNumber(rings.Count);
        long lastX = 0;
        long lastY = 0;
        foreach (PointNm[] ring in rings)
        {
            bytes.AddNumber(ring.Length);
            foreach (PointNm p in ring)
            {
                long x = InUnits(p.X - origin.X);
                long y = InUnits(p.Y - origin.Y);
                bytes.AddNumber(x - lastX);
                bytes.AddNumber(y - lastY);
                (lastX, lastY) = (x, y);
            }
        }

        return start;
    }

    private static long InUnits(long nm) => (long)Math.Round((double)nm / UnitNm);

    /// <summary>
    /// Drops points that lie within the tolerance of the line between those kept (Douglas and Peucker, 1973), from the
    /// first point and the one farthest from it.
    /// </summary>
    private static PointNm[] Simplified(PointNm[] ring)
    {
        bool[] kept = new bool[ring.Length + 1];
        int far = 0;
        for (int i = 1; i < ring.Length; i++)
        {
            far = ring[0].DistanceNmTo(ring[i]) > ring[0].DistanceNmTo(ring[far]) ? i : far;
        }

        kept[0] = kept[far] = true;
        Stack<(int From, int To)> spans = new([(0, far), (far, ring.Length)]);
        while (spans.TryPop(out (int From, int To) span))
        {
            int worst = -1;
            double worstNm = ToleranceNm;
            for (int i = span.From + 1; i < span.To; i++)
            {
                double distanceNm = DistanceNm(ring[i], ring[span.From], ring[span.To % ring.Length]);
                (worst, worstNm) = distanceNm > worstNm ? (i, distanceNm) : (worst, worstNm);
            }

            if (worst >= 0)
            {
                kept[worst] = true;
                spans.Push((span.From, worst));
                spans.Push((worst, span.To));
            }
        }

        return [.. ring.Where((_, i) => kept[i])];
    }

    private static double DistanceNm(PointNm p, PointNm a, PointNm b)
    {
        double lengthNm = a.DistanceNmTo(b);
        double cross = ((double)(b.X - a.X) * (p.Y - a.Y)) - ((double)(b.Y - a.Y) * (p.X - a.X));
        return lengthNm == 0 ? p.DistanceNmTo(a) : Math.Abs(cross) / lengthNm;
    }
}

using CopperPath.Geometry;

namespace CopperPath.Judging;

/// <summary>Least distance between the outlines of two rings.</summary>
internal static class RingDistance
{
    /// <summary>The distance and the corner of <paramref name="a"/> beside it; rings farther apart than <paramref name="mostNm"/> give that.</summary>
    public static (double DistanceNm, PointNm At) Between(PointNm[] a, PointNm[] b, double mostNm)
    {
        (double DistanceNm, PointNm At) best = (mostNm, a[0]);
        for (int i = 0, p = a.Length - 1; i < a.Length; p = i++)
        {
            BoxNm reach = BoxNm.Of([a[p], a[i]]);
            for (int j = 0, q = b.Length - 1; j < b.Length; q = j++)
            {
                if (BoxGapNm(reach, BoxNm.Of([b[q], b[j]])) < best.DistanceNm && SegmentsNm(a[p], a[i], b[q], b[j]) is var distanceNm && distanceNm < best.DistanceNm)
                {
                    best = (distanceNm, a[i]);
                }
            }
        }

        return best;
    }

    private static double BoxGapNm(BoxNm a, BoxNm b)
    {
        double dx = Math.Max(0, Math.Max(b.MinX - a.MaxX, a.MinX - b.MaxX));
        double dy = Math.Max(0, Math.Max(b.MinY - a.MaxY, a.MinY - b.MaxY));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>Zero where they cross, else the least distance from an end to the other segment.</summary>
    private static double SegmentsNm(PointNm a, PointNm b, PointNm c, PointNm d)
    {
        if (Turn(a, b, c) * Turn(a, b, d) < 0 && Turn(c, d, a) * Turn(c, d, b) < 0)
        {
            return 0;
        }

        return Math.Min(Math.Min(PointNmTo(a, c, d), PointNmTo(b, c, d)), Math.Min(PointNmTo(c, a, b), PointNmTo(d, a, b)));
    }

    private static int Turn(PointNm a, PointNm b, PointNm c) =>
        Int128.Sign(((Int128)(b.X - a.X) * (c.Y - a.Y)) - ((Int128)(b.Y - a.Y) * (c.X - a.X)));

    private static double PointNmTo(PointNm p, PointNm a, PointNm b)
    {
        double dx = b.X - a.X;
        double dy = b.Y - a.Y;
        double length2 = (dx * dx) + (dy * dy);
        double along = length2 == 0 ? 0 : Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / length2, 0, 1);
        double offX = p.X - a.X - (along * dx);
        double offY = p.Y - a.Y - (along * dy);
        return Math.Sqrt((offX * offX) + (offY * offY));
    }
}

using System.Runtime.InteropServices;
using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>Puts rings in the form <see cref="PaintedObject"/> promises: no repeated points, known direction.</summary>
internal static class RingOrder
{
    /// <summary>The ring without points equal to the one before, the last compared with the first too.</summary>
    public static PointNm[] WithoutRepeats(List<PointNm> points)
    {
        Span<PointNm> span = CollectionsMarshal.AsSpan(points);
        int kept = 0;
        for (int i = 0; i < span.Length; i++)
        {
            if (kept == 0 || span[i] != span[kept - 1])
            {
                span[kept++] = span[i];
            }
        }

        while (kept > 1 && span[kept - 1] == span[0])
        {
            kept--;
        }

        return span[..kept].ToArray();
    }

    /// <summary>
    /// The ring turned counter-clockwise in place; empty when all its points lie on one line. A ring that winds as much
    /// one way as the other, such as a bow tie, has no direction and stays as it is.
    /// </summary>
    public static PointNm[] CounterClockwise(PointNm[] ring)
    {
        double area = Ring.SignedAreaNm2(ring);
        if (area < 0)
        {
            Array.Reverse(ring);
        }

        return area == 0 && IsFlat(ring) ? [] : ring;
    }

    /// <summary>The ring turned clockwise in place; empty when all its points lie on one line.</summary>
    public static PointNm[] Clockwise(PointNm[] ring)
    {
        ring = CounterClockwise(ring);
        Array.Reverse(ring);
        return ring;
    }

    /// <summary>True when the counter-clockwise ring never turns right and goes round once.</summary>
    public static bool IsConvex(PointNm[] ring)
    {
        int directionChanges = 0;
        for (int i = 0; i < ring.Length; i++)
        {
            PointNm a = ring[i];
            PointNm b = ring[(i + 1) % ring.Length];
            PointNm c = ring[(i + 2) % ring.Length];
            if (Cross(b - a, c - b) < 0)
            {
                return false;
            }

            if ((b.X > a.X) != (c.X > b.X))
            {
                directionChanges++;
            }
        }

        return ring.Length > 2 && directionChanges <= 2;
    }

    private static bool IsFlat(PointNm[] ring)
    {
        int other = Array.FindIndex(ring, p => p != ring[0]);
        return other < 0 || Array.TrueForAll(ring, p => Cross(ring[other] - ring[0], p - ring[0]) == 0);
    }

    private static Int128 Cross(PointNm a, PointNm b) => ((Int128)a.X * b.Y) - ((Int128)a.Y * b.X);
}

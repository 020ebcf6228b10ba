namespace CopperPath.Polygons;

/// <summary>Exact signs of small determinants: 64-bit arithmetic where it cannot overflow, 128-bit otherwise.</summary>
internal static class ExactSign
{
    /// <summary>Differences within ±2^30 nm (about 1.07 m) have products and sums of products that fit 64 bits.</summary>
    private const long NarrowBias = 1L << 30;

    /// <summary>Sign of the cross product (ax, ay) × (bx, by): positive when b turns counter-clockwise from a.</summary>
    public static int OfCross(long ax, long ay, long bx, long by)
    {
        if (AreNarrow(ax, ay, bx, by))
        {
            return Math.Sign((ax * by) - (ay * bx));
        }

        return Int128.Sign(((Int128)ax * by) - ((Int128)ay * bx));
    }

    public static bool AreNarrow(long a, long b, long c, long d) =>
        (ulong)((a + NarrowBias) | (b + NarrowBias) | (c + NarrowBias) | (d + NarrowBias)) < (ulong)(2 * NarrowBias);
}

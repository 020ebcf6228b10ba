namespace CopperPath.Artwork;

/// <summary>
/// How many chords replace a curve, and where their ends lie.
/// </summary>
/// <remarks>
/// Chords inscribed in a circle lose area, which would make every round trace and pad slightly poor in copper.
/// Vertices are therefore moved outwards until polygon and curve have the same area. With the angle d of one chord on
/// radius r a full circle's vertices then stand out by about r d^2 / 12 and the middles of its chords stay in by half
/// of that, against a sagitta of r d^2 / 8 for inscribed chords: the count is chosen so that the vertices stand out by
/// no more than the tolerance.
/// </remarks>
internal static class Chords
{
    /// <summary>Fewest chords of a full circle, however small.</summary>
    private const int FewestPerCircle = 16;

    /// <summary>Most chords of one curve: more than any real radius needs at any sensible tolerance.</summary>
    private const double Most = 1 << 20;

    /// <summary>Chords of a full circle, a multiple of 4 so that its extremes are vertices.</summary>
    public static int OfCircle(double radiusNm, double toleranceNm) => Estimate(radiusNm, 2 * Math.PI, toleranceNm, 4);

    /// <summary>Chords of an arc with its ends on the curve, an even number so that its middle is a vertex.</summary>
    public static int OfArc(double radiusNm, double sweepRad, double toleranceNm)
    {
        int count = Estimate(radiusNm, sweepRad, toleranceNm, 2);

        // Fewer vertices are left to make up for the area: they stand out further than on a full circle.
        while (Math.Abs(radiusNm) * (ArcFactor(count, sweepRad) - 1) > toleranceNm && count < Most)
        {
            count += 2;
        }

        return count;
    }

    private static int Estimate(double radiusNm, double sweepRad, double toleranceNm, int multiple)
    {
        double step = Math.Min(2 * Math.PI / FewestPerCircle, Math.Sqrt(12 * toleranceNm / Math.Abs(radiusNm)));
        double count = Math.Min(Most, Math.Ceiling((sweepRad / step) - 1e-9));
        return multiple * (int)Math.Max(1, Math.Ceiling(count / multiple));
    }

    /// <summary>Factor on the radius at which a regular polygon of n corners has the area of the circle.</summary>
    public static double CircleFactor(int count)
    {
        double step = 2 * Math.PI / count;
        return Math.Sqrt(step / Math.Sin(step));
    }

    /// <summary>
    /// Factor f on the radius of the inner vertices of an arc whose two ends must stay on the curve. The n triangles
    /// to the centre have the area of the sector when sin(d) (2 f + (n - 2) f^2) = n d.
    /// </summary>
    public static double ArcFactor(int count, double sweepRad)
    {
        if (count < 2)
        {
            return 1;
        }

        double step = sweepRad / count;
        double target = sweepRad / Math.Sin(step);
        double squares = count - 2;
        return squares == 0 ? target / 2 : (Math.Sqrt(1 + (squares * target)) - 1) / squares;
    }
}

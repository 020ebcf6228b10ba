namespace CopperPath.Artwork;

/// <summary>
/// How many chords replace a curve, and where their ends lie.
/// </summary>
/// <remarks>
/// The sagitta of a chord over the angle d on radius r is r (1 - cos(d/2)); d is chosen so that it stays within the
/// tolerance. Chords inscribed in a circle lose area, which would make every round trace and pad slightly poor in
/// copper. Vertices are therefore moved outwards until polygon and curve have the same area; the largest distance
/// between the two is then two thirds of the sagitta, outwards.
/// </remarks>
internal static class Chords
{
    /// <summary>Fewest chords of a full circle, however small.</summary>
    private const int FewestPerCircle = 16;

    /// <summary>Most chords of one curve: more than any real radius needs at any sensible tolerance.</summary>
    private const double Most = 1 << 20;

    /// <summary>
    /// Chords for a sweep in radians on a radius in nanometres, rounded up to a multiple of <paramref name="multiple"/>.
    /// </summary>
    public static int Count(double radiusNm, double sweepRad, double toleranceNm, int multiple)
    {
        double largest = 2 * Math.PI / FewestPerCircle;
        double ratio = toleranceNm / Math.Abs(radiusNm);
        double step = ratio < 1 ? Math.Min(largest, 2 * Math.Acos(1 - ratio)) : largest;
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

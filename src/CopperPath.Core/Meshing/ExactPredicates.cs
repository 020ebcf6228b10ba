namespace CopperPath.Meshing;

/// <summary>
/// Orientation and in-circle signs of points on an integer lattice, always right.
/// Coordinates are whole numbers held in doubles, differences at most 2^40, so differences are exact; a rounded
/// determinant settles nearly every case by the error bounds of J. R. Shewchuk, "Adaptive precision floating-point
/// arithmetic and fast robust geometric predicates", Discrete Comput. Geom. 18 (1997), and 128-bit integers the rest.
/// </summary>
internal static class ExactPredicates
{
    /// <summary>Largest difference of coordinates for which the signs are exact, as a power of two.</summary>
    public const int DifferenceBits = 40;

    private const double RoundingUnit = 1.0 / (1L << 53);
    private const double OrientationBound = (3 + (16 * RoundingUnit)) * RoundingUnit;
    private const double InCircleBound = (10 + (96 * RoundingUnit)) * RoundingUnit;

    /// <summary>Positive when a, b, c turn left, negative when they turn right, zero when they are in line.</summary>
    public static int Orientation(double ax, double ay, double bx, double by, double cx, double cy)
    {
        double acx = ax - cx, bcy = by - cy, acy = ay - cy, bcx = bx - cx;
        double left = acx * bcy, right = acy * bcx;
        double determinant = left - right;
        double bound = OrientationBound * (Math.Abs(left) + Math.Abs(right));
        if (determinant > bound || -determinant > bound)
        {
            return determinant > 0 ? 1 : -1;
        }

        return Int128.Sign(Cross((long)acx, (long)acy, (long)bcx, (long)bcy));
    }

    /// <summary>Positive when d is inside the circle through a, b, c (counter-clockwise), negative when outside.</summary>
    public static int InCircle(
        double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy)
    {
        double adx = ax - dx, ady = ay - dy, bdx = bx - dx, bdy = by - dy, cdx = cx - dx, cdy = cy - dy;
        double bc = bdx * cdy, cb = cdx * bdy, ca = cdx * ady, ac = adx * cdy, ab = adx * bdy, ba = bdx * ady;
        double liftA = (adx * adx) + (ady * ady);
        double liftB = (bdx * bdx) + (bdy * bdy);
        double liftC = (cdx * cdx) + (cdy * cdy);
        double determinant = (liftA * (bc - cb)) + (liftB * (ca - ac)) + (liftC * (ab - ba));
        double permanent = ((Math.Abs(bc) + Math.Abs(cb)) * liftA) + ((Math.Abs(ca) + Math.Abs(ac)) * liftB)
            + ((Math.Abs(ab) + Math.Abs(ba)) * liftC);
        double bound = InCircleBound * permanent;
        if (determinant > bound || -determinant > bound)
        {
            return determinant > 0 ? 1 : -1;
        }

        return InCircleExactly((long)adx, (long)ady, (long)bdx, (long)bdy, (long)cdx, (long)cdy);
    }

    private static int InCircleExactly(long adx, long ady, long bdx, long bdy, long cdx, long cdy)
    {
        // Each lift is below 2^81 and each cross product too, so their product needs up to 163 bits. Splitting the
        // lifts at 2^40 keeps both partial sums below 2^124.
        Int128 high = 0, low = 0;
        AddProduct(Lift(adx, ady), Cross(bdx, bdy, cdx, cdy), ref high, ref low);
        AddProduct(Lift(bdx, bdy), Cross(cdx, cdy, adx, ady), ref high, ref low);
        AddProduct(Lift(cdx, cdy), Cross(adx, ady, bdx, bdy), ref high, ref low);
        Int128 carried = high + (low >> DifferenceBits);
        Int128 rest = low & ((Int128.One << DifferenceBits) - 1);
        return carried != 0 ? Int128.Sign(carried) : Int128.Sign(rest);
    }

    private static void AddProduct(Int128 lift, Int128 cross, ref Int128 high, ref Int128 low)
    {
        high += (lift >> DifferenceBits) * cross;
        low += (lift & ((Int128.One << DifferenceBits) - 1)) * cross;
    }

    private static Int128 Lift(long x, long y) => ((Int128)x * x) + ((Int128)y * y);

    private static Int128 Cross(long ax, long ay, long bx, long by) => ((Int128)ax * by) - ((Int128)ay * bx);
}

using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// A piece of an input ring, stored from its lexicographically smaller end A to its larger end B.
/// Source says which input (or painted object) the ring belongs to; Delta is +1 when the ring runs from A to B,
/// -1 when it runs from B to A, and as many times that as the source has the same ring.
/// </summary>
internal readonly record struct Segment(long Ax, long Ay, long Bx, long By, int Source, int Delta)
{
    public long Dx => Bx - Ax;

    public long Dy => By - Ay;

    public long MinY => Math.Min(Ay, By);

    public long MaxY => Math.Max(Ay, By);

    /// <summary>A segment whose source is whatever the caller wants to know it by.</summary>
    public static Segment Between(PointNm p, PointNm q, int source) => p.X < q.X || (p.X == q.X && p.Y < q.Y)
        ? new(p.X, p.Y, q.X, q.Y, source, 1)
        : new(q.X, q.Y, p.X, p.Y, source, -1);

    public bool EndsAt(long x, long y) => x == Bx && y == By;

    /// <summary>Abscissa at an ordinate between the ends; the segment must not be level.</summary>
    public double XAt(long y) => Ax + (Dx * ((double)(y - Ay) / Dy));

    /// <summary>Whether the segment meets the unit square centred on (x, y), its lower and left sides included.</summary>
    /// <remarks>
    /// Separating-axis test. Segment ends are integers and square sides half-integers, so the bounding boxes never
    /// merely touch; only the line through the segment can graze a corner, and of the two corners it can graze
    /// the square owns the lower left one alone.
    /// </remarks>
    public bool PassesThroughPixel(long x, long y)
    {
        if (x < Ax || x > Bx || y < MinY || y > MaxY)
        {
            return false;
        }

        long dx = Dx, dy = Dy, px = x - Ax, py = y - Ay;
        long reach = dx + Math.Abs(dy);
        if (ExactSign.AreNarrow(dx, dy, px, py))
        {
            long twice = 2 * ((dx * py) - (dy * px));
            return twice > -reach && (twice < reach || (twice == reach && dy < 0));
        }

        Int128 wideTwice = 2 * (((Int128)dx * py) - ((Int128)dy * px));
        return wideTwice > -reach && (wideTwice < reach || (wideTwice == reach && dy < 0));
    }

    /// <summary>
    /// Whether the two segments cross at a point inside both, and if so the pixel that owns the crossing
    /// (coordinates rounded to the nearest integer, halves upwards).
    /// </summary>
    public bool Crosses(in Segment other, out long x, out long y)
    {
        x = y = 0;
        long dx = Dx, dy = Dy, ex = other.Dx, ey = other.Dy;
        long toStartX = other.Ax - Ax, toStartY = other.Ay - Ay;
        int startSide = ExactSign.OfCross(dx, dy, toStartX, toStartY);
        if (startSide == 0 || startSide * ExactSign.OfCross(dx, dy, other.Bx - Ax, other.By - Ay) >= 0)
        {
            return false;
        }

        int nearSide = ExactSign.OfCross(ex, ey, -toStartX, -toStartY);
        if (nearSide == 0 || nearSide * ExactSign.OfCross(ex, ey, Bx - other.Ax, By - other.Ay) >= 0)
        {
            return false;
        }

        // Crossing = A + (numerator / denominator) (B - A), 0 < numerator / denominator < 1.
        Int128 numerator, denominator;
        if (ExactSign.AreNarrow(dx, dy, ex, ey) && ExactSign.AreNarrow(toStartX, toStartY, 0, 0))
        {
            long narrowNumerator = (toStartX * ey) - (toStartY * ex);
            long narrowDenominator = (dx * ey) - (dy * ex);
            double fraction = (double)narrowNumerator / narrowDenominator;
            if (TryRound(fraction * dx, out long offsetX) && TryRound(fraction * dy, out long offsetY))
            {
                x = Ax + offsetX;
                y = Ay + offsetY;
                return true;
            }

            numerator = narrowNumerator;
            denominator = narrowDenominator;
        }
        else
        {
            numerator = ((Int128)toStartX * ey) - ((Int128)toStartY * ex);
            denominator = ((Int128)dx * ey) - ((Int128)dy * ex);
        }

        if (denominator < 0)
        {
            numerator = -numerator;
            denominator = -denominator;
        }

        x = Ax + RoundHalfUp(numerator * dx, denominator);
        y = Ay + RoundHalfUp(numerator * dy, denominator);
        return true;
    }

    /// <summary>Rounds when the value is far enough from a half for its own error (below 1e-6 nm) not to matter.</summary>
    private static bool TryRound(double value, out long rounded)
    {
        double floor = Math.Floor(value + 0.5);
        rounded = (long)floor;
        double above = value + 0.5 - floor;
        return above is > 1e-4 and < 1 - 1e-4;
    }

    private static long RoundHalfUp(Int128 numerator, Int128 positiveDenominator)
    {
        Int128 doubled = (2 * numerator) + positiveDenominator;
        (Int128 quotient, Int128 remainder) = Int128.DivRem(doubled, 2 * positiveDenominator);
        return (long)(remainder < 0 ? quotient - 1 : quotient);
    }

    /// <summary>
    /// On which side of the segment, seen from A to B, the lower left corner of a pixel lies: 1 left, -1 right.
    /// </summary>
    /// <remarks>
    /// Corners stand for points a very little further left and a far smaller little further down, as a pixel owns its
    /// lower and left sides. No segment passes through such a point, so there is always an answer.
    /// </remarks>
    public int SideOfCorner(long pixelX, long pixelY)
    {
        long dx = Dx, dy = Dy, px = pixelX - Ax, py = pixelY - Ay;
        if (ExactSign.AreNarrow(dx, dy, px, py))
        {
            long side = (dx * ((2 * py) - 1)) - (dy * ((2 * px) - 1));
            return side != 0 ? side > 0 ? 1 : -1 : dy > 0 ? 1 : -1;
        }

        Int128 wideSide = ((Int128)dx * ((2 * py) - 1)) - ((Int128)dy * ((2 * px) - 1));
        return wideSide != 0 ? Int128.Sign(wideSide) : dy > 0 ? 1 : -1;
    }

    /// <summary>Whether the segment crosses the upright line through the left sides of the pixels of a column.</summary>
    public bool CrossesLeftSideOf(long pixelX) => Ax < pixelX && Bx >= pixelX;

    /// <summary>Whether the segment crosses the level line through the lower sides of the pixels of a row.</summary>
    public bool CrossesLowerSideOf(long pixelY) => MinY < pixelY && MaxY >= pixelY;

    /// <summary>Whether the segment meets the rectangle through the centres of a box's outermost pixels.</summary>
    public bool Touches(PixelBox box)
    {
        if (Bx < box.MinX || Ax > box.MaxX || MaxY < box.MinY || MinY > box.MaxY)
        {
            return false;
        }

        long dx = Dx, dy = Dy;
        int one = ExactSign.OfCross(dx, dy, box.MinX - Ax, box.MinY - Ay);
        return one == 0 || one != ExactSign.OfCross(dx, dy, box.MaxX - Ax, box.MinY - Ay)
            || one != ExactSign.OfCross(dx, dy, box.MinX - Ax, box.MaxY - Ay)
            || one != ExactSign.OfCross(dx, dy, box.MaxX - Ax, box.MaxY - Ay);
    }

    /// <summary>Width and height, added up, of the part of the segment's bounding box that lies within a box.</summary>
    public long WidthAndHeightWithin(PixelBox box) =>
        Math.Max(0, Math.Min(Bx, box.MaxX) - Math.Max(Ax, box.MinX)) + Math.Max(0, Math.Min(MaxY, box.MaxY) - Math.Max(MinY, box.MinY));

    /// <summary>
    /// Twice the height of this segment above another where both cross the left side of a column, times both widths.
    /// </summary>
    public Int128 TwiceHeightAbove(in Segment other, long column)
    {
        Int128 width = Dx, otherWidth = other.Dx;
        return (2 * (Ay - other.Ay) * width * otherWidth)
            + (Dy * (Int128)((2 * (column - Ax)) - 1) * otherWidth) - (other.Dy * (Int128)((2 * (column - other.Ax)) - 1) * width);
    }
}

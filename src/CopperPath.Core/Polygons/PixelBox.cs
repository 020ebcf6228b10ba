namespace CopperPath.Polygons;

/// <summary>
/// A block of whole pixels, given by the first and last pixel centre in each direction; its sides lie on
/// half-integers, so that each pixel belongs to one of two neighbouring blocks.
/// </summary>
internal readonly record struct PixelBox(long MinX, long MinY, long MaxX, long MaxY)
{
    public bool IsSinglePixel => MinX == MaxX && MinY == MaxY;

    public bool Contains(long x, long y) => x >= MinX && x <= MaxX && y >= MinY && y <= MaxY;

    /// <summary>Cuts across the longer side.</summary>
    public (PixelBox First, PixelBox Second) Halves()
    {
        if (MaxX - MinX >= MaxY - MinY)
        {
            long middle = MinX + ((MaxX - MinX) / 2);
            return (this with { MaxX = middle }, this with { MinX = middle + 1 });
        }
        else
        {
            long middle = MinY + ((MaxY - MinY) / 2);
            return (this with { MaxY = middle }, this with { MinY = middle + 1 });
        }
    }

    /// <summary>True whenever the segment meets the block; a near miss may also be reported.</summary>
    public bool MayMeet(in Segment s)
    {
        if (s.Bx < MinX || s.Ax > MaxX || s.MaxY < MinY || s.MinY > MaxY)
        {
            return false;
        }

        double dx = s.Dx, dy = s.Dy;
        double along = dx * ((0.5 * (MinY + MaxY)) - s.Ay);
        double across = dy * ((0.5 * (MinX + MaxX)) - s.Ax);
        double reach = 0.5 * ((dx * (MaxY - MinY + 1)) + (Math.Abs(dy) * (MaxX - MinX + 1)));
        double roundingError = 1e-14 * (Math.Abs(along) + Math.Abs(across) + reach);
        return Math.Abs(along - across) <= reach + roundingError;
    }
}

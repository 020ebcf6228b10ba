namespace CopperPath.Polygons;

/// <summary>
/// A block of whole pixels, given by the first and last pixel centre in each direction; its sides lie on
/// half-integers, so that each pixel belongs to one of two neighbouring blocks.
/// </summary>
internal readonly record struct PixelBox(long MinX, long MinY, long MaxX, long MaxY)
{
    public bool IsSinglePixel => MinX == MaxX && MinY == MaxY;

    public bool Contains(long x, long y) => x >= MinX && x <= MaxX && y >= MinY && y <= MaxY;
}

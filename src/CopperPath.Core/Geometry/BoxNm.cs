namespace CopperPath.Geometry;

/// <summary>An axis-parallel box in nanometres, edges included. <see cref="Empty"/> holds nothing.</summary>
public readonly record struct BoxNm(long MinX, long MinY, long MaxX, long MaxY)
{
    public static readonly BoxNm Empty = new(long.MaxValue, long.MaxValue, long.MinValue, long.MinValue);

    public bool IsEmpty => MinX > MaxX || MinY > MaxY;

    public long WidthNm => IsEmpty ? 0 : MaxX - MinX;

    public long HeightNm => IsEmpty ? 0 : MaxY - MinY;

    public PointNm Centre => new((MinX + MaxX) / 2, (MinY + MaxY) / 2);

    public static BoxNm Of(IEnumerable<PointNm> points)
    {
        BoxNm box = Empty;
        foreach (PointNm p in points)
        {
            box = box.Including(p);
        }

        return box;
    }

    /// <summary>The smallest box around all of the boxes.</summary>
    public static BoxNm Around(IEnumerable<BoxNm> boxes) => boxes.Aggregate(Empty, (all, box) => all.Including(box));

    public BoxNm Including(PointNm p) =>
        new(Math.Min(MinX, p.X), Math.Min(MinY, p.Y), Math.Max(MaxX, p.X), Math.Max(MaxY, p.Y));

    public BoxNm Including(BoxNm other) => other.IsEmpty ? this
        : new(Math.Min(MinX, other.MinX), Math.Min(MinY, other.MinY), Math.Max(MaxX, other.MaxX), Math.Max(MaxY, other.MaxY));

    public BoxNm GrownBy(long marginNm) => IsEmpty ? this
        : new(MinX - marginNm, MinY - marginNm, MaxX + marginNm, MaxY + marginNm);

    public BoxNm MovedBy(PointNm offset) => IsEmpty ? this
        : new(MinX + offset.X, MinY + offset.Y, MaxX + offset.X, MaxY + offset.Y);

    /// <summary>The four corners as a counter-clockwise ring.</summary>
    public PointNm[] ToRing() => [new(MinX, MinY), new(MaxX, MinY), new(MaxX, MaxY), new(MinX, MaxY)];

    /// <summary>Whether the whole of the other lies in this one, edges included.</summary>
    public bool Contains(BoxNm other) => other.IsEmpty
        || (other.MinX >= MinX && other.MaxX <= MaxX && other.MinY >= MinY && other.MaxY <= MaxY);

    public bool Contains(PointNm p) => p.X >= MinX && p.X <= MaxX && p.Y >= MinY && p.Y <= MaxY;

    public bool Touches(BoxNm other) =>
        MinX <= other.MaxX && other.MinX <= MaxX && MinY <= other.MaxY && other.MinY <= MaxY;
}

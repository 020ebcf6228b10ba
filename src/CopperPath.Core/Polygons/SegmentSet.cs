using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>The segments of all rings that take part in one operation.</summary>
internal sealed class SegmentSet
{
    private readonly List<Segment> _segments = [];

    public ReadOnlySpan<Segment> Segments => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_segments);

    public int Count => _segments.Count;

    public void AddRings(IReadOnlyList<PointNm[]> rings, int source, PointNm offset = default)
    {
        for (int r = 0; r < rings.Count; r++)
        {
            AddRing(rings[r], source, offset);
        }
    }

    private void AddRing(PointNm[] ring, int source, PointNm offset)
    {
        if (ring.Length < 3)
        {
            return;
        }

        PointNm from = ring[^1] + offset;
        foreach (PointNm point in ring)
        {
            PointNm to = point + offset;
            if (from.X < to.X || (from.X == to.X && from.Y < to.Y))
            {
                _segments.Add(new Segment(from.X, from.Y, to.X, to.Y, source, 1));
            }
            else if (from != to)
            {
                _segments.Add(new Segment(to.X, to.Y, from.X, from.Y, source, -1));
            }

            from = to;
        }
    }
}

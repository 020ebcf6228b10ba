using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>The rings that take part in one operation, as segments.</summary>
internal sealed class SegmentSet
{
    private readonly List<(PointNm[] Ring, PointNm Offset, int Source)> _rings = [];

    public void AddRings(IReadOnlyList<PointNm[]> rings, int source, PointNm offset = default)
    {
        for (int r = 0; r < rings.Count; r++)
        {
            if (rings[r].Length > 2)
            {
                _rings.Add((rings[r], offset, source));
            }
        }
    }

    /// <summary>Segments of all rings in the order they were added; points that repeat their predecessor make none.</summary>
    public Segment[] ToSegments()
    {
        int[] first = new int[_rings.Count + 1];
        for (int r = 0; r < _rings.Count; r++)
        {
            first[r + 1] = first[r] + SegmentCount(_rings[r].Ring);
        }

        Segment[] segments = new Segment[first[^1]];
        const int BlockSize = 512;
        Parallel.For(0, (_rings.Count + BlockSize - 1) / BlockSize, block =>
        {
            int end = Math.Min(_rings.Count, (block + 1) * BlockSize);
            for (int r = block * BlockSize; r < end; r++)
            {
                Fill(segments.AsSpan(first[r]..first[r + 1]), _rings[r].Ring, _rings[r].Offset, _rings[r].Source);
            }
        });
        return segments;
    }

    private static int SegmentCount(PointNm[] ring)
    {
        int count = 0;
        PointNm from = ring[^1];
        foreach (PointNm to in ring)
        {
            count += from == to ? 0 : 1;
            from = to;
        }

        return count;
    }

    private static void Fill(Span<Segment> target, PointNm[] ring, PointNm offset, int source)
    {
        int count = 0;
        PointNm from = ring[^1];
        foreach (PointNm to in ring)
        {
            if (from != to)
            {
                target[count++] = Segment.Between(from + offset, to + offset, source);
            }

            from = to;
        }
    }
}

using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>The rings that take part in one operation, as segments.</summary>
internal sealed class SegmentSet
{
    /// <summary>Fewer rings of one source than this do not crowd, even if all are the same.</summary>
    private const int ManyRings = 12;

    private readonly List<(PointNm[] Ring, PointNm Offset, int Source, int Times)> _rings = [];

    /// <summary>Adds the rings of a source; of rings that are the same, one counts for all.</summary>
    public void AddRings(IReadOnlyList<PointNm[]> rings, int source, PointNm offset = default)
    {
        if (rings.Count >= ManyRings)
        {
            Dictionary<PointNm[], int> times = new(rings.Count, new SameRing());
            foreach (PointNm[] ring in rings)
            {
                times[ring] = times.GetValueOrDefault(ring) + 1;
            }

            // In the order of their first ones.
            foreach (PointNm[] ring in rings)
            {
                if (ring.Length > 2 && times.Remove(ring, out int count))
                {
                    _rings.Add((ring, offset, source, count));
                }
            }

            return;
        }

        for (int r = 0; r < rings.Count; r++)
        {
            if (rings[r].Length > 2)
            {
                _rings.Add((rings[r], offset, source, 1));
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
                Fill(segments.AsSpan(first[r]..first[r + 1]), _rings[r]);
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

    private static void Fill(Span<Segment> target, (PointNm[] Ring, PointNm Offset, int Source, int Times) added)
    {
        (PointNm[] ring, PointNm offset, int source, int times) = added;
        int count = 0;
        PointNm from = ring[^1];
        foreach (PointNm to in ring)
        {
            if (from != to)
            {
                Segment once = Segment.Between(from + offset, to + offset, source);
                target[count++] = once with { Delta = times * once.Delta };
            }

            from = to;
        }
    }
}

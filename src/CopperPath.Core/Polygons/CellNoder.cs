using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Finds the hot pixels within one box after another and the segments that pass through them. A box is cut into
/// smaller tiles until so few segments are left in each that comparing all with all is the quickest way.
/// </summary>
internal sealed class CellNoder(Segment[] segments)
{
    private const int SegmentsPerCell = 10;
    private const int SegmentsPerTile = 3;
    private const int FruitlessCutsAllowed = 3;
    private const int SortHotPixelsAbove = 48;

    private readonly List<PointNm> _hotPixels = [];

    /// <summary>Hot pixels in the order they were found.</summary>
    public List<PointNm> Vertices { get; } = [];

    /// <summary>(segment, vertex) for each hot pixel a segment meets; vertices are numbered within this part.</summary>
    public List<(int Segment, int Vertex)> Passages { get; } = [];

    /// <summary>Nodes all that lies within the box, given the segments that meet it.</summary>
    /// <param name="members">Numbers of the segments.</param>
    /// <param name="box">The cell.</param>
    /// <param name="fruitlessCuts">
    /// How many cuts on the way here left most segments together, as cutting does where many end at one point.
    /// </param>
    public void Node(ReadOnlySpan<int> members, PixelBox box, int fruitlessCuts = 0)
    {
        if (members.Length <= SegmentsPerCell || fruitlessCuts > FruitlessCutsAllowed || box.IsSinglePixel)
        {
            Resolve(members, box);
            return;
        }

        var tiles = new TileGrid(segments, members, box, SegmentsPerTile);
        for (int tile = 0; tile < tiles.TileCount; tile++)
        {
            ReadOnlySpan<int> inTile = tiles.SegmentsIn(tile);
            if (inTile.Length > 0)
            {
                Node(inTile, tiles.BoxOf(tile), inTile.Length > members.Length / 2 ? fruitlessCuts + 1 : 0);
            }
        }
    }

    private void Resolve(ReadOnlySpan<int> members, PixelBox box)
    {
        List<PointNm> hot = _hotPixels;
        hot.Clear();
        for (int i = 0; i < members.Length; i++)
        {
            ref readonly Segment s = ref segments[members[i]];
            Heat(s.Ax, s.Ay, box);
            Heat(s.Bx, s.By, box);
            long minY = s.MinY, maxY = s.MaxY;
            for (int j = i + 1; j < members.Length; j++)
            {
                ref readonly Segment t = ref segments[members[j]];
                if (t.Ax <= s.Bx && s.Ax <= t.Bx && t.MinY <= maxY && minY <= t.MaxY && s.Crosses(t, out long x, out long y))
                {
                    Heat(x, y, box);
                }
            }
        }

        if (hot.Count > SortHotPixelsAbove)
        {
            hot.Sort(static (p, q) => p.X != q.X ? p.X.CompareTo(q.X) : p.Y.CompareTo(q.Y));
        }

        for (int h = 0; h < hot.Count; h++)
        {
            PointNm pixel = hot[h];
            if (h > 0 && pixel == hot[h - 1])
            {
                continue;
            }

            foreach (int member in members)
            {
                if (segments[member].PassesThroughPixel(pixel.X, pixel.Y))
                {
                    Passages.Add((member, Vertices.Count));
                }
            }

            Vertices.Add(pixel);
        }
    }

    /// <summary>Notes a hot pixel of the cell; while they are few, each is kept once without sorting.</summary>
    private void Heat(long x, long y, PixelBox box)
    {
        if (!box.Contains(x, y))
        {
            return;
        }

        var pixel = new PointNm(x, y);
        if (_hotPixels.Count <= SortHotPixelsAbove)
        {
            foreach (PointNm known in _hotPixels)
            {
                if (known == pixel)
                {
                    return;
                }
            }
        }

        _hotPixels.Add(pixel);
    }
}

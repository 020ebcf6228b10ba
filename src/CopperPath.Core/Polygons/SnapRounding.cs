using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Snap rounding of a set of segments to the integer grid: every segment end and every crossing makes its unit
/// square ("hot pixel") hot, and each segment is bent through the centres of all hot pixels it meets. The bent
/// segments then meet at grid points only, however close the input was to being degenerate
/// (J. D. Hobby, "Practical segment intersection with finite precision output", Computational Geometry 13, 1999).
/// </summary>
/// <remarks>
/// Space is halved recursively, on half-integer lines, until few segments are left in a cell. A hot pixel lies in
/// exactly one cell and everything that decides about it passes through that cell, so cells need nothing from
/// each other: they run on any number of cores, and their results are put together in the order of the tree.
/// </remarks>
internal sealed class SnapRounding
{
    private const int SegmentsPerCell = 12;
    private const int FruitlessSplitsAllowed = 4;
    private const int SegmentsWorthATask = 4096;
    private const int MaxTaskDepth = 6;

    private readonly Segment[] _segments;
    private readonly int[] _cellMembers;
    private readonly List<PointNm> _hotPixels = [];
    private readonly PixelBox _box;
    private int[] _stack;

    private SnapRounding(Segment[] segments, int[] cellMembers, PixelBox box)
    {
        _segments = segments;
        _cellMembers = cellMembers;
        _box = box;
        _stack = [];
    }

    /// <summary>Hot pixels in order of the cells.</summary>
    public List<PointNm> Vertices { get; } = [];

    /// <summary>(segment, vertex) for each hot pixel a segment meets; vertex numbers count within this part.</summary>
    public List<(int Segment, int Vertex)> Passages { get; } = [];

    /// <summary>Snap-rounds the segments. The parts follow each other in an order that depends on the data only.</summary>
    public static IReadOnlyList<SnapRounding> Run(Segment[] segments)
    {
        if (segments.Length == 0)
        {
            return [];
        }

        BoxNm bounds = BoxNm.Empty;
        foreach (ref readonly Segment s in segments.AsSpan())
        {
            bounds = bounds.Including(new BoxNm(s.Ax, s.MinY, s.Bx, s.MaxY));
        }

        int[] all = new int[segments.Length];
        for (int i = 0; i < all.Length; i++)
        {
            all[i] = i;
        }

        return RunTask(segments, all, new PixelBox(bounds.MinX, bounds.MinY, bounds.MaxX, bounds.MaxY), 0);
    }

    private static List<SnapRounding> RunTask(Segment[] segments, int[] members, PixelBox box, int depth)
    {
        if (depth == MaxTaskDepth || members.Length < SegmentsWorthATask || box.IsSinglePixel)
        {
            var part = new SnapRounding(segments, members, box);
            part.Run();
            return [part];
        }

        (PixelBox first, PixelBox second) = box.Halves();
        List<SnapRounding> firstParts = [], secondParts = [];
        Parallel.Invoke(
            () => firstParts = RunTask(segments, Inside(segments, members, first), first, depth + 1),
            () => secondParts = RunTask(segments, Inside(segments, members, second), second, depth + 1));
        firstParts.AddRange(secondParts);
        return firstParts;
    }

    private static int[] Inside(Segment[] segments, int[] members, PixelBox box)
    {
        int[] inside = new int[members.Length];
        int count = 0;
        foreach (int member in members)
        {
            if (box.MayMeet(segments[member]))
            {
                inside[count++] = member;
            }
        }

        return inside[..count];
    }

    private void Run()
    {
        _stack = new int[(_cellMembers.Length * 3) + 64];
        _cellMembers.CopyTo(_stack, 0);
        Split(0, _cellMembers.Length, _box, 0);
        _stack = [];
    }

    /// <summary>Handles the cell whose members are in the given part of the stack; uses the stack above it.</summary>
    private void Split(int start, int end, PixelBox box, int fruitlessSplits)
    {
        int count = end - start;
        if (count == 0)
        {
            return;
        }

        if (count <= SegmentsPerCell || fruitlessSplits > FruitlessSplitsAllowed || box.IsSinglePixel)
        {
            Resolve(_stack.AsSpan(start, count), box);
            return;
        }

        (PixelBox first, PixelBox second) = box.Halves();
        SplitInto(start, end, first, fruitlessSplits);
        SplitInto(start, end, second, fruitlessSplits);
    }

    private void SplitInto(int start, int end, PixelBox half, int fruitlessSplits)
    {
        int count = end - start;
        if (_stack.Length < end + count)
        {
            Array.Resize(ref _stack, (_stack.Length * 2) + count);
        }

        int top = end;
        for (int i = start; i < end; i++)
        {
            int member = _stack[i];
            if (half.MayMeet(_segments[member]))
            {
                _stack[top++] = member;
            }
        }

        bool fruitless = top - end > count * 3 / 4;
        Split(end, top, half, fruitless ? fruitlessSplits + 1 : 0);
    }

    private void Resolve(ReadOnlySpan<int> members, PixelBox box)
    {
        List<PointNm> hot = _hotPixels;
        hot.Clear();
        for (int i = 0; i < members.Length; i++)
        {
            ref readonly Segment s = ref _segments[members[i]];
            if (box.Contains(s.Ax, s.Ay))
            {
                hot.Add(new PointNm(s.Ax, s.Ay));
            }

            if (box.Contains(s.Bx, s.By))
            {
                hot.Add(new PointNm(s.Bx, s.By));
            }

            long minY = s.MinY, maxY = s.MaxY;
            for (int j = i + 1; j < members.Length; j++)
            {
                ref readonly Segment t = ref _segments[members[j]];
                if (t.Ax <= s.Bx && s.Ax <= t.Bx && t.MinY <= maxY && minY <= t.MaxY
                    && s.Crosses(t, out long x, out long y) && box.Contains(x, y))
                {
                    hot.Add(new PointNm(x, y));
                }
            }
        }

        hot.Sort(static (p, q) => p.X != q.X ? p.X.CompareTo(q.X) : p.Y.CompareTo(q.Y));
        for (int h = 0; h < hot.Count; h++)
        {
            PointNm pixel = hot[h];
            if (h > 0 && pixel == hot[h - 1])
            {
                continue;
            }

            foreach (int member in members)
            {
                if (_segments[member].PassesThroughPixel(pixel.X, pixel.Y))
                {
                    Passages.Add((member, Vertices.Count));
                }
            }

            Vertices.Add(pixel);
        }
    }
}

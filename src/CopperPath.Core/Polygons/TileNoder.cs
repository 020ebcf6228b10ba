using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Finds the hot pixels within one box after another, the segments that pass through them, and what changes across
/// each segment behind them. A box is cut into smaller tiles until so few segments are left in each that comparing all
/// with all is the quickest way; tiles in which nothing can be seen are left out.
/// </summary>
/// <param name="segments">All segments.</param>
/// <param name="rule">What covers a place; null when only the pixels matter.</param>
internal sealed class TileNoder(Segment[] segments, CoverageRule? rule)
{
    private const int SegmentsPerCell = 14;
    private const int TilesPerSegment = 2;
    private const int FruitlessCutsAllowed = 3;

    private readonly List<CoverGrid> _gridOfDepth = [];
    private readonly HotPixels _hotPixels = new();
    private readonly CellCoverage? _coverage = rule is null ? null : new CellCoverage(rule);
    private Segment[] _here = [];
    private int[] _numbers = [];

    /// <summary>Hot pixels in the order they were found.</summary>
    public List<PointNm> Vertices { get; } = [];

    /// <summary>Passages through them; vertices are numbered as in <see cref="Vertices"/>.</summary>
    public List<Passage> Passages { get; } = [];

    /// <summary>Nodes all tiles of a finished grid.</summary>
    public void Node(CoverGrid grid)
    {
        for (int tile = 0; tile < grid.TileCount; tile++)
        {
            ReadOnlySpan<int> list = grid.ListOf(tile);
            if (list.Length > 0)
            {
                Node(list, grid.BoxOf(tile), grid.StateOf(tile), 0, 0);
            }
        }
    }

    /// <summary>Nodes one box.</summary>
    /// <param name="list">What passes it, as a grid lists it.</param>
    /// <param name="box">The box.</param>
    /// <param name="state">State of the box from sources that are not in the list.</param>
    /// <param name="depth">How many boxes there are around this one.</param>
    /// <param name="fruitlessCuts">
    /// How many cuts on the way here left most segments together, as cutting does where many end at one point.
    /// </param>
    private void Node(ReadOnlySpan<int> list, PixelBox box, int state, int depth, int fruitlessCuts)
    {
        if (list.Length <= SegmentsPerCell || fruitlessCuts > FruitlessCutsAllowed || box.IsSinglePixel)
        {
            Resolve(list, box, state);
            return;
        }

        if (RunsThroughInParallel(list, box))
        {
            return;
        }

        if (_gridOfDepth.Count == depth)
        {
            _gridOfDepth.Add(new CoverGrid(segments, rule));
        }

        CoverGrid grid = _gridOfDepth[depth];
        grid.Reset(box, CoverGrid.ShiftFor(box, Math.Max(4, list.Length * TilesPerSegment)), state);
        for (int i = 0; i < list.Length;)
        {
            int source = segments[list[i]].Source;
            grid.Begin(source);
            for (; i < list.Length && !CoverGrid.IsWinding(list[i]) && segments[list[i]].Source == source; i++)
            {
                grid.Draw(list[i]);
            }

            grid.End(i < list.Length && CoverGrid.IsWinding(list[i]) ? CoverGrid.WindingOf(list[i++]) : 0);
        }

        grid.Finish();
        for (int tile = 0; tile < grid.TileCount; tile++)
        {
            ReadOnlySpan<int> inTile = grid.ListOf(tile);
            if (inTile.Length > 0)
            {
                Node(inTile, grid.BoxOf(tile), grid.StateOf(tile), depth + 1,
                    inTile.Length > list.Length / 2 ? fruitlessCuts + 1 : 0);
            }
        }
    }

    /// <summary>
    /// Whether all segments run level, or all upright, and none ends in the box, so that nothing there can be hot: the
    /// strokes of hatched fills, and the sides of areas painted one over the other.
    /// </summary>
    private bool RunsThroughInParallel(ReadOnlySpan<int> list, PixelBox box)
    {
        bool areLevel = true, areUpright = true;
        foreach (int listed in list)
        {
            if (!CoverGrid.IsWinding(listed))
            {
                ref readonly Segment s = ref segments[listed];
                areLevel &= s.Dy == 0;
                areUpright &= s.Dx == 0;
                if (!(areLevel || areUpright) || box.Contains(s.Ax, s.Ay) || box.Contains(s.Bx, s.By))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private void Resolve(ReadOnlySpan<int> list, PixelBox box, int state)
    {
        ReadOnlySpan<Segment> here = Gather(list, box, state);
        FindHotPixels(here, box);
        foreach (PointNm pixel in _hotPixels.Sorted())
        {
            int before = Passages.Count;
            for (int i = 0; i < here.Length; i++)
            {
                if (here[i].PassesThroughPixel(pixel.X, pixel.Y))
                {
                    int change = _coverage is null || here[i].EndsAt(pixel.X, pixel.Y)
                        ? 0 : _coverage.ChangeBehind(here, i, pixel.X, pixel.Y);
                    Passages.Add(new Passage(_numbers[i], Vertices.Count, change));
                }
            }

            if (Passages.Count > before)
            {
                Vertices.Add(pixel);
            }
        }
    }

    /// <summary>Copies the listed segments side by side and tells the coverage what it needs to know.</summary>
    private ReadOnlySpan<Segment> Gather(ReadOnlySpan<int> list, PixelBox box, int state)
    {
        if (_here.Length < list.Length)
        {
            _here = new Segment[2 * list.Length];
            _numbers = new int[2 * list.Length];
        }

        int count = 0;
        _coverage?.Begin(list.Length, box, state);
        foreach (int listed in list)
        {
            if (CoverGrid.IsWinding(listed))
            {
                _coverage?.Winds(CoverGrid.WindingOf(listed));
            }
            else
            {
                _numbers[count] = listed;
                _here[count] = segments[listed];
                _coverage?.Add(_here[count]);
                count++;
            }
        }

        return _here.AsSpan(0, count);
    }

    private void FindHotPixels(ReadOnlySpan<Segment> here, PixelBox box)
    {
        _hotPixels.Clear();
        for (int i = 0; i < here.Length; i++)
        {
            ref readonly Segment s = ref here[i];
            if (box.Contains(s.Ax, s.Ay))
            {
                _hotPixels.Add(s.Ax, s.Ay);
            }

            if (box.Contains(s.Bx, s.By))
            {
                _hotPixels.Add(s.Bx, s.By);
            }

            long minY = s.MinY, maxY = s.MaxY;
            for (int j = i + 1; j < here.Length; j++)
            {
                ref readonly Segment t = ref here[j];
                if (t.Ax <= s.Bx && s.Ax <= t.Bx && t.MinY <= maxY && minY <= t.MaxY
                    && s.Crosses(t, out long x, out long y) && box.Contains(x, y))
                {
                    _hotPixels.Add(x, y);
                }
            }
        }
    }
}

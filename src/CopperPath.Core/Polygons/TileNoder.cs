using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Finds the hot pixels within one box after another, the segments that pass through them, and what changes across
/// each segment behind them. A box is cut into smaller tiles until so few segments are left in each that comparing all
/// with all is the quickest way; tiles in which nothing can be seen are left out.
/// </summary>
/// <param name="segments">All segments.</param>
/// <param name="rule">What covers a place; null when only the pixels matter.</param>
/// <param name="budget">What all boxes together may cost.</param>
internal sealed class TileNoder(Segment[] segments, CoverageRule? rule, WorkBudget budget)
{
    private const int SegmentsPerCell = 14;
    private const int TilesPerSegment = 2;
    private const int FruitlessCutsAllowed = 3;

    /// <summary>The first cut of so few segments is not worth weighing.</summary>
    private const int Few = 48;

    /// <summary>From here on a box is crowded: comparing all with all takes so long that more cuts are worth a try.</summary>
    private const int Crowd = 128;
    private const int FruitlessCutsAllowedInCrowd = 10;
    private const int TilesPerSegmentInCrowd = 16;
    private const long WorkSpentAtOnce = 1 << 16;

    private readonly List<CoverGrid> _gridOfDepth = [];
    private readonly HotPixels _hotPixels = new();
    private readonly Thinning? _thinning = rule is { KnowsHiding: true } ? new Thinning(segments, rule) : null;
    private readonly PassingLines _passingLines = new(segments);
    private long _work;
    private long _workElsewhere;
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

        SpendAll();
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
        int cutsAllowed = list.Length < Crowd ? FruitlessCutsAllowed : FruitlessCutsAllowedInCrowd;
        if (list.Length <= SegmentsPerCell || fruitlessCuts > cutsAllowed || box.IsSinglePixel)
        {
            Resolve(list, box, state);
            return;
        }

        if (_passingLines.RunSideBySide(list, box))
        {
            return;
        }

        if (list.Length >= Crowd && NodeThinned(list, box, state, depth, fruitlessCuts))
        {
            return;
        }

        CoverGrid grid = Cut(list, box, state, depth);
        if ((list.Length >= Few || fruitlessCuts > 0) && !CutWorth.Of(grid, list.Length).Pays)
        {
            NodeBundle(list, box, state, depth, fruitlessCuts);
            return;
        }

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
    /// Nodes a box whose segments stay together in its tiles because they run along each other: what cannot be seen is
    /// left out of the box or, where that is too little, of each tile; what is left then is compared all with all.
    /// </summary>
    private void NodeBundle(ReadOnlySpan<int> list, PixelBox box, int state, int depth, int fruitlessCuts)
    {
        if (list.Length < Crowd && NodeThinned(list, box, state, depth, fruitlessCuts))
        {
            return;
        }

        CoverGrid grid = _gridOfDepth[depth];
        int[]?[] tiles = new int[grid.TileCount][];
        int[] states = new int[grid.TileCount];
        var worth = new CutWorth(list.Length);
        for (int tile = 0; tile < tiles.Length; tile++)
        {
            ReadOnlySpan<int> inTile = grid.ListOf(tile);
            states[tile] = grid.StateOf(tile);
            if (inTile.Length > SegmentsPerCell && _passingLines.RunSideBySide(inTile, grid.BoxOf(tile)))
            {
                continue;
            }

            if (inTile.Length > SegmentsPerCell && _thinning is not null)
            {
                inTile = _thinning.Thin(inTile, grid.BoxOf(tile), states[tile]);
                states[tile] = _thinning.State;
            }

            tiles[tile] = inTile.ToArray();
            worth.Add(grid, tile, inTile.Length);
        }

        if (!worth.Pays)
        {
            Resolve(list, box, state);
            return;
        }

        for (int tile = 0; tile < tiles.Length; tile++)
        {
            if (tiles[tile] is { Length: > 0 } inTile)
            {
                Node(inTile, grid.BoxOf(tile), states[tile], depth + 1,
                    inTile.Length > list.Length / 2 ? fruitlessCuts + 1 : 0);
            }
        }
    }

    /// <summary>Nodes the box without what cannot be seen there, if that is a good part of the list.</summary>
    private bool NodeThinned(ReadOnlySpan<int> list, PixelBox box, int state, int depth, int fruitlessCuts)
    {
        if (_thinning is null)
        {
            return false;
        }

        ReadOnlySpan<int> thinned = _thinning.Thin(list, box, state);
        if (thinned.Length > list.Length - (list.Length / 4))
        {
            return false;
        }

        Node(thinned.ToArray(), box, _thinning.State, depth, fruitlessCuts);
        return true;
    }

    private CoverGrid Cut(ReadOnlySpan<int> list, PixelBox box, int state, int depth)
    {
        if (_gridOfDepth.Count == depth)
        {
            _gridOfDepth.Add(new CoverGrid(segments, rule));
        }

        CoverGrid grid = _gridOfDepth[depth];
        grid.Reset(box, ShiftFor(list, box), state);
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

        Spend(grid.TileCount + grid.EntryCount);
        grid.Finish();
        return grid;
    }

    private int ShiftFor(ReadOnlySpan<int> list, PixelBox box)
    {
        long tilesWanted = Math.Max(4, (long)list.Length * TilesPerSegment);
        if (list.Length < Crowd)
        {
            return CoverGrid.ShiftFor(box, tilesWanted);
        }

        double sumNm = 0;
        foreach (int listed in list)
        {
            if (!CoverGrid.IsWinding(listed))
            {
                sumNm += segments[listed].WidthAndHeightWithin(box);
            }
        }

        return CoverGrid.ShiftFor(box, tilesWanted, sumNm, list.Length, TilesPerSegmentInCrowd);
    }

    /// <summary>Counts work, and spends it from time to time.</summary>
    private void Spend(long units)
    {
        _work += units;
        if (_work >= WorkSpentAtOnce)
        {
            SpendAll();
        }
    }

    private void SpendAll()
    {
        long elsewhere = _passingLines.Work + (_coverage?.Work ?? 0) + (_thinning?.Work ?? 0);
        budget.Spend(_work + elsewhere - _workElsewhere);
        _workElsewhere = elsewhere;
        _work = 0;
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

            Spend(here.Length + (WorkBudget.UnitsPerPassage * (Passages.Count - before)));

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
        Spend((long)here.Length * (here.Length + 1) / 2);
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

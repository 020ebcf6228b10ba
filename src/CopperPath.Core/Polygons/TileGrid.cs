namespace CopperPath.Polygons;

/// <summary>
/// A square grid over a box: for each tile the segments that meet it (a near miss may also be listed).
/// Tiles are blocks of whole pixels with sides of a power of two.
/// </summary>
internal sealed class TileGrid
{
    private readonly Segment[] _segments;
    private readonly long _minX;
    private readonly long _minY;
    private readonly int _shift;
    private readonly int[] _firstInTile;
    private readonly int[] _inTile;

    /// <summary>
    /// Spreads some of the segments, given by number, over about one tile for every
    /// <paramref name="segmentsPerTile"/> of them; what lies outside the box is left out.
    /// </summary>
    public TileGrid(Segment[] segments, ReadOnlySpan<int> members, PixelBox box, int segmentsPerTile)
    {
        _segments = segments;
        _minX = box.MinX;
        _minY = box.MinY;
        long tilesWanted = Math.Max(1, members.Length / segmentsPerTile);
        while (TilesOf(_shift) > tilesWanted)
        {
            _shift++;
        }

        Columns = (int)((box.MaxX - box.MinX) >> _shift) + 1;
        Rows = (int)((box.MaxY - box.MinY) >> _shift) + 1;
        _firstInTile = new int[TileCount + 1];
        CountOrPlace(members, _firstInTile.AsSpan(1), []);
        for (int t = 0; t < TileCount; t++)
        {
            _firstInTile[t + 1] += _firstInTile[t];
        }

        _inTile = new int[_firstInTile[^1]];
        CountOrPlace(members, _firstInTile.AsSpan(..^1).ToArray(), _inTile);

        Int128 TilesOf(int shift) =>
            (Int128)(((box.MaxX - box.MinX) >> shift) + 1) * (((box.MaxY - box.MinY) >> shift) + 1);
    }

    public int Columns { get; }

    public int Rows { get; }

    public int TileCount => Columns * Rows;

    /// <summary>A grid over all of the segments, at least one.</summary>
    public static TileGrid Over(Segment[] segments, int segmentsPerTile)
    {
        long minX = long.MaxValue, minY = long.MaxValue, maxX = long.MinValue, maxY = long.MinValue;
        int[] all = new int[segments.Length];
        for (int i = 0; i < all.Length; i++)
        {
            ref readonly Segment s = ref segments[i];
            all[i] = i;
            minX = Math.Min(minX, s.Ax);
            maxX = Math.Max(maxX, s.Bx);
            minY = Math.Min(minY, s.MinY);
            maxY = Math.Max(maxY, s.MaxY);
        }

        return new TileGrid(segments, all, new PixelBox(minX, minY, maxX, maxY), segmentsPerTile);
    }

    /// <summary>Column of an abscissa; columns beyond either side are kept apart from the grid's own.</summary>
    public int ColumnOf(long x) => (int)Math.Clamp((x - _minX) >> _shift, -1, Columns);

    /// <summary>Row of an ordinate; rows beyond either side are kept apart from the grid's own.</summary>
    public int RowOf(long y) => (int)Math.Clamp((y - _minY) >> _shift, -1, Rows);

    public bool Covers(long x, long y) =>
        x >= _minX && y >= _minY && ColumnOf(x) < Columns && RowOf(y) < Rows;

    /// <summary>Numbers of the segments that meet a tile, rising.</summary>
    public ReadOnlySpan<int> SegmentsIn(int tile) =>
        _inTile.AsSpan(_firstInTile[tile], _firstInTile[tile + 1] - _firstInTile[tile]);

    public PixelBox BoxOf(int tile)
    {
        long minX = _minX + ((long)(tile % Columns) << _shift), minY = _minY + ((long)(tile / Columns) << _shift);
        long last = (1L << _shift) - 1;
        return new PixelBox(minX, minY, minX + last, minY + last);
    }

    /// <summary>
    /// Counts the segments that meet each tile or, when there is room for them, places each at the tile's next
    /// place and moves that on.
    /// </summary>
    private void CountOrPlace(ReadOnlySpan<int> members, Span<int> next, Span<int> places)
    {
        bool place = places.Length > 0;
        foreach (int member in members)
        {
            ref readonly Segment s = ref _segments[member];
            int left = Math.Max(0, ColumnOf(s.Ax)), right = Math.Min(Columns - 1, ColumnOf(s.Bx));
            int bottom = Math.Max(0, RowOf(s.MinY)), top = Math.Min(Rows - 1, RowOf(s.MaxY));
            for (int row = bottom; row <= top; row++)
            {
                (int from, int to) = left == right || bottom == top ? (left, right) : ColumnsInRow(s, row, left, right);
                for (int tile = (row * Columns) + from; tile <= (row * Columns) + to; tile++)
                {
                    if (place)
                    {
                        places[next[tile]] = member;
                    }

                    next[tile]++;
                }
            }
        }
    }

    /// <summary>Columns a slanting segment passes in a row, widened by 2 nm against rounding.</summary>
    private (int From, int To) ColumnsInRow(in Segment s, int row, int left, int right)
    {
        long rowBottom = _minY + ((long)row << _shift);
        double xAtBottom = s.XAt(Math.Max(s.MinY, rowBottom - 1)), xAtTop = s.XAt(Math.Min(s.MaxY, rowBottom + (1L << _shift)));
        return (Math.Max(left, ColumnOf((long)Math.Min(xAtBottom, xAtTop) - 2)),
            Math.Min(right, ColumnOf((long)Math.Max(xAtBottom, xAtTop) + 2)));
    }
}

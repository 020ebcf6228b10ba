using System.Numerics;

namespace CopperPath.Polygons;

/// <summary>
/// A box cut into square tiles, and for each tile the segments that pass it and what covers it as a whole.
/// Sources are drawn one after another; every tile lists its segments source by source.
/// </summary>
/// <remarks>
/// A tile's list holds numbers of segments and, after the segments of a source that winds around the tile's lower left
/// corner, how often it does (<see cref="IsWinding"/>). A source that covers a tile without passing it goes into the
/// tile's state, and segments that the state hides are left out: nothing they do can be seen there.
/// </remarks>
internal sealed class CoverGrid(Segment[] segments, CoverageRule? rule)
{
    /// <summary>
    /// Segments this near a tile, in nanometres, are listed as passing it. Rounding moves borders by less than 1 nm, so
    /// a source that covers a tile without passing it still covers it, and a little more, in the rounded picture.
    /// </summary>
    public const long Margin = 4;

    /// <summary>Nearer than this to a corner, in nanometres, exact arithmetic decides on which side a crossing lies.</summary>
    private const double Doubt = 1e-3;

    private long _minX;
    private long _minY;
    private int _shift;
    private int _source;
    private int _drawing;
    private int _firstRow;
    private int _lastRow;
    private bool _entersFromLeft;
    private int[] _state = [];
    private int[] _passedBy = [];
    private int[] _turns = [];
    private int[] _turnsAtLeft = [];
    private int[] _firstPassed = [];
    private int[] _lastPassed = [];
    private Entry[] _entries = [];
    private int _entryCount;
    private int[] _end = [];
    private int[] _listed = [];

    public int Columns { get; private set; }

    public int Rows { get; private set; }

    public int TileCount => Columns * Rows;

    /// <summary>What was drawn: one for each tile that a segment passes.</summary>
    public int EntryCount => _entryCount;

    /// <summary>Whether an entry of a tile's list says how often the source before it winds around the tile's corner.</summary>
    public static bool IsWinding(int listed) => listed < 0;

    /// <summary>The winding number such an entry stands for.</summary>
    public static int WindingOf(int listed) => (~listed >> 1) ^ -(~listed & 1);

    private static int ListedWinding(int winding) => ~((winding << 1) ^ (winding >> 31));

    /// <summary>Tiles whose sides are the smallest power of two that gives at most so many of them over the box.</summary>
    public static int ShiftFor(PixelBox box, long tilesWanted)
    {
        int shift = 0;
        while ((Int128)(((box.MaxX - box.MinX) >> shift) + 1) * (((box.MaxY - box.MinY) >> shift) + 1) > Math.Max(1, tilesWanted))
        {
            shift++;
        }

        return shift;
    }

    /// <summary>
    /// The same, with larger tiles where the segments would each pass more than so many: coincident borders would else be
    /// listed along all of their length.
    /// </summary>
    /// <param name="box">The box.</param>
    /// <param name="tilesWanted">Most tiles.</param>
    /// <param name="widthsAndHeightsNm">Widths and heights of all segments within the box, added up.</param>
    /// <param name="segments">How many segments there are.</param>
    /// <param name="tilesPerSegment">How many tiles each may pass, on average.</param>
    public static int ShiftFor(PixelBox box, long tilesWanted, double widthsAndHeightsNm, long segments, int tilesPerSegment)
    {
        int shift = ShiftFor(box, tilesWanted);
        while (widthsAndHeightsNm > (double)segments * tilesPerSegment * (1L << shift))
        {
            shift++;
        }

        return shift;
    }

    /// <summary>Forgets everything and lays tiles of side 2^shift over the box, of which <paramref name="state"/> is known.</summary>
    public void Reset(PixelBox box, int shift, int state)
    {
        _minX = box.MinX;
        _minY = box.MinY;
        _shift = shift;
        Columns = (int)((box.MaxX - box.MinX) >> shift) + 1;
        Rows = (int)((box.MaxY - box.MinY) >> shift) + 1;
        _entryCount = 0;
        _drawing = 0;
        int tiles = TileCount;
        if (_state.Length < tiles)
        {
            int room = (int)BitOperations.RoundUpToPowerOf2((uint)tiles);
            _state = new int[room];
            _passedBy = new int[room];
            _turns = new int[room];
            _end = new int[room];
        }

        Array.Fill(_state, state, 0, tiles);
        Array.Clear(_passedBy, 0, tiles);
        if (_firstPassed.Length < Rows)
        {
            int room = (int)BitOperations.RoundUpToPowerOf2((uint)Rows);
            _turnsAtLeft = new int[room];
            _firstPassed = new int[room];
            _lastPassed = new int[room];
        }

        Array.Fill(_firstPassed, int.MaxValue, 0, Rows);
        Array.Fill(_lastPassed, -1, 0, Rows);
    }

    /// <summary>Begins the drawing of a source.</summary>
    public void Begin(int source)
    {
        _source = source;
        _drawing++;
        _firstRow = int.MaxValue;
        _lastRow = -1;
        _entersFromLeft = false;
    }

    /// <summary>Draws one segment of the source.</summary>
    public void Draw(int number)
    {
        ref readonly Segment s = ref segments[number];
        long minY = s.MinY, maxY = s.MaxY;
        int bottom = Math.Max(0, RowOf(minY - Margin)), top = Math.Min(Rows - 1, RowOf(maxY + Margin));
        int left = Math.Max(0, ColumnOf(s.Ax - Margin)), right = Math.Min(Columns - 1, ColumnOf(s.Bx + Margin));
        if (bottom > top || left > right)
        {
            return;
        }

        _firstRow = Math.Min(_firstRow, bottom);
        _lastRow = Math.Max(_lastRow, top);
        for (int row = bottom; row <= top; row++)
        {
            (int from, int to) = left == right || bottom == top || minY == maxY ? (left, right) : ColumnsInRow(s, row, left, right);
            _firstPassed[row] = Math.Min(_firstPassed[row], from);
            _lastPassed[row] = Math.Max(_lastPassed[row], to);
            if (_entryCount + to - from >= _entries.Length)
            {
                Array.Resize(ref _entries, Math.Max(256, 2 * (_entries.Length + to - from + 1)));
            }

            int tile = (row * Columns) + from;
            for (int end = (row * Columns) + to; tile <= end; tile++)
            {
                _passedBy[tile] = _drawing;
                _entries[_entryCount++] = new Entry(tile, number, _source);
            }
        }

        if (rule is not null)
        {
            CountTurns(s, minY, maxY);
        }
    }

    /// <summary>Ends the drawing of a source: notes its winding numbers, and what it covers as a whole.</summary>
    /// <param name="winding">How often the source winds around the lower left corner of the box.</param>
    public void End(int winding)
    {
        if (rule is null)
        {
            return;
        }

        bool all = winding != 0 || _entersFromLeft;
        for (int row = all ? 0 : _firstRow, last = all ? Rows - 1 : _lastRow; row <= last; row++)
        {
            winding += _turnsAtLeft[row];
            _turnsAtLeft[row] = 0;
            EndRow(row, winding);
        }
    }

    /// <summary>Sorts what was drawn by tiles.</summary>
    public void Finish()
    {
        int tiles = TileCount;
        Array.Clear(_end, 0, tiles);
        int kept = 0;
        for (int i = 0; i < _entryCount; i++)
        {
            Entry entry = _entries[i];
            if (rule is null || !rule.Hides(_state[entry.Tile], entry.Source))
            {
                _end[entry.Tile]++;
                _entries[kept++] = entry;
            }
        }

        _entryCount = kept;
        for (int tile = 0, total = 0; tile < tiles; tile++)
        {
            (_end[tile], total) = (total, total + _end[tile]);
        }

        if (_listed.Length < kept)
        {
            _listed = new int[(int)BitOperations.RoundUpToPowerOf2((uint)kept)];
        }

        for (int i = 0; i < kept; i++)
        {
            _listed[_end[_entries[i].Tile]++] = _entries[i].Listed;
        }
    }

    /// <summary>The tile's list.</summary>
    public ReadOnlySpan<int> ListOf(int tile)
    {
        int first = tile == 0 ? 0 : _end[tile - 1];
        return _listed.AsSpan(first, _end[tile] - first);
    }

    /// <summary>State of the tile, from the sources that cover it as a whole.</summary>
    public int StateOf(int tile) => _state[tile];

    public PixelBox BoxOf(int tile)
    {
        long minX = _minX + ((long)(tile % Columns) << _shift), minY = _minY + ((long)(tile / Columns) << _shift);
        long last = (1L << _shift) - 1;
        return new PixelBox(minX, minY, minX + last, minY + last);
    }

    private int ColumnOf(long x) => (int)Math.Clamp((x - _minX) >> _shift, -1, Columns);

    private int RowOf(long y) => (int)Math.Clamp((y - _minY) >> _shift, -1, Rows);

    private (int From, int To) ColumnsInRow(in Segment s, int row, int left, int right)
    {
        long rowBottom = _minY + ((long)row << _shift);
        double xAtBottom = s.XAt(Math.Max(s.MinY, rowBottom - Margin));
        double xAtTop = s.XAt(Math.Min(s.MaxY, rowBottom + (1L << _shift) + Margin));
        return (Math.Max(left, ColumnOf((long)Math.Min(xAtBottom, xAtTop) - Margin)),
            Math.Min(right, ColumnOf((long)Math.Max(xAtBottom, xAtTop) + Margin)));
    }

    /// <summary>
    /// Notes where the segment crosses the lower sides of rows, at the first tile corner right of the crossing, and
    /// the left side of the box, at the first row above.
    /// </summary>
    private void CountTurns(in Segment s, long minY, long maxY)
    {
        int firstRow = (int)Math.Max(0, ((minY - _minY) >> _shift) + 1);
        int lastRow = (int)Math.Min(Rows - 1, (maxY - _minY) >> _shift);
        int rightwards = s.By > s.Ay ? -s.Delta : s.Delta;
        for (int row = firstRow; row <= lastRow; row++)
        {
            int column = FirstColumnRightOf(s, row);
            if (column > 0 && column < Columns)
            {
                _turns[(row * Columns) + column] += rightwards;
                _lastPassed[row] = Math.Max(_lastPassed[row], column);
            }
        }

        if (s.CrossesLeftSideOf(_minX))
        {
            int row = FirstRowAbove(s);
            if (row > 0 && row < Rows)
            {
                _turnsAtLeft[row] += s.Delta;
                _entersFromLeft = true;
            }
        }
    }

    private int FirstColumnRightOf(in Segment s, int row)
    {
        long lineY = _minY + ((long)row << _shift);
        double x = s.Ax - _minX + 0.5 + (s.Dx * ((lineY - 0.5 - s.Ay) / s.Dy));
        if (x < -1 || x > ((double)Columns * (1L << _shift)))
        {
            return x < 0 ? 0 : Columns;
        }

        long floor = (long)Math.Floor(x);
        int column = (int)(floor >> _shift) + 1;
        double beyond = x - ((double)(column - 1) * (1L << _shift));
        int cornerToRight = s.By > s.Ay ? -1 : 1;
        if (beyond < Doubt && s.SideOfCorner(_minX + ((long)(column - 1) << _shift), lineY) == cornerToRight)
        {
            return column - 1;
        }

        return (1L << _shift) - beyond < Doubt && s.SideOfCorner(_minX + ((long)column << _shift), lineY) != cornerToRight
            ? column + 1 : column;
    }

    private int FirstRowAbove(in Segment s)
    {
        double y = s.Ay - _minY + 0.5 + (s.Dy * ((_minX - 0.5 - s.Ax) / s.Dx));
        if (y < -1 || y > ((double)Rows * (1L << _shift)))
        {
            return y < 0 ? 0 : Rows;
        }

        int row = (int)((long)Math.Floor(y) >> _shift) + 1;
        double beyond = y - ((double)(row - 1) * (1L << _shift));
        if (beyond < Doubt && s.SideOfCorner(_minX, _minY + ((long)(row - 1) << _shift)) > 0)
        {
            return row - 1;
        }

        return (1L << _shift) - beyond < Doubt && s.SideOfCorner(_minX, _minY + ((long)row << _shift)) < 0 ? row + 1 : row;
    }

    private void EndRow(int row, int winding)
    {
        int first = _firstPassed[row], last = _lastPassed[row];
        int tile = row * Columns, end = tile + Columns;
        if (last < 0)
        {
            if (winding != 0)
            {
                Cover(tile, end);
            }

            return;
        }

        if (winding != 0)
        {
            Cover(tile, tile + first);
        }

        int afterLast = tile + last + 1;
        for (tile += first; tile < afterLast; tile++)
        {
            winding += _turns[tile];
            _turns[tile] = 0;
            if (winding == 0)
            {
                continue;
            }

            if (_passedBy[tile] == _drawing)
            {
                if (_entryCount == _entries.Length)
                {
                    Array.Resize(ref _entries, 2 * _entryCount);
                }

                _entries[_entryCount++] = new Entry(tile, ListedWinding(winding), _source);
            }
            else
            {
                _state[tile] = rule!.With(_state[tile], _source);
            }
        }

        if (winding != 0)
        {
            Cover(tile, end);
        }

        _firstPassed[row] = int.MaxValue;
        _lastPassed[row] = -1;
    }

    private void Cover(int tile, int end)
    {
        for (; tile < end; tile++)
        {
            _state[tile] = rule!.With(_state[tile], _source);
        }
    }

    private readonly record struct Entry(int Tile, int Listed, int Source);
}

namespace CopperPath.Polygons;

/// <summary>
/// An edge for left-ray queries, stored upwards (from its lower to its higher end; level edges left to right).
/// Tag is what the caller knows the edge by.
/// </summary>
internal readonly record struct UpwardEdge(long LowX, long LowY, long HighX, long HighY, int Tag)
{
    public static UpwardEdge Between(long ax, long ay, long bx, long by, int tag) =>
        ay < by || (ay == by && ax < bx) ? new(ax, ay, bx, by, tag) : new(bx, by, ax, ay, tag);

    public double XAt(long y) => LowX + ((HighX - LowX) * ((double)(y - LowY) / (HighY - LowY)));
}

/// <summary>
/// A uniform grid over edges that answers: which edge does a ray going left from a point meet first?
/// Edges may share ends and may coincide but do not cross.
/// </summary>
internal sealed class EdgeGrid
{
    private readonly UpwardEdge[] _edges;
    private readonly long _minX;
    private readonly long _minY;
    private readonly long _maxX;
    private readonly long _maxY;
    private readonly long _cellWidth = 1;
    private readonly long _cellHeight = 1;
    private readonly int _columns = 1;
    private readonly int[] _firstInCell;
    private readonly int[] _inCell;

    public EdgeGrid(UpwardEdge[] edges)
    {
        _edges = edges;
        (_minX, _minY, _maxX, _maxY) = (long.MaxValue, long.MaxValue, long.MinValue, long.MinValue);
        foreach (ref readonly UpwardEdge e in edges.AsSpan())
        {
            _minX = Math.Min(_minX, Math.Min(e.LowX, e.HighX));
            _maxX = Math.Max(_maxX, Math.Max(e.LowX, e.HighX));
            _minY = Math.Min(_minY, e.LowY);
            _maxY = Math.Max(_maxY, e.HighY);
        }

        int rows = 1;
        if (edges.Length > 0)
        {
            double width = _maxX - _minX + 1, height = _maxY - _minY + 1;
            double cellsWanted = Math.Max(1, edges.Length / 2);
            double side = Math.Max(Math.Sqrt(width * height / cellsWanted), Math.Max(width, height) / cellsWanted);
            _cellWidth = _cellHeight = Math.Max(1, (long)Math.Ceiling(side));
            _columns = (int)((_maxX - _minX) / _cellWidth) + 1;
            rows = (int)((_maxY - _minY) / _cellHeight) + 1;
        }

        _firstInCell = new int[(_columns * rows) + 1];
        ForEachCell((cell, _) => _firstInCell[cell + 1]++);
        for (int c = 0; c < _columns * rows; c++)
        {
            _firstInCell[c + 1] += _firstInCell[c];
        }

        int[] next = _firstInCell[..^1];
        _inCell = new int[_firstInCell[^1]];
        ForEachCell((cell, edge) => _inCell[next[cell]++] = edge);
    }

    /// <summary>Tag of the first edge listed that the point lies on.</summary>
    public bool TryFindTagAt(long x, long y, out int tag)
    {
        tag = 0;
        if (x < _minX || x > _maxX || y < _minY || y > _maxY)
        {
            return false;
        }

        foreach (int index in EdgesIn((RowOf(y) * _columns) + ColumnOf(x)))
        {
            ref readonly UpwardEdge e = ref _edges[index];
            if (y >= e.LowY && y <= e.HighY && x >= Math.Min(e.LowX, e.HighX) && x <= Math.Max(e.LowX, e.HighX)
                && ExactSign.OfCross(e.HighX - e.LowX, e.HighY - e.LowY, x - e.LowX, y - e.LowY) == 0)
            {
                tag = e.Tag;
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// Index of the edge first met by a ray going left from just above (x, y), or -1 when the ray meets none.
    /// Of coinciding edges the one with the greatest index counts.
    /// </summary>
    public int FirstToTheLeft(long x, long y)
    {
        if (y < _minY || y > _maxY || x < _minX)
        {
            return -1;
        }

        int best = -1;
        double bestX = 0;
        int row = RowOf(y);
        for (int column = ColumnOf(Math.Min(x, _maxX)); column >= 0; column--)
        {
            foreach (int index in EdgesIn((row * _columns) + column))
            {
                ref readonly UpwardEdge e = ref _edges[index];
                if (e.LowY <= y && y < e.HighY
                    && ExactSign.OfCross(e.HighX - e.LowX, e.HighY - e.LowY, x - e.LowX, y - e.LowY) < 0)
                {
                    double crossingX = e.XAt(y);
                    if (best < 0 || crossingX > bestX + 0.01
                        || (crossingX > bestX - 0.01 && IsRighter(index, best, y)))
                    {
                        best = index;
                        bestX = crossingX;
                    }
                }
            }

            // Whatever crosses the row in this column or to its right has been seen.
            if (best >= 0 && bestX > _minX + (column * _cellWidth) + 1)
            {
                break;
            }
        }

        return best;
    }

    public int TagOf(int edge) => _edges[edge].Tag;

    /// <summary>Whether the edge crosses the line just above y further right than the other edge does.</summary>
    private bool IsRighter(int edge, int other, long y)
    {
        ref readonly UpwardEdge e = ref _edges[edge];
        ref readonly UpwardEdge o = ref _edges[other];
        Int128 ex = e.HighX - e.LowX, ey = e.HighY - e.LowY, ox = o.HighX - o.LowX, oy = o.HighY - o.LowY;
        Int128 difference = ((e.LowX - o.LowX) * ey * oy) + ((y - e.LowY) * ex * oy) - ((y - o.LowY) * ox * ey);
        if (difference == 0)
        {
            difference = (ex * oy) - (ox * ey);
        }

        return difference > 0 || (difference == 0 && edge > other);
    }

    private ReadOnlySpan<int> EdgesIn(int cell) =>
        _inCell.AsSpan(_firstInCell[cell], _firstInCell[cell + 1] - _firstInCell[cell]);

    private int ColumnOf(long x) => (int)((x - _minX) / _cellWidth);

    private int RowOf(long y) => (int)((y - _minY) / _cellHeight);

    /// <summary>Visits every (cell, edge) that meet; the x-range within a row is widened by 1 nm against rounding.</summary>
    private void ForEachCell(Action<int, int> visit)
    {
        for (int index = 0; index < _edges.Length; index++)
        {
            UpwardEdge e = _edges[index];
            int lowRow = RowOf(e.LowY), highRow = RowOf(e.HighY);
            (long left, long right) = (Math.Min(e.LowX, e.HighX), Math.Max(e.LowX, e.HighX));
            for (int row = lowRow; row <= highRow; row++)
            {
                long rowLeft = left, rowRight = right;
                if (lowRow != highRow && left != right)
                {
                    long rowBottom = Math.Max(e.LowY, _minY + (row * _cellHeight));
                    long rowTop = Math.Min(e.HighY, _minY + ((row + 1) * _cellHeight));
                    double xAtBottom = e.XAt(rowBottom), xAtTop = e.XAt(rowTop);
                    rowLeft = Math.Max(left, (long)Math.Min(xAtBottom, xAtTop) - 2);
                    rowRight = Math.Min(right, (long)Math.Max(xAtBottom, xAtTop) + 2);
                }

                for (int column = ColumnOf(rowLeft); column <= ColumnOf(rowRight); column++)
                {
                    visit((row * _columns) + column, index);
                }
            }
        }
    }
}

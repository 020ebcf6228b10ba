namespace CopperPath.Polygons;

/// <summary>
/// Answers which edge a ray going left from a point meets first. Edges may share ends and may coincide but do not
/// cross.
/// </summary>
internal sealed class EdgeGrid(Segment[] edges)
{
    private const int EdgesPerTile = 3;

    private readonly TileGrid? _tiles = edges.Length > 0 ? TileGrid.Over(edges, EdgesPerTile) : null;

    /// <summary>The first edge listed that the point lies on, or -1.</summary>
    public int EdgeAt(long x, long y)
    {
        if (_tiles is not null && _tiles.Covers(x, y))
        {
            foreach (int edge in _tiles.SegmentsIn((_tiles.RowOf(y) * _tiles.Columns) + _tiles.ColumnOf(x)))
            {
                ref readonly Segment e = ref edges[edge];
                if (x >= e.Ax && x <= e.Bx && y >= e.MinY && y <= e.MaxY
                    && ExactSign.OfCross(e.Dx, e.Dy, x - e.Ax, y - e.Ay) == 0)
                {
                    return edge;
                }
            }
        }

        return -1;
    }

    /// <summary>
    /// The edge first met by a ray going left from just above (x, y), or -1 when the ray meets none.
    /// Of coinciding edges the last one listed counts.
    /// </summary>
    public int FirstToTheLeft(long x, long y)
    {
        if (_tiles is null || _tiles.RowOf(y) < 0 || _tiles.RowOf(y) >= _tiles.Rows)
        {
            return -1;
        }

        int row = _tiles.RowOf(y), best = -1;
        double bestX = 0;
        for (int column = Math.Min(_tiles.ColumnOf(x), _tiles.Columns - 1); column >= 0; column--)
        {
            int tile = (row * _tiles.Columns) + column;
            foreach (int edge in _tiles.SegmentsIn(tile))
            {
                ref readonly Segment e = ref edges[edge];
                if (e.MinY <= y && y < e.MaxY
                    && ExactSign.OfCross(e.Dx, e.Dy, x - e.Ax, y - e.Ay) == (e.Dy > 0 ? -1 : 1))
                {
                    double crossingX = e.XAt(y);
                    if (best < 0 || crossingX > bestX + 0.01
                        || (crossingX > bestX - 0.01 && IsRighter(edge, best, y)))
                    {
                        best = edge;
                        bestX = crossingX;
                    }
                }
            }

            // Whatever crosses the row in this column or to its right has been seen.
            if (best >= 0 && bestX > _tiles.BoxOf(tile).MinX + 1)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>Whether the edge crosses the line just above y further right than the other edge does.</summary>
    private bool IsRighter(int edge, int other, long y)
    {
        (Int128 ex, Int128 ey) = Upward(edges[edge]);
        (Int128 ox, Int128 oy) = Upward(edges[other]);
        Int128 difference = ((edges[edge].Ax - edges[other].Ax) * ey * oy)
            + ((y - edges[edge].Ay) * ex * oy) - ((y - edges[other].Ay) * ox * ey);
        if (difference == 0)
        {
            difference = (ex * oy) - (ox * ey);
        }

        return difference > 0 || (difference == 0 && edge > other);
    }

    private static (Int128 X, Int128 Y) Upward(in Segment s) => s.Dy > 0 ? (s.Dx, s.Dy) : (-s.Dx, -s.Dy);
}

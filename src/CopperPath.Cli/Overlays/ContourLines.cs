using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// Lines of equal value through a lattice, by marching squares: a cell whose corners lie on both sides of a level is
/// crossed from edge to edge, and crossings that share an edge are chained (Lorensen and Cline's marching cubes, 1987, in
/// the plane). Corners of the chains are cut twice after Chaikin (1974).
/// </summary>
internal sealed class ContourLines
{
    private const int CornerCuts = 2;
    private const int None = -1;

    private readonly LevelField _field;
    private readonly double _level;
    private readonly ViewTransform _transform;
    /// <summary>For each crossed edge the one or two crossed edges of the cells beside it.</summary>
    private readonly Dictionary<int, (int First, int Second)> _neighbours = [];

    private ContourLines(LevelField field, double level, ViewTransform transform) =>
        (_field, _level, _transform) = (field, level, transform);

    /// <summary>The lines of one level in picture pixels; a closed line ends where it starts.</summary>
    public static IReadOnlyList<SKPoint[]> Of(LevelField field, double level, ViewTransform transform)
    {
        ContourLines lines = new(field, level, transform);
        lines.CrossCells();
        return lines.Chains();
    }

    private void CrossCells()
    {
        Span<int> crossed = stackalloc int[4];
        for (int row = 0; row + 1 < _field.Rows; row++)
        {
            for (int column = 0; column + 1 < _field.Columns; column++)
            {
                int node = (row * _field.Columns) + column;
                double a = _field.Values[node];
                double b = _field.Values[node + 1];
                double c = _field.Values[node + _field.Columns + 1];
                double d = _field.Values[node + _field.Columns];
                if (!double.IsFinite(a + b + c + d))
                {
                    continue;
                }

                // Around the cell: below, right, above, left.
                int count = 0;
                AddIfCrossed(a, b, EdgeRight(node), crossed, ref count);
                AddIfCrossed(b, c, EdgeUp(node + 1), crossed, ref count);
                AddIfCrossed(c, d, EdgeRight(node + _field.Columns), crossed, ref count);
                AddIfCrossed(d, a, EdgeUp(node), crossed, ref count);
                if (count == 2)
                {
                    Join(crossed[0], crossed[1]);
                }
                else if (count == 4)
                {
                    // A saddle: the middle tells which two corners belong together.
                    bool isLikeA = IsAbove(a) == IsAbove((a + b + c + d) / 4);
                    Join(crossed[0], crossed[isLikeA ? 1 : 3]);
                    Join(crossed[2], crossed[isLikeA ? 3 : 1]);
                }
            }
        }
    }

    private void AddIfCrossed(double from, double to, int edge, Span<int> crossed, ref int count)
    {
        if (IsAbove(from) != IsAbove(to))
        {
            crossed[count++] = edge;
        }
    }

    // A node on the level counts as above it, so that a line through nodes is drawn once and without gaps.
    private bool IsAbove(double value) => value >= _level;

    private static int EdgeRight(int node) => 2 * node;

    private static int EdgeUp(int node) => (2 * node) + 1;

    private void Join(int a, int b)
    {
        _neighbours[a] = _neighbours.TryGetValue(a, out (int First, int Second) ofA) ? (ofA.First, b) : (b, None);
        _neighbours[b] = _neighbours.TryGetValue(b, out (int First, int Second) ofB) ? (ofB.First, a) : (a, None);
    }

    private List<SKPoint[]> Chains()
    {
        List<SKPoint[]> chains = [];
        HashSet<int> done = [];

        // Open lines from their ends; what then is left is closed.
        int[] edges = [.. _neighbours.Keys.Order()];
        foreach (int start in edges.Where(edge => _neighbours[edge].Second == None).Concat(edges))
        {
            if (!done.Add(start))
            {
                continue;
            }

            List<SKPoint> chain = [Crossing(start)];
            for (int? next = Next(start); next is int edge; next = Next(edge))
            {
                done.Add(edge);
                chain.Add(Crossing(edge));
            }

            bool isClosed = _neighbours[start].Second != None;
            SKPoint[] cut = [.. chain];
            for (int i = 0; i < CornerCuts; i++)
            {
                cut = CornersCut(cut, isClosed);
            }

            chains.Add(isClosed ? [.. cut, cut[0]] : cut);
        }

        return chains;

        int? Next(int edge)
        {
            (int first, int second) = _neighbours[edge];
            return !done.Contains(first) ? first : second != None && !done.Contains(second) ? second : null;
        }
    }

    private SKPoint Crossing(int edge)
    {
        int node = edge / 2;
        int column = node % _field.Columns;
        int row = node / _field.Columns;
        bool isUp = edge % 2 == 1;
        double from = _field.Values[node] - _level;
        double to = _field.Values[node + (isUp ? _field.Columns : 1)] - _level;
        double part = from / (from - to);
        return new SKPoint(
            (float)_transform.XPx(_field.XNm(isUp ? column : column + part)),
            (float)_transform.YPx(_field.YNm(isUp ? row + part : row)));
    }

    private static SKPoint[] CornersCut(SKPoint[] line, bool isClosed)
    {
        List<SKPoint> cut = new(2 * line.Length);
        int pieces = isClosed ? line.Length : line.Length - 1;
        for (int i = 0; i < pieces; i++)
        {
            SKPoint a = line[i];
            SKPoint b = line[(i + 1) % line.Length];
            bool isFirst = i == 0 && !isClosed;
            bool isLast = i == pieces - 1 && !isClosed;
            cut.Add(isFirst ? a : Between(a, b, 0.25f));
            cut.Add(isLast ? b : Between(a, b, 0.75f));
        }

        return [.. cut];
    }

    private static SKPoint Between(SKPoint a, SKPoint b, float part) => new(a.X + ((b.X - a.X) * part), a.Y + ((b.Y - a.Y) * part));
}

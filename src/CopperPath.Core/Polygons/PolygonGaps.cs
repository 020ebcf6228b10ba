using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>Where two polygons come nearest to each other.</summary>
/// <param name="A">Index of one of them.</param>
/// <param name="B">Index of the other, larger.</param>
/// <param name="WidthNm">Distance between their borders, nanometres; 0 where they touch.</param>
/// <param name="At">A corner of one of the two at which they are so near.</param>
public readonly record struct PolygonGap(int A, int B, double WidthNm, PointNm At);

/// <summary>Polygons that nearly meet.</summary>
/// <param name="Gaps">One gap for each pair, its narrowest, ordered by the indices.</param>
/// <param name="IsComplete">
/// False when so many polygons lie near each other that the search was given up: there are more pairs, and narrower gaps,
/// than those listed.
/// </param>
public sealed record PolygonGapsFound(IReadOnlyList<PolygonGap> Gaps, bool IsComplete);

/// <summary>Finds polygons that nearly meet.</summary>
/// <remarks>
/// Where thousands of polygons all lie within the limit of each other there are millions of pairs. The work is therefore
/// counted, a unit for a comparison of a corner with an edge; a search that spends its budget ends where it is, at the
/// same corner on any machine.
/// </remarks>
public static class PolygonGaps
{
    /// <summary>Units for any search, a fraction of a second.</summary>
    private const long BaseUnits = 50_000_000;

    /// <summary>Units for each edge more; layers of real boards spend a tenth of it.</summary>
    private const long UnitsPerEdge = 400;

    /// <summary>Units for a pair that is kept.</summary>
    private const int UnitsPerPair = 100;

    /// <summary>Pairs of polygons with disjoint interiors whose borders are nearer than a limit.</summary>
    /// <param name="polygons">Polygons whose interiors do not overlap.</param>
    /// <param name="limitNm">Gaps narrower than this are found, nanometres, positive.</param>
    /// <remarks>Two edges that do not cross are nearest at an end of one of them, so corners against edges are enough.</remarks>
    public static PolygonGapsFound Below(IReadOnlyList<PolygonNm> polygons, long limitNm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(limitNm);
        Segment[] edges = EdgesOf(polygons);
        Dictionary<(int A, int B), PolygonGap> narrowest = [];
        if (edges.Length == 0)
        {
            return new PolygonGapsFound([], IsComplete: true);
        }

        TileGrid tiles = TileGrid.Over(edges, segmentsPerTile: 1);
        long mostUnits = BaseUnits + (UnitsPerEdge * edges.Length), units = 0;
        foreach (Segment edge in edges)
        {
            if (units + ((long)UnitsPerPair * narrowest.Count) > mostUnits)
            {
                return Found(isComplete: false);
            }

            // Each corner is the start of one edge, whichever way that edge is stored.
            PointNm corner = edge.Delta > 0 ? new(edge.Ax, edge.Ay) : new(edge.Bx, edge.By);
            int right = Math.Min(tiles.Columns - 1, tiles.ColumnOf(corner.X + limitNm));
            int top = Math.Min(tiles.Rows - 1, tiles.RowOf(corner.Y + limitNm));
            for (int row = Math.Max(0, tiles.RowOf(corner.Y - limitNm)); row <= top; row++)
            {
                for (int column = Math.Max(0, tiles.ColumnOf(corner.X - limitNm)); column <= right; column++)
                {
                    ReadOnlySpan<int> near = tiles.SegmentsIn((row * tiles.Columns) + column);
                    units += 1 + near.Length;
                    foreach (int other in near)
                    {
                        if (edges[other].Source != edge.Source)
                        {
                            Note(narrowest, edge.Source, corner, edges[other], limitNm);
                        }
                    }
                }
            }
        }

        return Found(isComplete: true);

        PolygonGapsFound Found(bool isComplete) => new([.. narrowest.Values.OrderBy(gap => gap.A).ThenBy(gap => gap.B)], isComplete);
    }

    private static void Note(
        Dictionary<(int A, int B), PolygonGap> narrowest, int polygon, PointNm corner, in Segment edge, long limitNm)
    {
        if (corner.X < edge.Ax - limitNm || corner.X > edge.Bx + limitNm
            || corner.Y < edge.MinY - limitNm || corner.Y > edge.MaxY + limitNm)
        {
            return;
        }

        double widthNm = DistanceNm(corner, edge);
        if (widthNm < limitNm)
        {
            PolygonGap gap = new(Math.Min(polygon, edge.Source), Math.Max(polygon, edge.Source), widthNm, corner);
            if (!narrowest.TryGetValue((gap.A, gap.B), out PolygonGap known) || IsBefore(gap, known))
            {
                narrowest[(gap.A, gap.B)] = gap;
            }
        }
    }

    /// <summary>Narrower first; of gaps as narrow, the one whose corner comes first, so that one is chosen whatever the order.</summary>
    private static bool IsBefore(PolygonGap gap, PolygonGap known) =>
        (gap.WidthNm, gap.At.X, gap.At.Y).CompareTo((known.WidthNm, known.At.X, known.At.Y)) < 0;

    private static double DistanceNm(PointNm p, in Segment edge)
    {
        double dx = edge.Dx, dy = edge.Dy, px = p.X - edge.Ax, py = p.Y - edge.Ay;
        double along = (px * dx) + (py * dy), squaredLength = (dx * dx) + (dy * dy);
        return along <= 0 ? Math.Sqrt((px * px) + (py * py))
            : along >= squaredLength ? p.DistanceNmTo(new PointNm(edge.Bx, edge.By))
            : Math.Abs((dx * py) - (dy * px)) / Math.Sqrt(squaredLength);
    }

    private static Segment[] EdgesOf(IReadOnlyList<PolygonNm> polygons)
    {
        List<Segment> edges = [];
        for (int p = 0; p < polygons.Count; p++)
        {
            foreach (PointNm[] ring in polygons[p].Rings)
            {
                for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
                {
                    edges.Add(Segment.Between(ring[j], ring[i], p));
                }
            }
        }

        return [.. edges];
    }
}

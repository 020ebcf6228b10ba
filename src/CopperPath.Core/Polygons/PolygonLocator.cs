using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>Finds the polygon a point lies in, among polygons whose interiors do not overlap.</summary>
public sealed class PolygonLocator
{
    private readonly Segment[] _edges;
    private readonly EdgeGrid _grid;

    /// <summary>Prepares queries; outer rings must run counter-clockwise and holes clockwise.</summary>
    public PolygonLocator(IReadOnlyList<PolygonNm> polygons)
    {
        // Where edges of two neighbours coincide, the one with its polygon to the right must come last to be seen.
        List<Segment> polygonOnLeft = [], polygonOnRight = [];
        for (int p = 0; p < polygons.Count; p++)
        {
            foreach (PointNm[] ring in polygons[p].Rings)
            {
                for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
                {
                    bool runsDown = ring[i].Y < ring[j].Y;
                    (runsDown ? polygonOnRight : polygonOnLeft).Add(Segment.Between(ring[j], ring[i], p));
                }
            }
        }

        _edges = [.. polygonOnLeft, .. polygonOnRight];
        _grid = new EdgeGrid(_edges);
    }

    /// <summary>
    /// Index of the polygon that holds the point, its edges included, or -1. Where polygons touch, the point is said
    /// to be in one of them.
    /// </summary>
    public int Find(PointNm p)
    {
        int touched = _grid.EdgeAt(p.X, p.Y);
        if (touched >= 0)
        {
            return _edges[touched].Source;
        }

        int seen = _grid.FirstToTheLeft(p.X, p.Y);
        return seen >= 0 && RunsDown(_edges[seen]) ? _edges[seen].Source : -1;
    }

    private static bool RunsDown(in Segment edge) => edge.Dy * edge.Delta < 0;
}

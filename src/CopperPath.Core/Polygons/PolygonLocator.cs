using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>Finds the polygon a point lies in, among polygons whose interiors do not overlap.</summary>
public sealed class PolygonLocator
{
    private readonly EdgeGrid _grid;

    /// <summary>Prepares queries; outer rings must run counter-clockwise and holes clockwise.</summary>
    public PolygonLocator(IReadOnlyList<PolygonNm> polygons)
    {
        // Where edges of two neighbours coincide, the one with its polygon to the right must come last to be seen.
        List<UpwardEdge> polygonOnLeft = [], polygonOnRight = [];
        for (int p = 0; p < polygons.Count; p++)
        {
            foreach (PointNm[] ring in polygons[p].Rings)
            {
                for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
                {
                    bool runsDown = ring[i].Y < ring[j].Y;
                    (runsDown ? polygonOnRight : polygonOnLeft).Add(
                        UpwardEdge.Between(ring[j].X, ring[j].Y, ring[i].X, ring[i].Y, runsDown ? p : ~p));
                }
            }
        }

        _grid = new EdgeGrid([.. polygonOnLeft, .. polygonOnRight]);
    }

    /// <summary>
    /// Index of the polygon that holds the point, its edges included, or -1. Where polygons touch, the point is said
    /// to be in one of them.
    /// </summary>
    public int Find(PointNm p)
    {
        if (_grid.TryFindTagAt(p.X, p.Y, out int tag))
        {
            return tag >= 0 ? tag : ~tag;
        }

        int edge = _grid.FirstToTheLeft(p.X, p.Y);
        return edge < 0 ? -1 : Math.Max(-1, _grid.TagOf(edge));
    }
}

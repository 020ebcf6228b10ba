using CopperPath.Geometry;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>Polygons as drawable paths in picture pixels.</summary>
internal static class CopperPaths
{
    /// <summary>Corners nearer to the one before are left out, pixels: outlines of arcs have many, and nobody sees them.</summary>
    private const float LeastStepPx = 0.25f;

    /// <summary>
    /// One path of many polygons. Holes run against their outer rings, so non-zero winding leaves them open even where
    /// polygons of different nets touch or overlap.
    /// </summary>
    public static SKPath Of(IReadOnlyList<PolygonNm> polygons, ViewTransform transform)
    {
        using SKPathBuilder builder = new() { FillType = SKPathFillType.Winding };
        foreach (PolygonNm polygon in polygons)
        {
            foreach (PointNm[] ring in polygon.Rings)
            {
                builder.AddPoly(Corners(ring, transform), close: true);
            }
        }

        return builder.Detach();
    }

    private static SKPoint[] Corners(PointNm[] ring, ViewTransform transform)
    {
        List<SKPoint> corners = new(ring.Length);
        foreach (PointNm point in ring)
        {
            SKPoint corner = transform.Map(point);
            if (corners.Count == 0 || SKPoint.DistanceSquared(corners[^1], corner) > LeastStepPx * LeastStepPx)
            {
                corners.Add(corner);
            }
        }

        return [.. corners];
    }
}

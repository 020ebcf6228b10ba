using CopperPath.Geometry;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>Polygons as drawable paths in picture pixels.</summary>
internal static class CopperPaths
{
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
                builder.AddPoly(Array.ConvertAll(ring, transform.Map), close: true);
            }
        }

        return builder.Detach();
    }
}

using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Artwork;

/// <summary>Takes exposure-off parts away from the parts before them, on the nanometre grid.</summary>
internal static class MacroExposure
{
    /// <summary>Rings of the composed shape: outer ones counter-clockwise, holes clockwise.</summary>
    public static PointNm[][] Compose(IEnumerable<(bool Adds, PointNm[][] Rings)> parts) =>
        [.. PolygonOperations.Paint([.. parts.Select(part => new PaintStep(part.Adds, part.Rings, default))])
            .SelectMany(polygon => polygon.Rings)];
}

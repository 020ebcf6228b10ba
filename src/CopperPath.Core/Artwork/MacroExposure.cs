using CopperPath.Geometry;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Artwork;

/// <summary>
/// Takes exposure-off parts away from the parts before them, on the nanometre grid. The only place in artwork
/// that needs a polygon boolean.
/// </summary>
internal static class MacroExposure
{
    private static readonly PrecisionModel Grid = new(1);

    /// <summary>Rings of the composed shape, or null when the parts can not be composed.</summary>
    public static PointNm[][]? Compose(IEnumerable<(bool Adds, PointNm[][] Rings)> parts)
    {
        var factory = new GeometryFactory(Grid);
        NtsGeometry shape = factory.CreatePolygon();
        try
        {
            foreach ((bool adds, PointNm[][] rings) in parts)
            {
                SpatialFunction operation = adds ? SpatialFunction.Union : SpatialFunction.Difference;
                shape = OverlayNG.Overlay(shape, AreaOf(rings, factory), operation, Grid);
            }
        }
        catch (TopologyException)
        {
            return null;
        }

        return [.. RingsOf(shape)];
    }

    private static NtsGeometry AreaOf(PointNm[][] rings, GeometryFactory factory)
    {
        NtsGeometry solids = factory.CreatePolygon();
        NtsGeometry holes = factory.CreatePolygon();
        foreach (PointNm[] ring in rings)
        {
            NtsGeometry inside = factory.CreatePolygon([.. ring.Append(ring[0]).Select(p => new Coordinate(p.X, p.Y))]);
            if (!inside.IsValid)
            {
                // A cut-in (an outline that comes back along itself): a zero-width buffer dissolves it.
                inside = inside.Buffer(0);
            }

            if (Ring.SignedAreaNm2(ring) > 0)
            {
                solids = OverlayNG.Overlay(solids, inside, SpatialFunction.Union, Grid);
            }
            else
            {
                holes = OverlayNG.Overlay(holes, inside, SpatialFunction.Union, Grid);
            }
        }

        return OverlayNG.Overlay(solids, holes, SpatialFunction.Difference, Grid);
    }

    private static IEnumerable<PointNm[]> RingsOf(NtsGeometry shape)
    {
        for (int i = 0; i < shape.NumGeometries; i++)
        {
            if (shape.GetGeometryN(i) is not Polygon { IsEmpty: false } polygon)
            {
                continue;
            }

            yield return RingOrder.CounterClockwise(PointsOf(polygon.ExteriorRing));
            foreach (LineString hole in polygon.InteriorRings)
            {
                yield return RingOrder.Clockwise(PointsOf(hole));
            }
        }
    }

    private static PointNm[] PointsOf(LineString ring) =>
        [.. ring.Coordinates.SkipLast(1).Select(c => new Vector(c.X, c.Y).Rounded())];
}

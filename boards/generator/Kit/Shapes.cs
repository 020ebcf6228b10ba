using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using NetTopologySuite.Operation.Union;

namespace CopperPath.DemoBoards.Kit;

/// <summary>Plane figures of board drawing, in millimetres.</summary>
public static class Shapes
{
    public static readonly GeometryFactory Factory = new();

    private static readonly BufferParameters _round = new(6, EndCapStyle.Round, JoinStyle.Round, 5);

    public static Geometry Box(double x1, double y1, double x2, double y2, double cornerMm = 0)
    {
        var box = Factory.ToGeometry(new Envelope(x1 + cornerMm, x2 - cornerMm, y1 + cornerMm, y2 - cornerMm));
        return cornerMm > 0 ? Grown(box, cornerMm) : box;
    }

    /// <summary>A closed polygon through the given corners, rounded.</summary>
    public static Geometry Polygon(double cornerMm, params PointMm[] corners)
    {
        var ring = corners.Append(corners[0]).Select(corner => new Coordinate(corner.X, corner.Y)).ToArray();
        return Rounded(Factory.CreatePolygon(ring), cornerMm);
    }

    /// <summary>The figure with its corners rounded, the outward ones and the inward ones alike.</summary>
    public static Geometry Rounded(Geometry shape, double cornerMm) =>
        cornerMm > 0 ? Grown(Grown(Grown(shape, -cornerMm), 2 * cornerMm), -cornerMm) : shape;

    public static Geometry Disc(PointMm at, double diameterMm) =>
        Factory.CreatePoint(new Coordinate(at.X, at.Y)).Buffer(diameterMm / 2, _round);

    public static Geometry Outline(PadShape shape, PointMm at) => shape.IsDisc
        ? Disc(at, shape.WidthMm)
        : Box(
            at.X - shape.WidthMm / 2,
            at.Y - shape.HeightMm / 2,
            at.X + shape.WidthMm / 2,
            at.Y + shape.HeightMm / 2,
            Math.Min(shape.CornerMm, Math.Min(shape.WidthMm, shape.HeightMm) / 2 - 1e-4));

    public static Geometry Stroke(IReadOnlyList<PointMm> path, double widthMm) =>
        Factory.CreateLineString([.. path.Select(point => new Coordinate(point.X, point.Y))]).Buffer(widthMm / 2, _round);

    public static Geometry Grown(Geometry shape, double marginMm) => shape.Buffer(marginMm, _round);

    /// <summary>The figure without any part narrower than a width; outward corners come out rounded.</summary>
    public static Geometry WithoutSlivers(Geometry shape, double widthMm) =>
        Grown(Grown(shape, -widthMm / 2), widthMm / 2);

    public static Geometry Union(IEnumerable<Geometry> shapes) =>
        CascadedPolygonUnion.Union([.. shapes]) ?? Factory.CreatePolygon();

    public static IEnumerable<Polygon> PolygonsOf(Geometry shape) => shape switch
    {
        Polygon polygon => polygon.IsEmpty ? [] : [polygon],
        GeometryCollection many => many.Geometries.SelectMany(PolygonsOf),
        _ => [],
    };
}

using CopperPath.Artwork;
using CopperPath.Geometry;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Polygonize;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;
using SpatialFunction = NetTopologySuite.Operation.Overlay.SpatialFunction;

namespace CopperPath.Benchmarks;

/// <summary>
/// Layers painted by NetTopologySuite alone, with snap rounding on the grid of one nanometre that the engine uses too.
/// Nothing of the engine takes part.
/// </summary>
internal static class PaintingOracle
{
    private static readonly GeometryFactory s_factory = new();
    private static readonly PrecisionModel s_nanometres = new(1);

    /// <summary>One polygon for each object, or several where its outline crosses itself.</summary>
    public static NtsGeometry[] ShapesOf(IEnumerable<PaintedObject> objects) => [.. objects.SelectMany(ShapesOf)];

    /// <summary>Union of shapes of one polarity.</summary>
    public static NtsGeometry Union(IEnumerable<NtsGeometry> shapes) => UnaryUnionNG.Union(shapes, s_nanometres);

    /// <summary>
    /// The picture that the objects leave: runs of one polarity united, then added to or taken from what was there.
    /// </summary>
    public static NtsGeometry Paint(IReadOnlyList<PaintedObject> objects)
    {
        NtsGeometry picture = s_factory.CreateEmpty(Dimension.Surface);
        foreach (List<PaintedObject> run in RealLayer.RunsOf(objects))
        {
            NtsGeometry union = AreaOf(Union(ShapesOf(run)));
            bool isDark = run[0].Polarity == Polarity.Dark;
            picture = picture.IsEmpty ? isDark ? union : picture
                : AreaOf(OverlayNG.Overlay(picture, union, isDark ? SpatialFunction.Union : SpatialFunction.Difference, s_nanometres));
        }

        return picture;
    }

    /// <summary>How many objects are drawn with outlines that the library does not take as they are.</summary>
    public static int CountNotSimple(IEnumerable<PaintedObject> objects) => objects.Count(painted => AsDrawn(painted) is null);

    private static IEnumerable<NtsGeometry> ShapesOf(PaintedObject painted) =>
        AsDrawn(painted) is { } polygon ? [polygon] : Wound(painted);

    /// <summary>The outline as one valid polygon, the first ring outside and the rest its holes; else null.</summary>
    private static Polygon? AsDrawn(PaintedObject painted)
    {
        if (painted.Rings.Any(ring => ring.Length < 3))
        {
            return null;
        }

        LinearRing[] rings = [.. painted.Rings.Select(ring => RingOf(ring, painted.Offset))];
        Polygon polygon = s_factory.CreatePolygon(rings[0], rings[1..]);
        bool windsOnce = painted.Rings.Skip(1).All(hole => Math.Sign(Ring.SignedAreaNm2(hole)) == -Math.Sign(Ring.SignedAreaNm2(painted.Rings[0])));
        return windsOnce && polygon.IsValid ? polygon : null;
    }

    /// <summary>
    /// Faces that the rings cut from the plane and wind around, by the definition: noded, polygonized, and the winding
    /// number counted at a point inside each.
    /// </summary>
    private static IEnumerable<NtsGeometry> Wound(PaintedObject painted)
    {
        LinearRing[] rings = [.. painted.Rings.Where(ring => ring.Length > 2).Select(ring => RingOf(ring, painted.Offset))];
        NtsGeometry lines = UnaryUnionNG.Union(
            rings.Select(ring => (NtsGeometry)s_factory.CreateLineString(ring.Coordinates)), s_factory, s_nanometres);
        Polygonizer polygonizer = new();
        polygonizer.Add(lines);
        foreach (NtsGeometry face in polygonizer.GetPolygons())
        {
            Coordinate inside = face.InteriorPoint.Coordinate;
            if (rings.Sum(ring => WindingNumber(ring.Coordinates, inside)) != 0)
            {
                yield return face;
            }
        }
    }

    /// <summary>Crossings of a ray to the right, upward ones less downward ones.</summary>
    private static int WindingNumber(Coordinate[] closed, Coordinate p)
    {
        int winding = 0;
        for (int i = 1; i < closed.Length; i++)
        {
            Coordinate a = closed[i - 1], b = closed[i];
            if (a.Y <= p.Y != b.Y <= p.Y)
            {
                double side = ((b.X - a.X) * (p.Y - a.Y)) - ((b.Y - a.Y) * (p.X - a.X));
                winding += a.Y <= p.Y ? side > 0 ? 1 : 0 : side < 0 ? -1 : 0;
            }
        }

        return winding;
    }

    private static LinearRing RingOf(PointNm[] ring, PointNm offset) =>
        s_factory.CreateLinearRing([.. ring.Append(ring[0]).Select(p => new Coordinate(p.X + offset.X, p.Y + offset.Y))]);

    /// <summary>Overlays may leave points and lines where areas merely touch; only areas count here.</summary>
    private static NtsGeometry AreaOf(NtsGeometry overlay) => s_factory.BuildGeometry(PolygonExtracter.GetPolygons(overlay));
}

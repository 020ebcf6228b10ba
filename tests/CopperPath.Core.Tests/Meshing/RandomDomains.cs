using CopperPath.Geometry;
using CopperPath.Meshing;
using NetTopologySuite.Geometries;
using Shape = NetTopologySuite.Geometries.Geometry;
using static CopperPath.Core.Tests.Meshing.Shapes;

namespace CopperPath.Core.Tests.Meshing;

/// <summary>Seeded sheets like those of real artwork, and worse, with NetTopologySuite as the oracle of their areas.</summary>
internal static class RandomDomains
{
    private static readonly GeometryFactory Factory = new();

    public static (SheetDomain Domain, Shape Copper) Of(int seed)
    {
        Random random = new(seed);
        Shape copper = Factory.CreatePolygon();
        int strokes = random.Next(1, 12);
        for (int i = 0; i < strokes; i++)
        {
            copper = copper.Union(ToGeometry(Stroke(random)));
        }

        int cuts = random.Next(0, 12);
        for (int i = 0; i < cuts; i++)
        {
            copper = copper.Difference(ToGeometry(Stroke(random)));
        }

        List<MarkedRing> rings = [];
        int marks = random.Next(0, 5);
        for (int i = 0; i < marks; i++)
        {
            rings.Add(new MarkedRing(Stroke(random), random.Next(1, 4)));
        }

        return (new SheetDomain(ToPolygons(copper), rings), copper);
    }

    public static Shape ToGeometry(PointNm[] ring) => Factory.CreatePolygon(
        [.. ring.Append(ring[0]).Select(p => new Coordinate(p.X, p.Y))]);

    /// <summary>The part of the copper that should carry the marker: inside its rings, outside those of lower ones.</summary>
    public static double AreaOfMarkerM2(SheetDomain domain, Shape copper, int marker)
    {
        Shape inside = Factory.CreatePolygon(), lower = Factory.CreatePolygon();
        foreach (MarkedRing ring in domain.MarkedRings)
        {
            if (ring.Marker == marker)
            {
                inside = inside.Union(ToGeometry(ring.Ring));
            }
            else if (ring.Marker < marker)
            {
                lower = lower.Union(ToGeometry(ring.Ring));
            }
        }

        return inside.Difference(lower).Intersection(copper).Area * 1e-18;
    }

    private static PointNm[] Stroke(Random random)
    {
        long x = random.Next(0, 10_000_000), y = random.Next(0, 10_000_000);
        switch (random.Next(4))
        {
            case 0:
                return Circle(x, y, random.Next(50_000, 2_000_000));
            case 1:
                // A coarse grid makes edges meet, touch and coincide.
                x = x / 500_000 * 500_000;
                y = y / 500_000 * 500_000;
                return Rectangle(x, y, x + (500_000 * random.Next(1, 8)), y + (500_000 * random.Next(1, 8)));
            case 2:
                return Track(x, y, random.Next(0, 10_000_000), random.Next(0, 10_000_000), random.Next(50_000, 400_000));
            default:
                // Nearly on the grid: gaps and overlaps of a nanometre or two.
                x = (x / 500_000 * 500_000) + random.Next(-2, 3);
                y = (y / 500_000 * 500_000) + random.Next(-2, 3);
                return Rectangle(x, y, x + (500_000 * random.Next(1, 8)) + random.Next(-2, 3), y + 1_500_000);
        }
    }

    private static PointNm[] Track(long ax, long ay, long bx, long by, long width)
    {
        double dx = bx - ax, dy = by - ay, length = Math.Max(1, Math.Sqrt((dx * dx) + (dy * dy)));
        long nx = (long)(-dy / length * width / 2), ny = (long)(dx / length * width / 2);
        PointNm[] ring = [new(ax - nx, ay - ny), new(bx - nx, by - ny), new(bx + nx, by + ny), new(ax + nx, ay + ny)];
        return Ring.SignedAreaNm2(ring) > 0 ? ring : Clockwise(ring);
    }

    private static List<PolygonNm> ToPolygons(Shape geometry)
    {
        List<PolygonNm> polygons = [];
        for (int i = 0; i < geometry.NumGeometries; i++)
        {
            if (geometry.GetGeometryN(i) is Polygon { IsEmpty: false } polygon)
            {
                polygons.Add(new PolygonNm(
                    ToRing(polygon.ExteriorRing, true), [.. polygon.InteriorRings.Select(r => ToRing(r, false))]));
            }
        }

        return polygons;
    }

    private static PointNm[] ToRing(LineString line, bool counterClockwise)
    {
        PointNm[] ring = [.. line.Coordinates.Skip(1).Select(c => new PointNm((long)Math.Round(c.X), (long)Math.Round(c.Y)))];
        return Ring.SignedAreaNm2(ring) > 0 == counterClockwise ? ring : Clockwise(ring);
    }
}

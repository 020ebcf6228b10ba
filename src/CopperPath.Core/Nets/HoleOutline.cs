using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Nets;

/// <summary>The wall of a drilled feature as a ring: the tool's path widened by its radius and an allowance.</summary>
public static class HoleOutline
{
    /// <summary>Segments of a full turn. 24 on a 0.3 mm hole leaves chords of 39 um and, area being kept, no bias.</summary>
    private const int SegmentsPerTurn = 24;

    /// <summary>
    /// Coarser walls for meshing: a small hole need not force a fine mesh, since a ring of equal area around it
    /// changes the resistance of the sheet by the third decimal of a square.
    /// </summary>
    private const int SegmentsPerTurnInMesh = 12;

    /// <param name="feature">Hole, slot or routed cut.</param>
    /// <param name="growthNm">Added to the tool radius (plating on a finished hole, a probe distance); may be zero.</param>
    /// <returns>Counter-clockwise ring in nanometres.</returns>
    public static PointNm[] Of(DrilledFeature feature, double growthNm) => Of(feature, growthNm, SegmentsPerTurn);

    /// <summary>The same with as many segments as a mesh needs: fewer around holes below 1 mm.</summary>
    public static PointNm[] ForMeshing(DrilledFeature feature, double growthNm) => Of(feature, growthNm,
        feature.ToolDiameterNm < Quantities.Units.NmPerMm ? SegmentsPerTurnInMesh : SegmentsPerTurn);

    private static PointNm[] Of(DrilledFeature feature, double growthNm, int segments)
    {
        double radius = (feature.ToolDiameterNm / 2.0) + growthNm;
        if (feature.Path.Length == 1)
        {
            return Circle(feature.Path[0], radius, segments);
        }

        List<PointNm[]> strokes = [];
        for (int i = 1; i < feature.Path.Length; i++)
        {
            strokes.Add(Stadium(feature.Path[i - 1], feature.Path[i], radius, segments));
        }

        return strokes.Count == 1 ? strokes[0] : PolygonOperations.Union(strokes)[0].Outer;
    }

    /// <summary>A regular polygon with the area of the circle, first vertex on the positive x axis.</summary>
    public static PointNm[] Circle(PointNm centre, double radiusNm, int segments = SegmentsPerTurn)
    {
        double step = 2 * Math.PI / segments;
        double equalAreaRadiusNm = radiusNm * Math.Sqrt(step / Math.Sin(step));
        PointNm[] ring = new PointNm[segments];
        for (int i = 0; i < segments; i++)
        {
            ring[i] = At(centre, equalAreaRadiusNm, step * i);
        }

        return ring;
    }

    private static PointNm[] Stadium(PointNm a, PointNm b, double radiusNm, int segments)
    {
        double heading = Math.Atan2(b.Y - a.Y, b.X - a.X);
        int half = segments / 2;
        double bulge = CapBulge(half);
        PointNm[] ring = new PointNm[2 * (half + 1)];
        for (int i = 0; i <= half; i++)
        {
            double turn = (Math.PI * i / half) - (Math.PI / 2);
            double reachNm = radiusNm * (i == 0 || i == half ? 1 : bulge);
            ring[i] = At(b, reachNm, heading + turn);
            ring[half + 1 + i] = At(a, reachNm, heading + turn + Math.PI);
        }

        return ring;
    }

    /// <summary>
    /// How far the inner corners of a half-round cap stand out, so that its area is a half disc while its two ends stay
    /// on the straight sides: (n - 2) f^2 + 2 f = pi / sin(pi / n), from the n triangles of the cap.
    /// </summary>
    private static double CapBulge(int half)
    {
        double product = Math.PI / Math.Sin(Math.PI / half);
        return (Math.Sqrt(1 + ((half - 2) * product)) - 1) / (half - 2);
    }

    private static PointNm At(PointNm centre, double radiusNm, double angle) => new(
        centre.X + (long)Math.Round(radiusNm * Math.Cos(angle)),
        centre.Y + (long)Math.Round(radiusNm * Math.Sin(angle)));
}

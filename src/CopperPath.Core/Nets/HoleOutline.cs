using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Nets;

/// <summary>The wall of a drilled feature as a ring: the tool's path widened by its radius and an allowance.</summary>
public static class HoleOutline
{
    /// <summary>Segments of a full turn. 24 on a 0.3 mm hole leaves chords of 39 um and, area being kept, no bias.</summary>
    private const int SegmentsPerTurn = 24;

    /// <summary>Segments of a full turn of a small hole's wall in a mesh.</summary>
    private const int SegmentsPerTurnInMesh = 8;

    /// <summary>
    /// Radius to a corner of the octagon that conducts like a circle of radius 1: the one of equal logarithmic capacity,
    /// 1 / (2 sin(pi/8) c). A regular n-gon of side 1 has the capacity
    /// c = gamma(1/n) / (2^(1+2/n) pi^(1/2) gamma(1/2 + 1/n)), for n = 8 1.24580 (G. Polya and G. Szego, Isoperimetric
    /// Inequalities in Mathematical Physics, 1951; quoted from memory, and it gives the square's known 0.59017).
    /// </summary>
    private const double OctagonOfEqualCapacity = 1.04878;

    /// <param name="feature">Hole, slot or routed cut.</param>
    /// <param name="growthNm">Added to the tool radius (plating on a finished hole, a probe distance); may be zero.</param>
    /// <returns>Counter-clockwise ring in nanometres.</returns>
    public static PointNm[] Of(DrilledFeature feature, double growthNm) => Of(feature, growthNm, SegmentsPerTurn);

    /// <summary>
    /// The wall for a mesh, in which it is one potential: a round hole below 1 mm, which need not force a fine mesh, is an
    /// octagon of the same resistance to all that lies farther away than a few radii; all else is as it is.
    /// </summary>
    public static PointNm[] ForMeshing(DrilledFeature feature, double growthNm) =>
        feature.ToolDiameterNm >= Quantities.Units.NmPerMm ? Of(feature, growthNm)
        : feature.Path.Length == 1
            ? Regular(feature.Path[0], OctagonOfEqualCapacity * RadiusNm(feature, growthNm), SegmentsPerTurnInMesh)
            : Of(feature, growthNm, SegmentsPerTurnInMesh);

    private static PointNm[] Of(DrilledFeature feature, double growthNm, int segments)
    {
        double radius = RadiusNm(feature, growthNm);
        if (feature.Path.Length == 1)
        {
            return Circle(feature.Path[0], radius, segments);
        }

        List<PointNm[]> strokes = [];
        for (int i = 1; i < feature.Path.Length; i++)
        {
            strokes.Add(Stadium(feature.Path[i - 1], feature.Path[i], radius, segments));
        }

        return strokes.Count == 1 ? strokes[0]
            : PolygonOperations.Paint([.. strokes.Select(stroke => new PaintStep(true, [stroke], default))])[0].Outer;
    }

    /// <summary>A regular polygon with the area of the circle, first vertex on the positive x axis.</summary>
    public static PointNm[] Circle(PointNm centre, double radiusNm, int segments = SegmentsPerTurn)
    {
        double step = 2 * Math.PI / segments;
        return Regular(centre, radiusNm * Math.Sqrt(step / Math.Sin(step)), segments);
    }

    private static double RadiusNm(DrilledFeature feature, double growthNm) => (feature.ToolDiameterNm / 2.0) + growthNm;

    private static PointNm[] Regular(PointNm centre, double cornerRadiusNm, int segments)
    {
        PointNm[] ring = new PointNm[segments];
        for (int i = 0; i < segments; i++)
        {
            ring[i] = At(centre, cornerRadiusNm, 2 * Math.PI / segments * i);
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

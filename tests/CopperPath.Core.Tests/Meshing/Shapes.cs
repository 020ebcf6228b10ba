using CopperPath.Geometry;
using CopperPath.Meshing;

namespace CopperPath.Core.Tests.Meshing;

/// <summary>Rings and domains the meshing tests are made of; all lengths in nanometres.</summary>
internal static class Shapes
{
    public const long Mm = 1_000_000;

    public static PointNm[] Rectangle(long minX, long minY, long maxX, long maxY) =>
        [new(minX, minY), new(maxX, minY), new(maxX, maxY), new(minX, maxY)];

    /// <summary>A circle as a regular polygon whose chords stay within half a micrometre of it.</summary>
    public static PointNm[] Circle(long x, long y, long radius)
    {
        int count = Math.Max(8, (int)Math.Ceiling(Math.PI / Math.Acos(1 - (500.0 / radius))));
        PointNm[] ring = new PointNm[count];
        for (int i = 0; i < count; i++)
        {
            double angle = 2 * Math.PI * i / count;
            ring[i] = new PointNm(
                x + (long)Math.Round(radius * Math.Cos(angle)), y + (long)Math.Round(radius * Math.Sin(angle)));
        }

        return ring;
    }

    public static PointNm[] Clockwise(PointNm[] ring) => [.. ring.Reverse()];

    public static SheetDomain Domain(PointNm[] outer, params PointNm[][] holes) =>
        new([new PolygonNm(outer, [.. holes.Select(Clockwise)])], []);

    public static SheetDomain WithRings(this SheetDomain domain, params MarkedRing[] rings) =>
        domain with { MarkedRings = rings };

    /// <summary>Quality that keeps every vertex where it is given, to the nanometre.</summary>
    public static MeshQuality AsDrawn(double maximumEdgeM) =>
        new(maximumEdgeM) { SimplificationToleranceM = 0, WeldingGridM = 1e-9 };
}

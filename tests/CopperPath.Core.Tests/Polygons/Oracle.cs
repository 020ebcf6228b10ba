using CopperPath.Geometry;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Valid;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;
using SpatialFunction = NetTopologySuite.Operation.Overlay.SpatialFunction;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>NetTopologySuite as the independent judge of polygon results.</summary>
internal static class Oracle
{
    private static readonly GeometryFactory Factory = new();

    public static NtsGeometry ToNts(IReadOnlyList<PolygonNm> polygons) =>
        Factory.CreateMultiPolygon([.. polygons.Select(ToNts)]);

    /// <summary>Union of rings each of which is simple.</summary>
    public static NtsGeometry UnionOfSimple(IEnumerable<PointNm[]> rings)
    {
        NtsGeometry[] parts = [.. rings.Select(r => (NtsGeometry)Factory.CreatePolygon(ToNts(r)))];
        return parts.Length == 0 ? Factory.CreateEmpty(Dimension.Surface)
            : AreaOf(OverlayNGRobust.Union(parts));
    }

    public static bool IsSimple(PointNm[] ring) => Factory.CreatePolygon(ToNts(ring)).IsValid;

    /// <summary>The rings, those that cross themselves after rounding replaced by the outlines of what they cover.</summary>
    public static IEnumerable<PointNm[]> Simple(IEnumerable<PointNm[]> rings) => rings.SelectMany(ring =>
        IsSimple(ring) ? [ring] : CopperPath.Polygons.PolygonOperations.Union([ring]).Select(polygon => polygon.Outer));

    public static NtsGeometry Overlay(NtsGeometry a, NtsGeometry b, SpatialFunction operation) =>
        AreaOf(OverlayNGRobust.Overlay(a, b, operation));

    /// <summary>
    /// Checks every polygon's validity, pairwise disjoint interiors (valid multipolygon), ring directions, and that
    /// the area between result and expectation is what moving all borders by a nanometre could explain.
    /// </summary>
    public static void ShouldAgree(IReadOnlyList<PolygonNm> actual, NtsGeometry expected, string because)
    {
        ShouldBeValid(actual, because);
        NtsGeometry ours = ToNts(actual);
        double allowed = (1e-6 * expected.Area) + (1.5 * (expected.Length + ours.Length)) + 10;
        Math.Abs(ours.Area - expected.Area).ShouldBeLessThanOrEqualTo(allowed, because);
        OverlayNGRobust.Overlay(ours, expected, SpatialFunction.SymDifference)
            .Area.ShouldBeLessThanOrEqualTo(allowed, because);
    }

    public static void ShouldBeValid(IReadOnlyList<PolygonNm> polygons, string because)
    {
        foreach (PolygonNm polygon in polygons)
        {
            Ring.SignedAreaNm2(polygon.Outer).ShouldBeGreaterThan(0, because);
            polygon.Holes.All(hole => Ring.SignedAreaNm2(hole) < 0).ShouldBeTrue(because);
            var each = new IsValidOp(ToNts(polygon));
            each.IsValid.ShouldBeTrue($"{because}: {each.ValidationError}");
        }

        var all = new IsValidOp(ToNts(polygons));
        all.IsValid.ShouldBeTrue($"{because}: {all.ValidationError}");
    }

    /// <summary>Overlays may leave points and lines where areas merely touch; only areas count here.</summary>
    private static NtsGeometry AreaOf(NtsGeometry overlay) =>
        Factory.BuildGeometry(NetTopologySuite.Geometries.Utilities.PolygonExtracter.GetPolygons(overlay));

    private static Polygon ToNts(PolygonNm polygon) =>
        Factory.CreatePolygon(ToNts(polygon.Outer), [.. polygon.Holes.Select(ToNts)]);

    private static LinearRing ToNts(PointNm[] ring) =>
        Factory.CreateLinearRing([.. ring.Append(ring[0]).Select(p => new Coordinate(p.X, p.Y))]);
}

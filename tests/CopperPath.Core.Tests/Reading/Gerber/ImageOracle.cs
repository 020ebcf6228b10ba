using CopperPath.Artwork;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Polygonize;
using NetTopologySuite.Operation.Union;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>
/// Composes painted objects with NetTopologySuite, independent of this project's own polygon engine: dark objects
/// are united, clear ones subtracted, in painting order.
/// </summary>
internal static class ImageOracle
{
    private static readonly GeometryFactory Factory = new(new PrecisionModel(1));

    public static NtsGeometry Compose(LayerArtwork artwork)
    {
        NtsGeometry image = Factory.CreatePolygon();
        foreach (PaintedObject painted in artwork.Objects)
        {
            SpatialFunction operation =
                painted.Polarity == Polarity.Dark ? SpatialFunction.Union : SpatialFunction.Difference;
            image = OverlayNG.Overlay(image, AreaOf(painted), operation, Factory.PrecisionModel);
        }

        return image;
    }

    /// <summary>
    /// One object by the non-zero winding rule: the faces between all its rings, kept where the rings wind round
    /// a point inside the face.
    /// </summary>
    public static NtsGeometry AreaOf(PaintedObject painted)
    {
        LinearRing[] rings = [.. painted.Rings.Select(ring => Factory.CreateLinearRing(
            [.. ring.Append(ring[0]).Select(p => new Coordinate(p.X + painted.Offset.X, p.Y + painted.Offset.Y))]))];
        if (rings.Length == 1 && Factory.CreatePolygon(rings[0]) is { IsValid: true } simple)
        {
            return simple;
        }

        var faces = new Polygonizer();
        faces.Add(UnaryUnionOp.Union(rings, Factory));
        NtsGeometry[] kept =
        [
            .. faces.GetPolygons().Where(face => rings.Sum(ring => Winding(ring, face.InteriorPoint.Coordinate)) != 0),
        ];
        return kept.Length == 0 ? Factory.CreatePolygon() : UnaryUnionOp.Union(kept, Factory);
    }

    /// <summary>Turns of a ring round a point, counted on the crossings of a ray to the right.</summary>
    private static int Winding(LinearRing ring, Coordinate point)
    {
        int turns = 0;
        Coordinate[] corners = ring.Coordinates;
        for (int i = 1; i < corners.Length; i++)
        {
            Coordinate a = corners[i - 1];
            Coordinate b = corners[i];
            if (a.Y <= point.Y != b.Y <= point.Y)
            {
                double crossing = a.X + ((point.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X));
                turns += crossing > point.X ? (b.Y > a.Y ? 1 : -1) : 0;
            }
        }

        return turns;
    }
}

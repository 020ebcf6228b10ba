using CopperPath.Artwork;
using CopperPath.Geometry;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
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

    /// <summary>One object: its counter-clockwise rings united, less its clockwise rings.</summary>
    public static NtsGeometry AreaOf(PaintedObject painted)
    {
        NtsGeometry area = Factory.CreatePolygon();
        foreach (bool solid in new[] { true, false })
        {
            foreach (PointNm[] ring in painted.Rings.Where(r => Ring.SignedAreaNm2(r) > 0 == solid))
            {
                NtsGeometry inside = Factory.CreatePolygon(
                    [.. ring.Append(ring[0]).Select(p => new Coordinate(p.X + painted.Offset.X, p.Y + painted.Offset.Y))]);
                inside = inside.IsValid ? inside : inside.Buffer(0);
                area = OverlayNG.Overlay(
                    area, inside, solid ? SpatialFunction.Union : SpatialFunction.Difference, Factory.PrecisionModel);
            }
        }

        return area;
    }
}

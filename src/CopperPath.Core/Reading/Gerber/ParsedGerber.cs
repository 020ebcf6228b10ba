using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Gerber;

/// <summary>A file read as far as its exact primitives; nothing is flattened yet.</summary>
/// <param name="Drawing">Operations in file order.</param>
/// <param name="FileAttributes">X2 file attributes: name (with its leading dot) to its fields.</param>
/// <param name="Options">How it was read, and is to be flattened.</param>
/// <param name="Log">Remarks so far.</param>
internal sealed record ParsedGerber(
    Drawing Drawing,
    IReadOnlyDictionary<string, IReadOnlyList<string>> FileAttributes,
    GerberReadOptions Options,
    GerberLog Log)
{
    /// <summary>Flattens the drawing; a file that was rejected has no image to flatten.</summary>
    public GerberReading Flatten()
    {
        if (Log.IsRejected)
        {
            return new GerberReading(null, Log.Finish());
        }

        var painter = new LayerPainter(
            Log.File, new PaintLimits(Options.ChordToleranceNm, Options.MaximumObjects, Options.MaximumVertices));
        Canvas canvas = painter.Paint(Drawing);
        Options.Budget?.Spend(canvas.Objects.Count, canvas.VertexCount);
        List<PaintedObject> objects = canvas.Objects;
        foreach ((PaintFault fault, DrawSpot spot) in painter.Faults)
        {
            Report(fault, new SourcePosition(Log.File, spot.Line, spot.Column));
        }

        LayerArtwork? artwork = Log.IsRejected ? null : new LayerArtwork(
            Log.File,
            objects,
            FileAttributes,
            DarkBounds(objects),
            () => CentreLines.Of(Drawing, Options.ChordToleranceNm).Joined());
        return new GerberReading(artwork, Log.Finish());
    }

    private void Report(PaintFault fault, SourcePosition position)
    {
        switch (fault)
        {
            case PaintFault.TooMuch:
                Log.Reject(
                    GerberCode.TooMuch,
                    position,
                    "more objects or vertices than the limits allow",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"at most {Options.MaximumObjects} objects and {Options.MaximumVertices} vertices"));
                break;
            case PaintFault.OutOfRange:
                Log.Reject(GerberCode.OutOfRange, position, "an object beyond 10 m", "objects within 10 m");
                break;
            case PaintFault.PenNotConvex:
                Log.Reject(
                    GerberCode.PenNotAllowed, position, "a stroke with an aperture that is not convex and solid", "a round aperture");
                break;
            case PaintFault.ArcNeedsRoundPen:
                Log.Reject(
                    GerberCode.PenNotAllowed, position, "an arc drawn with an aperture that is not round", "a round aperture");
                break;
            case PaintFault.StampNotComposable:
                Log.Reject(
                    GerberCode.MacroNotComposable,
                    position,
                    "a macro with exposure off whose outlines are too entangled",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"at most {MacroExposure.MostEdges} edges, of which {MacroExposure.MostNearEdges} pairs lie near each other"));
                break;
            case PaintFault.SelfCrossing:
                Log.Warn(
                    GerberCode.SelfCrossingContour, position, "a contour that crosses itself", "a simple outline; it is filled wherever it winds");
                break;
            default:
                Log.Warn(GerberCode.EmptyContour, position, "a contour that encloses nothing", "an area; it is dropped");
                break;
        }
    }

    private static BoxNm DarkBounds(List<PaintedObject> objects)
    {
        BoxNm bounds = BoxNm.Empty;
        foreach (PaintedObject painted in objects)
        {
            if (painted.Polarity == Polarity.Clear)
            {
                continue;
            }

            foreach (PointNm[] ring in painted.Rings)
            {
                BoxNm box = Bounds(ring);
                bounds = bounds.Including(new BoxNm(
                    box.MinX + painted.Offset.X,
                    box.MinY + painted.Offset.Y,
                    box.MaxX + painted.Offset.X,
                    box.MaxY + painted.Offset.Y));
            }
        }

        return bounds;
    }

    private static BoxNm Bounds(PointNm[] ring)
    {
        long minX = long.MaxValue, minY = long.MaxValue, maxX = long.MinValue, maxY = long.MinValue;
        foreach (PointNm p in ring)
        {
            minX = Math.Min(minX, p.X);
            maxX = Math.Max(maxX, p.X);
            minY = Math.Min(minY, p.Y);
            maxY = Math.Max(maxY, p.Y);
        }

        return new BoxNm(minX, minY, maxX, maxY);
    }
}

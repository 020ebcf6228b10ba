using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Drawing;

/// <summary>Turns a filled board into the artwork and holes a fabricator is sent.</summary>
public static class Artwork
{
    private const double MaskMarginMm = 0.05;
    private const double FiducialMaskMarginMm = 0.5;
    private const double ProfilePenMm = 0.1;

    public static IEnumerable<LayerDrawing> LayersOf(FilledBoard filled)
    {
        var board = filled.Board;
        for (var layer = 1; layer <= board.LayerCount; layer++)
        {
            yield return new(Subject.Copper, layer, [.. Copper(filled, layer)]);
        }

        foreach (var layer in new[] { 1, board.LayerCount })
        {
            yield return new(Subject.Mask, layer, [.. Mask(board, layer)]);
            yield return new(Subject.Paste, layer, [.. Paste(board, layer)]);
            yield return new(Subject.Legend, layer, [.. Legend(board, layer)]);
        }

        yield return new(Subject.Profile, 0, [.. Profile(board)]);
    }

    public static IEnumerable<DrawnHole> HolesOf(Board board) =>
        board.Vias.Select(via => new DrawnHole(via.At, via.DrillMm, true, "ViaDrill"))
            .Concat(board.Pads.Where(pad => pad.IsDrilled).Select(pad => new DrawnHole(pad.At, pad.DrillMm, true, "ComponentDrill")))
            .Concat(board.Bores.Select(bore => new DrawnHole(bore.At, bore.DiameterMm, false, "MechanicalDrill")));

    private static IEnumerable<DrawnObject> Copper(FilledBoard filled, int layer)
    {
        var board = filled.Board;
        // A piece within a hole of another is the smaller of the two and must be drawn after it.
        foreach (var piece in filled.Poured.Where(piece => piece.Layer == layer).OrderByDescending(piece => piece.Area.EnvelopeInternal.Area))
        {
            yield return new Region(piece.Area, "Conductor", piece.Net);
        }

        foreach (var pad in board.Pads.Where(pad => pad.IsOn(layer)))
        {
            yield return new Flash(pad.Shape, pad.At, FunctionOf(pad), pad.Net, pad.Part, pad.Pin);
        }

        foreach (var via in board.Vias.Where(via => InnerLands.Has(board, via, layer)))
        {
            yield return new Flash(PadShape.Disc(via.LandMm), via.At, "ViaPad", via.Net);
        }

        foreach (var track in board.Tracks.Where(track => track.Layer == layer))
        {
            yield return new Stroke(track.WidthMm, track.Path, "Conductor", track.Net);
        }
    }

    private static string FunctionOf(Pad pad) => pad.Use switch
    {
        PadUse.Surface => "SMDPad,CuDef",
        PadUse.Ball => "BGAPad,CuDef",
        PadUse.ThroughHole => "ComponentPad",
        PadUse.Test => "TestPad",
        _ => "FiducialPad,Local",
    };

    private static IEnumerable<DrawnObject> Mask(Board board, int layer)
    {
        foreach (var pad in board.Pads.Where(pad => pad.IsOn(layer)))
        {
            var margin = pad.Use == PadUse.Fiducial ? FiducialMaskMarginMm : MaskMarginMm;
            yield return new Flash(pad.Shape.Grown(margin), pad.At, "");
        }

        foreach (var bore in board.Bores)
        {
            yield return new Flash(PadShape.Disc(bore.DiameterMm + 2 * MaskMarginMm), bore.At, "");
        }
    }

    private static IEnumerable<DrawnObject> Paste(Board board, int layer) => board.Pads
        .Where(pad => pad.IsOn(layer) && pad.Use is PadUse.Surface or PadUse.Ball)
        .Select(pad => new Flash(pad.Shape.Grown(-0.03), pad.At, ""));

    private static IEnumerable<DrawnObject> Legend(Board board, int layer) => board.Legend
        .Where(line => line.Layer == layer)
        .Select(line => new Stroke(line.WidthMm, line.Path, "", null, line.Part.Length > 0 ? line.Part : null));

    private static IEnumerable<DrawnObject> Profile(Board board)
    {
        var (w, h, r) = (board.WidthMm, board.HeightMm, board.CornerMm);
        DrawnObject Side(double x1, double y1, double x2, double y2) => new Stroke(ProfilePenMm, [new(x1, y1), new(x2, y2)], "Profile");
        DrawnObject Corner(double x1, double y1, double x2, double y2, double cx, double cy) =>
            new QuarterArc(ProfilePenMm, new(x1, y1), new(x2, y2), new(cx, cy), "Profile");
        yield return Side(r, 0, w - r, 0);
        yield return Corner(w - r, 0, w, r, w - r, r);
        yield return Side(w, r, w, h - r);
        yield return Corner(w, h - r, w - r, h, w - r, h - r);
        yield return Side(w - r, h, r, h);
        yield return Corner(r, h, 0, h - r, r, h - r);
        yield return Side(0, h - r, 0, r);
        yield return Corner(0, r, r, 0, r, r);
    }
}

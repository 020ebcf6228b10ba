using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;

namespace CopperPath.DemoBoards.Kit;

/// <summary>Adds vias of a plane's net on a grid wherever the plane's copper is on all layers and nothing else is near.</summary>
public static class Stitching
{
    public static FilledBoard Add(FilledBoard filled, string net, double pitchMm, double drillMm, double landMm)
    {
        var board = filled.Board;
        var stitches = new List<Via>();
        var nearest = landMm / 2 + CopperRules.HoleClearanceMm;
        var planes = Enumerable.Range(1, board.LayerCount)
            .Select(layer => PreparedGeometryFactory.Prepare(Shapes.Union(PlaneOn(filled, net, layer))))
            .ToArray();
        var taken = PreparedGeometryFactory.Prepare(Shapes.Union(
            board.Vias.Select(via => Shapes.Disc(via.At, 2 * landMm + 1))
                .Concat(board.Pads.Select(pad => Shapes.Outline(pad.Shape, pad.At)))));
        for (var y = pitchMm / 2; y < board.HeightMm; y += pitchMm)
        {
            for (var x = pitchMm / 2; x < board.WidthMm; x += pitchMm)
            {
                var land = Shapes.Disc(new(x, y), 2 * nearest);
                if (planes.All(plane => plane.Covers(land)) && !taken.Intersects(land))
                {
                    stitches.Add(new(net, new(x, y), drillMm, landMm));
                }
            }
        }

        return filled.WithStitches(stitches);
    }

    private static IEnumerable<Geometry> PlaneOn(FilledBoard filled, string net, int layer)
    {
        var isolated = filled.Board.Pours.Where(pour => pour.Isolated && pour.Layer == layer).Select(pour => pour.Outline).ToList();
        return filled.Poured
            .Where(piece => piece.Net == net && piece.Layer == layer && !isolated.Any(outline => outline.Contains(piece.Area.InteriorPoint)))
            .Select(piece => piece.Area);
    }
}

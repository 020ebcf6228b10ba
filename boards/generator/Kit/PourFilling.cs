using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;

namespace CopperPath.DemoBoards.Kit;

/// <summary>Fills the pours of one layer: wanted area, less clearances, less slivers, less dead islands.</summary>
public static class PourFilling
{
    public static IEnumerable<PouredPiece> Fill(Board board, int layer, IReadOnlyList<DrawnCopper> drawn)
    {
        var edge = Shapes.Box(0, 0, board.WidthMm, board.HeightMm, board.CornerMm);
        var usable = Shapes.Grown(edge, -CopperRules.EdgeMm);
        var filled = new List<(Pour Pour, Geometry Area)>();
        foreach (var pour in board.Pours.Where(pour => pour.Layer == layer))
        {
            var reach = pour.Outline.EnvelopeInternal.Copy();
            reach.ExpandBy(2);
            var forbidden = drawn
                .Where(copper => copper.Net != pour.Net && copper.Area.EnvelopeInternal.Intersects(reach))
                .Select(copper => Shapes.Grown(copper.Area, copper.Net.Length == 0 ? 0.5 : pour.ClearanceMm))
                .Concat(HolesOfOthers(board, pour))
                .Concat(filled
                    .Where(other => other.Pour.Net != pour.Net || other.Pour.Isolated || pour.Isolated)
                    .Select(other => Shapes.Grown(other.Area, Math.Max(pour.ClearanceMm, other.Pour.ClearanceMm))))
                .Concat(board.Cutouts.Where(cutout => cutout.Layer == layer).Select(cutout => cutout.Area))
                .Concat(board.Pads.Where(pad => IsRelieved(pad, pour)).Select(ReliefRing));
            var area = pour.Outline.Intersection(usable).Difference(Shapes.Union(forbidden.Where(shape => shape.EnvelopeInternal.Intersects(reach))));
            area = Shapes.WithoutSlivers(area, CopperRules.NarrowestPourMm);
            area = AddSpokes(board, pour, area);
            area = WithoutIslands(area, [.. drawn.Where(copper => copper.Net == pour.Net).Select(copper => copper.Area)]);
            filled.Add((pour, area));
        }

        return filled
            .GroupBy(item => (item.Pour.Net, item.Pour.Isolated ? item.Pour : null))
            .SelectMany(group => Shapes.PolygonsOf(Shapes.Union(group.Select(item => item.Area)))
                .Select(polygon => new PouredPiece(group.Key.Net, layer, polygon)));
    }

    private static IEnumerable<Geometry> HolesOfOthers(Board board, Pour pour)
    {
        var vias = board.Vias.Where(via => via.Net != pour.Net)
            .Select(via => Shapes.Disc(via.At, via.DrillMm + 2 * CopperRules.HoleClearanceMm));
        var bores = board.Bores.Select(bore => Shapes.Disc(bore.At, bore.DiameterMm + 1.0));
        return vias.Concat(bores);
    }

    private static bool IsRelieved(Pad pad, Pour pour) => pad.Relieved && pad.Net == pour.Net && pad.IsOn(pour.Layer);

    private static Geometry ReliefRing(Pad pad) => Shapes.Outline(pad.Shape.Grown(CopperRules.ReliefGapMm), pad.At);

    private static Geometry AddSpokes(Board board, Pour pour, Geometry area)
    {
        var spokes = new List<Geometry> { area };
        foreach (var pad in board.Pads.Where(pad => IsRelieved(pad, pour)))
        {
            var reach = CopperRules.ReliefGapMm + 0.1;
            var half = CopperRules.ReliefSpokeMm / 2;
            var (w, h) = (pad.Shape.WidthMm / 2 + reach, pad.Shape.HeightMm / 2 + reach);
            Geometry[] cross =
            [
                Shapes.Box(pad.At.X, pad.At.Y - half, pad.At.X + w, pad.At.Y + half),
                Shapes.Box(pad.At.X - w, pad.At.Y - half, pad.At.X, pad.At.Y + half),
                Shapes.Box(pad.At.X - half, pad.At.Y, pad.At.X + half, pad.At.Y + h),
                Shapes.Box(pad.At.X - half, pad.At.Y - h, pad.At.X + half, pad.At.Y),
            ];
            spokes.AddRange(cross.Where(spoke => spoke.Intersects(area)));
        }

        return spokes.Count == 1 ? area : Shapes.Union(spokes);
    }

    private static Geometry WithoutIslands(Geometry area, IReadOnlyList<Geometry> anchors) =>
        Shapes.Union(Shapes.PolygonsOf(area).Where(piece =>
        {
            var prepared = PreparedGeometryFactory.Prepare(piece);
            return anchors.Any(prepared.Intersects);
        }));
}

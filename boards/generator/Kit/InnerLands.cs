using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Kit;

/// <summary>Says on which layers a via has a land: both outer ones, and those inner ones where copper of its net meets it.</summary>
public static class InnerLands
{
    public static bool Has(Board board, Via via, int layer)
    {
        if (layer == 1 || layer == board.LayerCount)
        {
            return true;
        }

        if (board.Tracks.Any(track => track.Net == via.Net && track.Layer == layer && track.Path.Any(p => p.DistanceTo(via.At) < 1e-6)))
        {
            return true;
        }

        var point = Shapes.Factory.CreatePoint(new Coordinate(via.At.X, via.At.Y));
        var pour = board.Pours.FirstOrDefault(pour => pour.Layer == layer && pour.Outline.Intersects(point));
        return pour?.Net == via.Net && !board.Cutouts.Any(cut => cut.Layer == layer && cut.Area.Intersects(point));
    }
}

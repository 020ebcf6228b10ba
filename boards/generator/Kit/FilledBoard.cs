using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Kit;

/// <summary>One connected piece of poured copper.</summary>
public sealed record PouredPiece(string Net, int Layer, Polygon Area);

/// <summary>A piece of drawn copper (pad, land or track) as the rules see it.</summary>
/// <param name="Net">Net name.</param>
/// <param name="Layer">Copper layer.</param>
/// <param name="Area">Its shape.</param>
/// <param name="Name">What to call it in a complaint.</param>
/// <param name="Hole">Centre of the plated hole it belongs to, if it does.</param>
public sealed record DrawnCopper(string Net, int Layer, Geometry Area, string Name, PointMm? Hole = null);

/// <summary>A board with its pours filled.</summary>
public sealed class FilledBoard
{
    private FilledBoard(Board board, IReadOnlyList<DrawnCopper> drawn, IReadOnlyList<PouredPiece> poured) =>
        (Board, Drawn, Poured) = (board, drawn, poured);

    public Board Board { get; }

    public IReadOnlyList<DrawnCopper> Drawn { get; }

    public IReadOnlyList<PouredPiece> Poured { get; }

    public static FilledBoard Fill(Board board)
    {
        var drawn = DrawnOf(board);
        var poured = Enumerable.Range(1, board.LayerCount)
            .AsParallel()
            .AsOrdered()
            .SelectMany(layer => PourFilling.Fill(board, layer, [.. drawn.Where(copper => copper.Layer == layer)]))
            .ToList();
        return new(board, drawn, poured);
    }

    /// <summary>The board with more vias that stand wholly in poured copper of their own net, so that no pour changes.</summary>
    public FilledBoard WithStitches(IEnumerable<Via> vias)
    {
        Board.Vias.AddRange(vias);
        return new(Board, DrawnOf(Board), Poured);
    }

    private static List<DrawnCopper> DrawnOf(Board board) =>
        [.. Enumerable.Range(1, board.LayerCount).SelectMany(layer => DrawnOn(board, layer))];

    private static IEnumerable<DrawnCopper> DrawnOn(Board board, int layer)
    {
        foreach (var pad in board.Pads.Where(pad => pad.IsOn(layer)))
        {
            yield return new(pad.Net, layer, Shapes.Outline(pad.Shape, pad.At), $"pad {pad.Part}.{pad.Pin}", pad.IsDrilled ? pad.At : null);
        }

        foreach (var via in board.Vias.Where(via => InnerLands.Has(board, via, layer)))
        {
            yield return new(via.Net, layer, Shapes.Disc(via.At, via.LandMm), $"via of {via.Net}", via.At);
        }

        foreach (var track in board.Tracks.Where(track => track.Layer == layer))
        {
            yield return new(track.Net, layer, Shapes.Stroke(track.Path, track.WidthMm), $"track of {track.Net}");
        }
    }
}

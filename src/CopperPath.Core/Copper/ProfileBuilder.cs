using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Copper;

/// <summary>Board outline drawn with a thin pen -> filled board, cut-outs left out.</summary>
public static class ProfileBuilder
{
    /// <summary>Ends this near belong together: profile drawings are rounded piece by piece.</summary>
    private const double JoinNm = 20_000;

    /// <returns>The board's pieces; empty when no contour closes.</returns>
    public static IReadOnlyList<PolygonNm> Build(IEnumerable<LayerArtwork> profiles)
    {
        List<PointNm[]> loops = [];
        foreach (LayerArtwork profile in profiles)
        {
            loops.AddRange(Loops(profile));
            loops.AddRange(profile.Objects.Where(painted => painted.Kind == PaintKind.Region)
                .SelectMany(painted => painted.Rings.Select(ring => Array.ConvertAll(ring, p => p + painted.Offset))));
        }

        // Loops alternate between board and cut-out from the outside in, whichever way they were drawn.
        List<PointNm[]> byArea = [.. loops.Where(loop => loop.Length > 2).OrderByDescending(loop => Math.Abs(Ring.SignedAreaNm2(loop)))];
        IReadOnlyList<PolygonNm> board = [];
        foreach (PointNm[] loop in byArea)
        {
            IReadOnlyList<PolygonNm> filled = PolygonOperations.Union([Ring.SignedAreaNm2(loop) > 0 ? loop : [.. loop.Reverse()]]);
            board = PolygonOperations.SymmetricDifference(CopperBuilder.RingsOf(board), CopperBuilder.RingsOf(filled));
        }

        return board;
    }

    /// <summary>The lines of a drawing that close, joined end to end.</summary>
    public static IEnumerable<PointNm[]> Loops(LayerArtwork drawing) => Close([.. drawing.Contours.Where(contour => contour.Length > 1)]);

    /// <summary>Joins pieces end to end, each with the nearest open end, and keeps the chains that close.</summary>
    private static IEnumerable<PointNm[]> Close(List<PointNm[]> pieces)
    {
        while (pieces.Count > 0)
        {
            List<PointNm> chain = [.. pieces[0]];
            pieces.RemoveAt(0);
            while (chain[0].DistanceNmTo(chain[^1]) > JoinNm && Next(pieces, chain[^1]) is { } next)
            {
                pieces.Remove(next.Piece);
                chain.AddRange(next.IsForward ? next.Piece.Skip(1) : next.Piece.Reverse().Skip(1));
            }

            if (chain.Count > 3 && chain[0].DistanceNmTo(chain[^1]) <= JoinNm)
            {
                chain.RemoveAt(chain.Count - 1);
                yield return [.. chain];
            }
        }
    }

    private static (PointNm[] Piece, bool IsForward)? Next(List<PointNm[]> pieces, PointNm end)
    {
        foreach (PointNm[] piece in pieces)
        {
            if (piece[0].DistanceNmTo(end) <= JoinNm)
            {
                return (piece, true);
            }

            if (piece[^1].DistanceNmTo(end) <= JoinNm)
            {
                return (piece, false);
            }
        }

        return null;
    }
}

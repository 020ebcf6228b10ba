using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Thermal;

/// <summary>What of a profile is board: a frame drawn around the board, or around it and its title, is not.</summary>
internal static class BoardOutline
{
    /// <summary>
    /// Loops of a profile alternate between board and cut-out from the outside in. A piece that holds less copper than lies in its
    /// cut-outs is a frame: its outer loop is left out, and what it took for cut-outs is the board.
    /// </summary>
    /// <returns>The board's pieces, and what was seen through, in words.</returns>
    public static (IReadOnlyList<PolygonNm> Pieces, IReadOnlyList<string> Remarks) Of(IReadOnlyList<PolygonNm> profile, NetList nets)
    {
        IReadOnlyList<PolygonNm> pieces = profile;
        List<string> remarks = [];
        while (pieces.FirstOrDefault(piece => IsFrame(piece, nets)) is { } frame)
        {
            pieces = PolygonOperations.SymmetricDifference([.. pieces.SelectMany(piece => piece.Rings)], [frame.Outer]);
            BoxNm box = frame.Bounds;
            remarks.Add(FormattableString.Invariant(
                $"the outline's loop of {box.WidthNm / 1e6:0.##} x {box.HeightNm / 1e6:0.##} mm holds no copper but that of the loops inside it: taken as a frame, not as board"));
        }

        return (pieces, remarks);
    }

    private static bool IsFrame(PolygonNm piece, NetList nets)
    {
        if (piece.Holes.Length == 0)
        {
            return false;
        }

        PolygonLocator filled = new([piece]);
        PolygonLocator outer = new([new PolygonNm(piece.Outer, [])]);
        double onPieceNm2 = 0;
        double inHolesNm2 = 0;
        foreach (PolygonNm island in nets.Nets.SelectMany(net => net.Sheets).SelectMany(sheet => sheet.Islands))
        {
            // A corner of the island says where all of it lies.
            PointNm at = island.Outer[0];
            if (filled.Find(at) >= 0)
            {
                onPieceNm2 += island.AreaNm2;
            }
            else if (outer.Find(at) >= 0)
            {
                inHolesNm2 += island.AreaNm2;
            }
        }

        return inHolesNm2 > onPieceNm2;
    }
}

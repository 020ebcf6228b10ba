using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Thermal;

/// <summary>What of a profile is board: a frame drawn around the board, or around it and its title, is not, nor is the title.</summary>
internal static class BoardOutline
{
    /// <summary>
    /// Loops of a profile alternate between board and cut-out from the outside in. A piece that holds less copper than lies in its
    /// cut-outs is a frame: its outer loop is left out, and what it took for cut-outs is the board.
    /// </summary>
    /// <remarks>A piece without copper beside pieces with copper is drawing: it is left out too.</remarks>
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

        List<PolygonNm> bare = [.. pieces.Where(piece => CopperNm2(piece, nets).OnIt == 0)];
        if (bare.Count > 0 && bare.Count < pieces.Count)
        {
            pieces = [.. pieces.Except(bare)];
            remarks.AddRange(bare.Select(piece => FormattableString.Invariant(
                $"the outline's loop of {piece.Bounds.WidthNm / 1e6:0.##} x {piece.Bounds.HeightNm / 1e6:0.##} mm holds no copper: taken as drawing, not as board")));
        }

        return (pieces, remarks);
    }

    private static bool IsFrame(PolygonNm piece, NetList nets)
    {
        if (piece.Holes.Length == 0)
        {
            return false;
        }

        (double onItNm2, double inHolesNm2) = CopperNm2(piece, nets);
        return inHolesNm2 > onItNm2;
    }

    /// <summary>Area of the copper islands that lie on a piece of outline, and in its cut-outs, over all layers.</summary>
    private static (double OnIt, double InHoles) CopperNm2(PolygonNm piece, NetList nets)
    {
        PolygonLocator filled = new([piece]);
        PolygonLocator outer = new([new PolygonNm(piece.Outer, [])]);
        double onItNm2 = 0;
        double inHolesNm2 = 0;
        foreach (PolygonNm island in nets.Nets.SelectMany(net => net.Sheets).SelectMany(sheet => sheet.Islands))
        {
            PointNm at = JustInside(island.Outer);
            if (filled.Find(at) >= 0)
            {
                onItNm2 += island.AreaNm2;
            }
            else if (outer.Find(at) >= 0)
            {
                inHolesNm2 += island.AreaNm2;
            }
        }

        return (onItNm2, inHolesNm2);
    }

    /// <summary>
    /// A point inside a ring beside its lowest corner of the leftmost ones, which points outward: it says where the island lies, even one
    /// that reaches to the board's edge.
    /// </summary>
    private static PointNm JustInside(PointNm[] ring)
    {
        const double DepthNm = 1000;
        int first = Enumerable.Range(0, ring.Length).MinBy(i => (ring[i].X, ring[i].Y));
        PointNm at = ring[first];
        (double x, double y) = (at.X, at.Y);
        foreach (PointNm beside in new[] { ring[(first + 1) % ring.Length], ring[(first + ring.Length - 1) % ring.Length] })
        {
            double lengthNm = at.DistanceNmTo(beside);
            double stepNm = Math.Min(DepthNm, lengthNm / 4) / lengthNm;
            (x, y) = (x + (stepNm * (beside.X - at.X)), y + (stepNm * (beside.Y - at.Y)));
        }

        return new PointNm((long)Math.Round(x), (long)Math.Round(y));
    }
}

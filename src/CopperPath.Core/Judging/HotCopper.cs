using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Meshing;
using CopperPath.Nets;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>A region of a reviewed net, over all its layers, that its own current warms beyond a limit.</summary>
/// <param name="PeakK">Largest rise in it, kelvin.</param>
/// <param name="EstimateK">How far that may be off for the width of cells, kelvin.</param>
/// <param name="Layer">Layer of the largest rise.</param>
/// <param name="At">Place of the largest rise.</param>
/// <param name="Extent">Box round the region.</param>
internal sealed record HotCopper(double PeakK, double EstimateK, int Layer, PointNm At, BoxNm Extent)
{
    /// <summary>Hot points in squares of this side that touch, even by a corner, are one region, nanometres.</summary>
    private const long SquareNm = 1_000_000;

    /// <param name="net">A solved net.</param>
    /// <param name="heat">What its current adds to the board's temperatures.</param>
    /// <param name="limitK">Rise beyond which copper is hot, kelvin.</param>
    /// <returns>Regions, hottest first.</returns>
    public static IReadOnlyList<HotCopper> Of(SolvedNet net, OwnRise heat, double limitK)
    {
        Dictionary<(long Column, long Row), HotCopper> squares = [];
        foreach ((int layer, PointNm at, double riseK) in Points(net, heat).Where(point => point.RiseK > limitK))
        {
            (long, long) square = (FloorDiv(at.X), FloorDiv(at.Y));
            HotCopper point = new(riseK, 0, layer, at, BoxNm.Of([at]));
            squares[square] = squares.TryGetValue(square, out HotCopper? known) ? known.With(point) : point;
        }

        List<HotCopper> regions = [];
        while (squares.Count > 0)
        {
            regions.Add(Gather(squares, squares.Keys.Min()));
        }

        return [.. regions.Select(region => region with { EstimateK = heat.EstimateK(at => at.RiseK(region.Layer, XM(region.At), YM(region.At), net.Bound.Net)) })
            .OrderByDescending(region => region.PeakK).ThenBy(region => region.At.X).ThenBy(region => region.At.Y)];
    }

    /// <summary>Takes a square and all that touch it, one by another, out of the squares.</summary>
    private static HotCopper Gather(Dictionary<(long Column, long Row), HotCopper> squares, (long Column, long Row) first)
    {
        squares.Remove(first, out HotCopper? region);
        Stack<(long Column, long Row)> waiting = new([first]);
        while (waiting.TryPop(out (long Column, long Row) square))
        {
            for (int k = 0; k < 9; k++)
            {
                (long, long) beside = (square.Column + (k % 3) - 1, square.Row + (k / 3) - 1);
                if (squares.Remove(beside, out HotCopper? other))
                {
                    region = region!.With(other);
                    waiting.Push(beside);
                }
            }
        }

        return region!;
    }

    private HotCopper With(HotCopper other) => (other.PeakK > PeakK ? other : this) with { Extent = Extent.Including(other.Extent) };

    /// <summary>
    /// The vertices of its mesh, points along edges that are longer than a square, so that no hot land falls apart for having
    /// few vertices, and the corners of its outlines: copper without current has no mesh.
    /// </summary>
    private static IEnumerable<(int Layer, PointNm At, double RiseK)> Points(SolvedNet net, OwnRise heat)
    {
        foreach (SheetField sheet in net.Conduction.Sheets)
        {
            SheetMesh mesh = sheet.Mesh;
            for (int v = 0; v < mesh.VertexCount; v++)
            {
                yield return (sheet.Layer, PointNm.FromMetres(mesh.XM[v], mesh.YM[v]), heat.RiseK(sheet.Layer, mesh.XM[v], mesh.YM[v], net.Bound.Net));
            }

            foreach ((double xM, double yM) in AlongEdges(mesh))
            {
                yield return (sheet.Layer, PointNm.FromMetres(xM, yM), heat.RiseK(sheet.Layer, xM, yM, net.Bound.Net));
            }
        }

        foreach (NetSheet sheet in net.Bound.Net.Sheets)
        {
            foreach (PointNm corner in sheet.Islands.SelectMany(island => island.Outer))
            {
                yield return (sheet.Layer, corner, heat.RiseK(sheet.Layer, XM(corner), YM(corner), net.Bound.Net));
            }
        }
    }

    /// <summary>Points that divide each edge of the mesh into pieces no longer than a square, metres.</summary>
    private static IEnumerable<(double XM, double YM)> AlongEdges(SheetMesh mesh)
    {
        for (int corner = 0; corner < 3 * mesh.TriangleCount; corner++)
        {
            (int a, int b) = (mesh.Triangles[corner], mesh.Triangles[corner % 3 == 2 ? corner - 2 : corner + 1]);
            (double dxM, double dyM) = (mesh.XM[b] - mesh.XM[a], mesh.YM[b] - mesh.YM[a]);
            int pieces = (int)Math.Ceiling(Math.Sqrt((dxM * dxM) + (dyM * dyM)) / Units.MetresFromNm(SquareNm));
            for (int k = 1; k < pieces; k++)
            {
                yield return (mesh.XM[a] + (dxM * k / pieces), mesh.YM[a] + (dyM * k / pieces));
            }
        }
    }

    private static double XM(PointNm at) => Units.MetresFromNm(at.X);

    private static double YM(PointNm at) => Units.MetresFromNm(at.Y);

    private static long FloorDiv(long positionNm) => (long)Math.Floor(positionNm / (double)SquareNm);
}

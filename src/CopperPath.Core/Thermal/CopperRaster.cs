using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// Polygons laid under a grid: how much of each cell they fill, and how much of each line between two cells they
/// cross. Both exact up to rounding.
/// </summary>
/// <remarks>
/// Heat passes from cell to cell through the copper that crosses the line between them. A strip narrower than a cell
/// thus conducts along its length as it does in nature, whatever its direction: at an angle a to the grid it crosses
/// cos a lines per cell one way and sin a the other, its width on the line grows by 1/cos a and 1/sin a, and the two
/// add to width times thickness over length. Copper parted by a gap along a line is not joined.
/// </remarks>
public sealed class CopperRaster
{
    private readonly GridAxis _x;
    private readonly GridAxis _y;
    private readonly double[] _areaM2;
    private readonly double[] _acrossXM;
    private readonly double[] _acrossYM;

    private CopperRaster(GridAxis x, GridAxis y, double[] areaM2, double[] acrossXM, double[] acrossYM)
    {
        (_x, _y) = (x, y);
        (_areaM2, _acrossXM, _acrossYM) = (areaM2, acrossXM, acrossYM);
    }

    public static CopperRaster Of(IEnumerable<PolygonNm> polygons, GridAxis x, GridAxis y) =>
        OfRings(polygons.SelectMany(polygon => polygon.Rings), x, y);

    /// <summary>
    /// The copper of several nets on one layer. A cell belongs to the net with most copper in it, and only copper of the net
    /// both cells belong to joins them: two nets that share a cell wider than the gap between them are not made one.
    /// </summary>
    /// <param name="nets">Each net's copper; an early one wins over a later one of like area.</param>
    /// <param name="x">Columns.</param>
    /// <param name="y">Rows.</param>
    public static CopperRaster OfNets(IEnumerable<IReadOnlyList<PolygonNm>> nets, GridAxis x, GridAxis y)
    {
        (CopperRaster Part, int Column, int Row)[] parts = [.. nets.Where(net => net.Count > 0).AsParallel().AsOrdered().Select(net => PartOf(net, x, y))];
        double[] areaM2 = new double[x.Count * y.Count];
        double[] mostM2 = new double[areaM2.Length];
        int[] owner = new int[areaM2.Length];
        Array.Fill(owner, -1);
        for (int n = 0; n < parts.Length; n++)
        {
            (CopperRaster part, int column, int row) = parts[n];
            for (int cell = 0; cell < part._areaM2.Length; cell++)
            {
                int whole = ((row + (cell / part._x.Count)) * x.Count) + column + (cell % part._x.Count);
                areaM2[whole] += part._areaM2[cell];
                if (part._areaM2[cell] > mostM2[whole])
                {
                    (mostM2[whole], owner[whole]) = (part._areaM2[cell], n);
                }
            }
        }

        double[] acrossXM = new double[(x.Count + 1) * y.Count];
        double[] acrossYM = new double[x.Count * (y.Count + 1)];
        for (int n = 0; n < parts.Length; n++)
        {
            (CopperRaster part, int column, int row) = parts[n];
            for (int j = 0; j < part._y.Count; j++)
            {
                for (int i = 0; i < part._x.Count; i++)
                {
                    int whole = ((row + j) * x.Count) + column + i;
                    if (owner[whole] != n)
                    {
                        continue;
                    }

                    if (column + i > 0 && owner[whole - 1] == n)
                    {
                        acrossXM[((row + j) * (x.Count + 1)) + column + i] = part.AcrossXM(i, j);
                    }

                    if (row + j > 0 && owner[whole - x.Count] == n)
                    {
                        acrossYM[whole] = part.AcrossYM(i, j);
                    }
                }
            }
        }

        return new CopperRaster(x, y, areaM2, acrossXM, acrossYM);
    }

    /// <param name="rings">Outer rings counter-clockwise, holes clockwise; they do not overlap.</param>
    /// <param name="x">Columns.</param>
    /// <param name="y">Rows.</param>
    public static CopperRaster OfRings(IEnumerable<PointNm[]> rings, GridAxis x, GridAxis y)
    {
        RasterSweep sweep = new(x, y);
        foreach (PointNm[] ring in rings)
        {
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                sweep.Add(
                    Units.MetresFromNm(ring[j].X), Units.MetresFromNm(ring[j].Y),
                    Units.MetresFromNm(ring[i].X), Units.MetresFromNm(ring[i].Y));
            }
        }

        return new CopperRaster(x, y, sweep.AreasM2(), sweep.AcrossXM(), sweep.AcrossYM());
    }

    /// <summary>An upright rectangle, metres.</summary>
    public static CopperRaster OfRectangle(double minX, double minY, double maxX, double maxY, GridAxis x, GridAxis y)
    {
        RasterSweep sweep = new(x, y);
        sweep.Add(minX, minY, maxX, minY);
        sweep.Add(maxX, minY, maxX, maxY);
        sweep.Add(maxX, maxY, minX, maxY);
        sweep.Add(minX, maxY, minX, minY);
        return new CopperRaster(x, y, sweep.AreasM2(), sweep.AcrossXM(), sweep.AcrossYM());
    }

    /// <summary>The raster of a board without gaps: every cell full.</summary>
    public static CopperRaster Full(GridAxis x, GridAxis y) => Even(1, x, y);

    /// <summary>A share of every cell and line filled, 0 to 1: copper known by its amount only.</summary>
    public static CopperRaster Even(double share, GridAxis x, GridAxis y) => new(x, y,
        [.. Enumerable.Range(0, x.Count * y.Count).Select(k => share * x.WidthM(k % x.Count) * y.WidthM(k / x.Count))],
        [.. Enumerable.Range(0, (x.Count + 1) * y.Count).Select(k => share * y.WidthM(k / (x.Count + 1)))],
        [.. Enumerable.Range(0, x.Count * (y.Count + 1)).Select(k => share * x.WidthM(k % x.Count))]);

    /// <summary>Area filled in a cell, square metres.</summary>
    public double AreaM2(int i, int j) => _areaM2[(j * _x.Count) + i];

    /// <summary>Share of a cell that is filled, 0 to 1.</summary>
    public double Share(int i, int j) => AreaM2(i, j) / (_x.WidthM(i) * _y.WidthM(j));

    /// <summary>Length covered of the line between cell (i - 1, j) and cell (i, j), metres.</summary>
    public double AcrossXM(int i, int j) => _acrossXM[(j * (_x.Count + 1)) + i];

    /// <summary>Length covered of the line between cell (i, j - 1) and cell (i, j), metres.</summary>
    public double AcrossYM(int i, int j) => _acrossYM[(j * _x.Count) + i];

    /// <summary>A net's copper on the cells it may touch, and where they begin.</summary>
    private static (CopperRaster Part, int Column, int Row) PartOf(IReadOnlyList<PolygonNm> net, GridAxis x, GridAxis y)
    {
        (int fromX, int toX) = CellsOf(x, net.Min(polygon => polygon.Bounds.MinX), net.Max(polygon => polygon.Bounds.MaxX));
        (int fromY, int toY) = CellsOf(y, net.Min(polygon => polygon.Bounds.MinY), net.Max(polygon => polygon.Bounds.MaxY));
        return (Of(net, x.Slice(fromX, toX), y.Slice(fromY, toY)), fromX, fromY);

        static (int From, int To) CellsOf(GridAxis axis, long minNm, long maxNm) =>
            (axis.CellAt(Units.MetresFromNm(minNm)), axis.CellAt(Units.MetresFromNm(maxNm)));
    }
}

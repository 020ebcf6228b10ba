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
}

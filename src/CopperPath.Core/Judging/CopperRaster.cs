using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Copper of a layer on a square grid: a cell holds copper when its middle does. Voids narrower than a cell can be
/// missed; the cell is below the least gap that boards are made with.
/// </summary>
internal sealed class CopperRaster
{
    /// <summary>Side of a cell, nanometres.</summary>
    public const long CellNm = Units.NmPerMm / 10;

    private readonly bool[] _isCopper;

    private CopperRaster(BoxNm box, int columns, int rows)
    {
        Box = box;
        Columns = columns;
        Rows = rows;
        _isCopper = new bool[columns * rows];
    }

    public BoxNm Box { get; }

    public int Columns { get; }

    public int Rows { get; }

    public bool this[int cell] => _isCopper[cell];

    public int CellCount => _isCopper.Length;

    public PointNm CentreOf(int cell) => new(Box.MinX + ((cell % Columns) * CellNm) + (CellNm / 2), Box.MinY + ((cell / Columns) * CellNm) + (CellNm / 2));

    /// <summary>Fills the rings by the even-odd rule.</summary>
    public static CopperRaster Of(BoxNm box, IEnumerable<PointNm[]> rings)
    {
        CopperRaster raster = new(box, (int)(box.WidthNm / CellNm) + 1, (int)(box.HeightNm / CellNm) + 1);
        List<double>[] crossings = [.. Enumerable.Range(0, raster.Rows).Select(_ => new List<double>())];
        foreach (PointNm[] ring in rings)
        {
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                raster.Cross(ring[j], ring[i], crossings);
            }
        }

        for (int row = 0; row < raster.Rows; row++)
        {
            crossings[row].Sort();
            for (int k = 0; k + 1 < crossings[row].Count; k += 2)
            {
                int from = Math.Max(0, (int)Math.Ceiling(crossings[row][k]));
                int to = Math.Min(raster.Columns - 1, (int)Math.Ceiling(crossings[row][k + 1]) - 1);
                for (int column = from; column <= to; column++)
                {
                    raster._isCopper[(row * raster.Columns) + column] = true;
                }
            }
        }

        return raster;
    }

    /// <summary>Cells within a distance of copper in x and y, then shrunk by the same: gaps up to twice the distance are filled.</summary>
    public bool[] Closed(int reach) => Spread(Spread(_isCopper, reach, sought: true), reach, sought: false);

    private void Cross(PointNm a, PointNm b, List<double>[] crossings)
    {
        if (a.Y == b.Y)
        {
            return;
        }

        (PointNm low, PointNm high) = a.Y < b.Y ? (a, b) : (b, a);
        double FirstRowAtOrAbove(long y) => Math.Ceiling(((y - Box.MinY) - (CellNm / 2.0)) / CellNm);
        int first = Math.Max(0, (int)FirstRowAtOrAbove(low.Y));
        int last = Math.Min(Rows, (int)FirstRowAtOrAbove(high.Y));
        for (int row = first; row < last; row++)
        {
            double y = Box.MinY + (row * CellNm) + (CellNm / 2.0);
            double x = low.X + ((high.X - low.X) * ((y - low.Y) / (high.Y - low.Y)));
            crossings[row].Add((x - Box.MinX - (CellNm / 2.0)) / CellNm);
        }
    }

    /// <summary>Every cell with a cell of the sought value within reach takes that value; outside the grid is empty.</summary>
    private bool[] Spread(bool[] cells, int reach, bool sought)
    {
        bool[] along = SpreadLines(cells, reach, sought, (Rows, Columns), (Columns, 1));
        return SpreadLines(along, reach, sought, (Columns, Rows), (1, Columns));
    }

    /// <param name="cells">Cells.</param>
    /// <param name="reach">Farthest cell that still counts.</param>
    /// <param name="sought">Value that spreads.</param>
    /// <param name="counts">Lines, and cells of a line.</param>
    /// <param name="steps">From a line to the next, and from a cell to the next of its line.</param>
    private static bool[] SpreadLines(bool[] cells, int reach, bool sought, (int Lines, int Cells) counts, (int Line, int Cell) steps)
    {
        bool[] spread = new bool[cells.Length];
        for (int line = 0; line < counts.Lines; line++)
        {
            // Distance to the last sought cell, swept both ways.
            int first = line * steps.Line, last = first + ((counts.Cells - 1) * steps.Cell);
            int since = int.MaxValue / 2;
            for (int cell = first; cell <= last; cell += steps.Cell)
            {
                since = cells[cell] == sought ? 0 : since + 1;
                spread[cell] = since <= reach ? sought : !sought;
            }

            since = int.MaxValue / 2;
            for (int cell = last; cell >= first; cell -= steps.Cell)
            {
                since = cells[cell] == sought ? 0 : since + 1;
                spread[cell] = since <= reach ? sought : spread[cell];
            }
        }

        return spread;
    }
}

namespace CopperPath.Thermal;

/// <summary>
/// Sums what polygons fill of cells and cross of grid lines, edge by edge. The copper lies to the left of its edges:
/// an edge that runs downwards adds the part of its row to its right, the edge that ends the copper there takes it
/// away again; likewise along the grid lines an edge crosses.
/// </summary>
internal sealed class RasterSweep
{
    private readonly GridAxis _x;
    private readonly GridAxis _y;

    // For each cell, or piece of a grid line: what edges in it add to it, and what they add to all that follow.
    private readonly double[] _areaM2;
    private readonly double[] _heightBeyondM;
    private readonly double[] _acrossXM;
    private readonly int[] _turnsBeyondX;
    private readonly double[] _acrossYM;
    private readonly int[] _turnsBeyondY;
    private readonly List<double> _cuts = [];

    public RasterSweep(GridAxis x, GridAxis y)
    {
        (_x, _y) = (x, y);
        _areaM2 = new double[x.Count * y.Count];
        _heightBeyondM = new double[_areaM2.Length];
        _acrossXM = new double[(x.Count + 1) * y.Count];
        _turnsBeyondX = new int[_acrossXM.Length];
        _acrossYM = new double[x.Count * (y.Count + 1)];
        _turnsBeyondY = new int[_acrossYM.Length];
    }

    /// <summary>Adds an edge of a ring, metres.</summary>
    public void Add(double x0, double y0, double x1, double y1)
    {
        _cuts.Clear();
        (int first, int last) = LinesBetween(_x, x0, x1);
        for (int i = first; i < last; i++)
        {
            double at = (_x.LinesM[i] - x0) / (x1 - x0);
            _cuts.Add(at);
            CrossColumnLine(i, y0 + (at * (y1 - y0)), x1 > x0 ? 1 : -1);
        }

        (first, last) = LinesBetween(_y, y0, y1);
        for (int j = first; j < last; j++)
        {
            double at = (_y.LinesM[j] - y0) / (y1 - y0);
            _cuts.Add(at);
            CrossRowLine(j, x0 + (at * (x1 - x0)), y1 > y0 ? -1 : 1);
        }

        _cuts.Add(1);
        _cuts.Sort();
        double from = 0;
        foreach (double to in _cuts)
        {
            AddPiece(x0 + (from * (x1 - x0)), y0 + (from * (y1 - y0)), x0 + (to * (x1 - x0)), y0 + (to * (y1 - y0)));
            from = to;
        }
    }

    /// <summary>Filled area of each cell, square metres, row by row.</summary>
    public double[] AreasM2()
    {
        double[] areas = new double[_areaM2.Length];
        for (int j = 0; j < _y.Count; j++)
        {
            double heightM = 0;
            for (int i = 0; i < _x.Count; i++)
            {
                int cell = (j * _x.Count) + i;
                areas[cell] = Math.Clamp(_areaM2[cell] + (heightM * _x.WidthM(i)), 0, _x.WidthM(i) * _y.WidthM(j));
                heightM += _heightBeyondM[cell];
            }
        }

        return areas;
    }

    /// <summary>Covered length of each piece of the lines between columns, row by row.</summary>
    public double[] AcrossXM()
    {
        int columns = _x.Count + 1;
        double[] covered = new double[_acrossXM.Length];
        for (int i = 0; i < columns; i++)
        {
            int turns = 0;
            for (int j = 0; j < _y.Count; j++)
            {
                int piece = (j * columns) + i;
                covered[piece] = Math.Clamp(_acrossXM[piece] + (turns * _y.WidthM(j)), 0, _y.WidthM(j));
                turns += _turnsBeyondX[piece];
            }
        }

        return covered;
    }

    /// <summary>Covered length of each piece of the lines between rows, row by row.</summary>
    public double[] AcrossYM()
    {
        double[] covered = new double[_acrossYM.Length];
        for (int j = 0; j <= _y.Count; j++)
        {
            int turns = 0;
            for (int i = 0; i < _x.Count; i++)
            {
                int piece = (j * _x.Count) + i;
                covered[piece] = Math.Clamp(_acrossYM[piece] + (turns * _x.WidthM(i)), 0, _x.WidthM(i));
                turns += _turnsBeyondY[piece];
            }
        }

        return covered;
    }

    /// <summary>An edge crosses a line between columns; with turn 1 the copper begins above it, with -1 it ends.</summary>
    private void CrossColumnLine(int line, double y, int turn)
    {
        if (y < _y.LinesM[^1])
        {
            int row = _y.CellAt(y);
            int piece = (row * (_x.Count + 1)) + line;
            _acrossXM[piece] += turn * (_y.LinesM[row + 1] - Math.Max(y, _y.LinesM[row]));
            _turnsBeyondX[piece] += turn;
        }
    }

    /// <summary>An edge crosses a line between rows; with turn 1 the copper begins to the right of it.</summary>
    private void CrossRowLine(int line, double x, int turn)
    {
        if (x < _x.LinesM[^1])
        {
            int column = _x.CellAt(x);
            int piece = (line * _x.Count) + column;
            _acrossYM[piece] += turn * (_x.LinesM[column + 1] - Math.Max(x, _x.LinesM[column]));
            _turnsBeyondY[piece] += turn;
        }
    }

    /// <summary>A stretch of edge inside one cell, or beyond the grid.</summary>
    private void AddPiece(double x0, double y0, double x1, double y1)
    {
        double middleX = (x0 + x1) / 2;
        double middleY = (y0 + y1) / 2;
        if (middleX >= _x.LinesM[^1] || middleY < _y.LinesM[0] || middleY >= _y.LinesM[^1])
        {
            return;
        }

        int column = _x.CellAt(middleX);
        int cell = (_y.CellAt(middleY) * _x.Count) + column;
        double heightM = y0 - y1;
        _areaM2[cell] += heightM * (_x.LinesM[column + 1] - Math.Max(middleX, _x.LinesM[column]));
        _heightBeyondM[cell] += heightM;
    }

    /// <summary>Lines that part two coordinates: those at or above one and below the other.</summary>
    private static (int First, int Last) LinesBetween(GridAxis axis, double a, double b)
    {
        return (FirstAbove(Math.Min(a, b)), FirstAbove(Math.Max(a, b)));

        int FirstAbove(double position)
        {
            int low = 0;
            int high = axis.LinesM.Count;
            while (low < high)
            {
                int middle = (low + high) / 2;
                (low, high) = axis.LinesM[middle] > position ? (low, middle) : (middle + 1, high);
            }

            return low;
        }
    }
}

using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>Lines that part one axis of the board into cells, metres, ascending.</summary>
public sealed class GridAxis
{
    /// <summary>Equal stretches of the axis for each cell, to look cells up by.</summary>
    private const int StretchesPerCell = 4;

    private readonly double[] _linesM;

    // The cell in which each stretch begins.
    private readonly int[] _cellOf;
    private readonly double _stretchesPerM;

    private GridAxis(double[] linesM)
    {
        _linesM = linesM;
        _cellOf = new int[StretchesPerCell * Count];
        _stretchesPerM = _cellOf.Length / (linesM[^1] - linesM[0]);
        for (int stretch = 0, cell = 0; stretch < _cellOf.Length; stretch++)
        {
            while (cell + 1 < Count && linesM[cell + 1] <= linesM[0] + (stretch / _stretchesPerM))
            {
                cell++;
            }

            _cellOf[stretch] = cell;
        }
    }

    /// <summary>Number of cells.</summary>
    public int Count => _linesM.Length - 1;

    /// <summary>The lines: cell i lies between line i and line i + 1.</summary>
    public IReadOnlyList<double> LinesM => _linesM;

    /// <summary>The narrowest cell, metres.</summary>
    public double NarrowestM => Enumerable.Range(0, Count).Min(WidthM);

    /// <summary>Equal cells no wider than asked.</summary>
    public static GridAxis Uniform(double fromM, double toM, double cellM)
    {
        int count = Math.Max(1, (int)Math.Ceiling(((toM - fromM) / Checked.Positive(cellM)) - 1e-9));
        return new GridAxis([.. Enumerable.Range(0, count + 1).Select(i => fromM + ((toM - fromM) * i / count))]);
    }

    /// <summary>
    /// Equal cells inside a stretch, and from its ends outwards cells that grow by a constant ratio until they are as
    /// wide as allowed: for one narrow conductor on a wide board.
    /// </summary>
    /// <param name="fromM">Start of the axis.</param>
    /// <param name="toM">End of the axis.</param>
    /// <param name="fineFromM">Start of the stretch; a grid line.</param>
    /// <param name="fineToM">End of the stretch; a grid line.</param>
    /// <param name="cellM">Widest cell inside the stretch.</param>
    /// <param name="growth">Ratio of neighbouring cells outside, above 1.</param>
    /// <param name="widestM">Widest cell anywhere.</param>
    public static GridAxis Graded(
        double fromM, double toM, double fineFromM, double fineToM, double cellM, double growth, double widestM)
    {
        GridAxis fine = Uniform(fineFromM, fineToM, cellM);
        double firstM = fine.WidthM(0);
        IEnumerable<double> before = Growing(fineFromM - fromM, firstM, growth, widestM).Select(d => fineFromM - d).Reverse();
        IEnumerable<double> after = Growing(toM - fineToM, firstM, growth, widestM).Select(d => fineToM + d);
        return new GridAxis([.. before, .. fine._linesM, .. after]);
    }

    /// <summary>Cells about as wide as asked at each place: the lines part the integral of 1 / width into equal pieces.</summary>
    /// <param name="fromM">Start of the axis.</param>
    /// <param name="toM">End of the axis.</param>
    /// <param name="widthsM">Width asked for, at places evenly spread from start to end; at least two, positive.</param>
    public static GridAxis Fitted(double fromM, double toM, IReadOnlyList<double> widthsM)
    {
        double stepM = (toM - fromM) / (widthsM.Count - 1);
        double[] cells = new double[widthsM.Count];
        for (int k = 1; k < cells.Length; k++)
        {
            cells[k] = cells[k - 1] + (stepM * ((1 / widthsM[k - 1]) + (1 / widthsM[k])) / 2);
        }

        int count = Math.Max(1, (int)Math.Ceiling(cells[^1] - 1e-9));
        double[] lines = new double[count + 1];
        (lines[0], lines[^1]) = (fromM, toM);
        for (int line = 1, k = 1; line < count; line++)
        {
            double wanted = cells[^1] * line / count;
            while (cells[k] < wanted)
            {
                k++;
            }

            lines[line] = fromM + (stepM * (k - 1 + ((wanted - cells[k - 1]) / (cells[k] - cells[k - 1]))));
        }

        return new GridAxis(lines);
    }

    /// <summary>Some neighbouring cells of this axis as an axis of their own.</summary>
    public GridAxis Slice(int firstCell, int lastCell) => new(_linesM[firstCell..(lastCell + 2)]);

    public double WidthM(int cell) => _linesM[cell + 1] - _linesM[cell];

    public double CentreM(int cell) => (_linesM[cell] + _linesM[cell + 1]) / 2;

    /// <summary>The cell a coordinate lies in; beyond the ends, the last cell on that side.</summary>
    public int CellAt(double positionM)
    {
        double stretch = (positionM - _linesM[0]) * _stretchesPerM;
        int cell = _cellOf[stretch > 0 ? (int)Math.Min(stretch, _cellOf.Length - 1) : 0];
        while (cell > 0 && _linesM[cell] > positionM)
        {
            cell--;
        }

        while (cell + 1 < Count && _linesM[cell + 1] <= positionM)
        {
            cell++;
        }

        return cell;
    }

    /// <summary>Distances of grid lines over a span; the last is the span itself.</summary>
    private static List<double> Growing(double spanM, double firstM, double growth, double widestM)
    {
        List<double> distances = [];
        double reached = 0;
        double width = firstM;
        while (reached < spanM)
        {
            width = Math.Min(width * growth, widestM);
            reached += width;
            distances.Add(reached);
        }

        // Squeezed together so that the last line falls on the end: no sliver of a cell is left there.
        return distances.ConvertAll(distance => distance * spanM / reached);
    }
}

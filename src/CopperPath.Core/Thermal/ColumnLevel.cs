using System.Numerics;
using System.Runtime.InteropServices;

namespace CopperPath.Thermal;

/// <summary>One grid of a <see cref="ColumnMultigrid"/>, its way to the next coarser one, and room to work in.</summary>
internal sealed class ColumnLevel
{
    /// <summary>Grids smaller than this are not worth a second thread.</summary>
    private const int LeastParallelSize = 20_000;

    /// <summary>Keeps columns that are tied to nothing solvable; far below any coupling that counts.</summary>
    private const double Tie = 1e-9;

    private readonly AxisGroups _x;
    private readonly AxisGroups _y;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int _planes;
    private readonly int _stride;
    private readonly ColumnMatrix _matrix;
    private readonly double[] _inversePivots;

    // Coupling to the next level over the pivot: what a value hands on to the next, and takes back from it.
    private readonly double[] _handedOn;

    // With a row of zeros before and after, so that no neighbour is missing.
    private readonly double[] _east;
    private readonly double[] _north;
    private readonly double[] _values;

    public ColumnLevel(ColumnMatrix matrix, AxisGroups x, AxisGroups y)
    {
        (_matrix, _x, _y) = (matrix, x, y);
        (_columns, _rows, _planes, _stride) = (matrix.Columns, matrix.Rows, matrix.Planes, matrix.RowStride);
        _east = Padded(matrix.East);
        _north = Padded(matrix.North);
        _values = new double[matrix.Size + (2 * _stride)];
        _inversePivots = InversePivots(matrix);
        _handedOn = [.. matrix.Down.Zip(_inversePivots, (down, inverse) => down * inverse)];
        Given = new double[matrix.Size];
    }

    /// <summary>Right-hand side, to be filled in before a cycle.</summary>
    public double[] Given { get; }

    /// <summary>What the cycle made of it.</summary>
    public Span<double> Values => _values.AsSpan(_stride, _matrix.Size);

    /// <summary>The couplings between groups: those that cross from one to the other, over the longer way between their centres.</summary>
    public ColumnMatrix CoarserMatrix(IReadOnlyList<double> xLinesM, IReadOnlyList<double> yLinesM)
    {
        ColumnMatrix coarse = new(_x.Count, _y.Count, _planes);
        double[] ground = new double[coarse.Size];
        double[] eastScale = _x.CrossingScales(xLinesM);
        double[] northScale = _y.CrossingScales(yLinesM);
        for (int j = 0; j < _rows; j++)
        {
            for (int i = 0; i < _columns; i++)
            {
                int n = ((j * _columns) + i) * _planes;
                int group = GroupAt(i, j);
                for (int p = 0; p < _planes; p++, n++, group++)
                {
                    coarse.East[group] += eastScale[i] * _matrix.East[n];
                    coarse.North[group] += northScale[j] * _matrix.North[n];
                    coarse.Down[group] += _matrix.Down[n];
                    if (_matrix.IsFree[n])
                    {
                        coarse.IsFree[group] = true;
                        ground[group] += Math.Max(0, _matrix.Diagonal[n] - _matrix.CouplingsOf(n));
                    }
                }
            }
        }

        for (int group = 0; group < coarse.Size; group++)
        {
            coarse.Diagonal[group] = coarse.IsFree[group] ? coarse.CouplingsOf(group) + ground[group] : 1;
        }

        return coarse;
    }

    /// <summary>One sweep from zero: every second column, as on a chess board, then the others.</summary>
    public void SweepFromZero()
    {
        EachRow(j =>
        {
            for (int i = j & 1; i < _columns; i += 2)
            {
                int n = ((j * _columns) + i) * _planes;
                Given.AsSpan(n, _planes).CopyTo(_values.AsSpan(n + _stride));
                SolveColumn(n);
            }
        });
        EachRow(j => SweepRow(j, 1));
    }

    /// <summary>What the sweep from zero left over, summed over the groups: nothing in the columns it solved last.</summary>
    public void Restrict(double[] coarse)
    {
        Array.Clear(coarse);
        for (int j = 0; j < _rows; j++)
        {
            for (int i = j & 1; i < _columns; i += 2)
            {
                int n = ((j * _columns) + i) * _planes;
                int group = GroupAt(i, j);
                for (int p = 0; p < _planes; p++)
                {
                    coarse[group + p] += FromNeighbours(n + p + _stride);
                }
            }
        }
    }

    /// <summary>Adds to each node what its group was given.</summary>
    public void Prolong(ReadOnlySpan<double> coarse)
    {
        for (int j = 0; j < _rows; j++)
        {
            for (int i = 0; i < _columns; i++)
            {
                int at = (((j * _columns) + i) * _planes) + _stride;
                int group = GroupAt(i, j);
                for (int p = 0; p < _planes; p++)
                {
                    _values[at + p] += coarse[group + p];
                }
            }
        }
    }

    /// <summary>The sweep in the other order, from what is there.</summary>
    public void SweepBack()
    {
        EachRow(j => SweepRow(j, 1));
        EachRow(j => SweepRow(j, 0));
    }

    private int GroupAt(int i, int j) => ((_y.GroupOf[j] * _x.Count) + _x.GroupOf[i]) * _planes;

    private void EachRow(Action<int> sweep)
    {
        if (_matrix.Size < LeastParallelSize)
        {
            for (int j = 0; j < _rows; j++)
            {
                sweep(j);
            }
        }
        else
        {
            Parallel.For(0, _rows, sweep);
        }
    }

    private void SweepRow(int j, int colour)
    {
        for (int i = (j + colour) & 1; i < _columns; i += 2)
        {
            int n = ((j * _columns) + i) * _planes;
            int p = 0;
            for (; p <= _planes - Vector<double>.Count; p += Vector<double>.Count)
            {
                int at = n + p + _stride;
                (At(Given, n + p) + VectorFromNeighbours(at)).CopyTo(_values, at);
            }

            for (; p < _planes; p++)
            {
                int at = n + p + _stride;
                _values[at] = Given[n + p] + FromNeighbours(at);
            }

            SolveColumn(n);
        }
    }

    private Vector<double> VectorFromNeighbours(int at) =>
        (At(_east, at) * At(_values, at + _planes)) + (At(_east, at - _planes) * At(_values, at - _planes))
        + (At(_north, at) * At(_values, at + _stride)) + (At(_north, at - _stride) * At(_values, at - _stride));

    private static Vector<double> At(double[] values, int index) =>
        Vector.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(values), (nuint)index);

    private double FromNeighbours(int at) => (_east[at] * _values[at + _planes]) + (_east[at - _planes] * _values[at - _planes])
        + (_north[at] * _values[at + _stride]) + (_north[at - _stride] * _values[at - _stride]);

    /// <summary>Solves the equations along one column, whose values hold its right-hand side.</summary>
    private void SolveColumn(int first)
    {
        Span<double> values = _values.AsSpan(first + _stride, _planes);
        ReadOnlySpan<double> inverse = _inversePivots.AsSpan(first, values.Length);
        ReadOnlySpan<double> handedOn = _handedOn.AsSpan(first, values.Length);
        for (int p = 1; p < values.Length; p++)
        {
            values[p] += handedOn[p - 1] * values[p - 1];
        }

        values[^1] *= inverse[^1];
        for (int p = values.Length - 2; p >= 0; p--)
        {
            values[p] = (inverse[p] * values[p]) + (handedOn[p] * values[p + 1]);
        }
    }

    private double[] Padded(double[] values)
    {
        double[] padded = new double[values.Length + (2 * _stride)];
        values.CopyTo(padded, _stride);
        return padded;
    }

    /// <summary>Pivots of the columns; a diagonal that heat's own growth has pulled below the couplings is raised to them.</summary>
    private static double[] InversePivots(ColumnMatrix matrix)
    {
        double[] inverse = new double[matrix.Size];
        for (int n = 0; n < inverse.Length; n++)
        {
            double pivot = Math.Max(matrix.Diagonal[n], (1 + Tie) * matrix.CouplingsOf(n));
            if (n % matrix.Planes > 0)
            {
                pivot -= matrix.Down[n - 1] * matrix.Down[n - 1] * inverse[n - 1];
            }

            inverse[n] = 1 / pivot;
        }

        return inverse;
    }
}

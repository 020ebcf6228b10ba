using System.Numerics;
using System.Runtime.InteropServices;
using CopperPath.LinearAlgebra;

namespace CopperPath.Thermal;

/// <summary>
/// The equations of a grid of columns: every node is coupled to its neighbours in the next column, the next row and the
/// next level, and to the ground. Nodes are numbered as in <see cref="HeatGrid"/>.
/// </summary>
internal sealed class ColumnMatrix : ISymmetricOperator
{
    /// <param name="columns">Columns of the grid.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="planes">Levels.</param>
    public ColumnMatrix(int columns, int rows, int planes)
    {
        (Columns, Rows, Planes) = (columns, rows, planes);
        Size = columns * rows * planes;
        (East, North, Down, Diagonal) = (new double[Size], new double[Size], new double[Size], new double[Size]);
        IsFree = new bool[Size];
    }

    public int Columns { get; }

    public int Rows { get; }

    public int Planes { get; }

    public int Size { get; }

    /// <summary>Distance of a node's number from that of its neighbour in the next row.</summary>
    public int RowStride => Columns * Planes;

    /// <summary>Coupling to the next column, not negative; 0 in the last column.</summary>
    public double[] East { get; }

    /// <summary>Coupling to the next row, not negative; 0 in the last row.</summary>
    public double[] North { get; }

    /// <summary>Coupling to the next level, not negative; 0 on the last level.</summary>
    public double[] Down { get; }

    /// <summary>Sum of a node's couplings and what ties it to the ground; 1 for nodes that are not free.</summary>
    public double[] Diagonal { get; }

    /// <summary>False for nodes whose value is given or means nothing: they are coupled to none.</summary>
    public bool[] IsFree { get; }

    /// <summary>Sum of the couplings of a node.</summary>
    public double CouplingsOf(int node) => East[node] + North[node] + Down[node]
        + (node >= Planes ? East[node - Planes] : 0) + (node >= RowStride ? North[node - RowStride] : 0) + (node >= 1 ? Down[node - 1] : 0);

    /// <inheritdoc/>
    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        // The last column, row and level have no coupling, so that a neighbour's number may run over into the next one.
        int stride = RowStride;
        int from = Math.Min(stride, Size);
        int to = Math.Max(from, Size - stride);
        for (int n = 0; n < from; n++)
        {
            y[n] = RowTimes(n, x);
        }

        int width = Vector<double>.Count;
        for (; from + width <= to; from += width)
        {
            Vector<double> sum = (At(Diagonal, from) * At(x, from))
                - (At(East, from) * At(x, from + Planes)) - (At(East, from - Planes) * At(x, from - Planes))
                - (At(North, from) * At(x, from + stride)) - (At(North, from - stride) * At(x, from - stride))
                - (At(Down, from) * At(x, from + 1)) - (At(Down, from - 1) * At(x, from - 1));
            sum.CopyTo(y[from..]);
        }

        for (; from < Size; from++)
        {
            y[from] = RowTimes(from, x);
        }
    }

    private static Vector<double> At(ReadOnlySpan<double> values, int index) =>
        Vector.LoadUnsafe(ref MemoryMarshal.GetReference(values), (nuint)index);

    private double RowTimes(int n, ReadOnlySpan<double> x)
    {
        double sum = Diagonal[n] * x[n];
        sum -= n + Planes < Size ? East[n] * x[n + Planes] : 0;
        sum -= n >= Planes ? East[n - Planes] * x[n - Planes] : 0;
        sum -= n + RowStride < Size ? North[n] * x[n + RowStride] : 0;
        sum -= n >= RowStride ? North[n - RowStride] * x[n - RowStride] : 0;
        sum -= n + 1 < Size ? Down[n] * x[n + 1] : 0;
        sum -= n >= 1 ? Down[n - 1] * x[n - 1] : 0;
        return sum;
    }
}

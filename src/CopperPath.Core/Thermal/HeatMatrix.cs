using System.Numerics;
using System.Runtime.InteropServices;
using CopperPath.LinearAlgebra;

namespace CopperPath.Thermal;

/// <summary>
/// The equations of nodes in columns of equal height: a node is coupled to those above and below it in its column, to those of
/// neighbouring columns on its level, and to the ground. Nodes of a column follow one another.
/// </summary>
internal sealed class HeatMatrix : ISymmetricOperator
{
    /// <summary>Columns a thread takes at a time.</summary>
    private const int ColumnsAtATime = 1024;

    /// <summary>Keeps columns that are tied to nothing solvable; far below any coupling that counts.</summary>
    private const double Tie = 1e-9;

    private readonly double[] _none;
    private double[]? _from;
    private double[]? _product;

    private HeatMatrix(int planes, int[] start, int[] neighbour, double[] coupling, double[] down)
    {
        (Planes, Start, Neighbour, Coupling, Down) = (planes, start, neighbour, coupling, down);
        Diagonal = new double[down.Length];
        IsFree = new bool[down.Length];
        _none = new double[planes];
    }

    public int Size => Down.Length;

    /// <summary>Levels of each column.</summary>
    public int Planes { get; }

    public int Columns => Start.Length - 1;

    /// <summary>Where the neighbours of each column begin, and their number at the end.</summary>
    public int[] Start { get; }

    /// <summary>Neighbouring columns; each pair is there from both sides.</summary>
    public int[] Neighbour { get; }

    /// <summary>Couplings to each neighbour, level by level, not negative.</summary>
    public double[] Coupling { get; }

    /// <summary>Coupling to the next level, not negative; 0 on a column's last.</summary>
    public double[] Down { get; }

    /// <summary>Sum of a node's couplings and what ties it to the ground; 1 for nodes that are not free.</summary>
    public double[] Diagonal { get; }

    /// <summary>False for nodes whose value is given or means nothing: they are coupled to none.</summary>
    public bool[] IsFree { get; }

    /// <summary>Equations of coupled columns, without anything that ties them to the ground.</summary>
    /// <param name="columns">Number of columns.</param>
    /// <param name="planes">Levels of each.</param>
    /// <param name="pairs">Pairs of columns; one may occur again.</param>
    /// <param name="couplings">Couplings of each pair, level by level.</param>
    /// <param name="down">Coupling of each node to the next level.</param>
    public static HeatMatrix Of(int columns, int planes, IReadOnlyList<(int, int)> pairs, double[] couplings, double[] down)
    {
        int[] start = new int[columns + 1];
        foreach ((int a, int b) in pairs)
        {
            start[a + 1]++;
            start[b + 1]++;
        }

        for (int column = 0; column < columns; column++)
        {
            start[column + 1] += start[column];
        }

        int[] next = start[..^1];
        int[] neighbour = new int[start[^1]];
        double[] coupling = new double[start[^1] * planes];
        for (int pair = 0; pair < pairs.Count; pair++)
        {
            (int a, int b) = pairs[pair];
            ReadOnlySpan<double> own = couplings.AsSpan(pair * planes, planes);
            own.CopyTo(coupling.AsSpan(next[a] * planes));
            own.CopyTo(coupling.AsSpan(next[b] * planes));
            neighbour[next[a]++] = b;
            neighbour[next[b]++] = a;
        }

        HeatMatrix matrix = new(planes, start, neighbour, coupling, down);
        double[] sums = matrix.CouplingsOfAll();
        for (int n = 0; n < matrix.Size; n++)
        {
            (matrix.IsFree[n], matrix.Diagonal[n]) = (sums[n] > 0, sums[n] > 0 ? sums[n] : 1);
        }

        return matrix;
    }

    /// <summary>The same with some nodes held: their couplings stay in their neighbours' diagonals only.</summary>
    public HeatMatrix Between(bool[] isHeld)
    {
        if (!isHeld.Contains(true))
        {
            HeatMatrix same = new(Planes, Start, Neighbour, Coupling, Down);
            IsFree.CopyTo(same.IsFree, 0);
            Diagonal.CopyTo(same.Diagonal, 0);
            return same;
        }

        HeatMatrix free = new(Planes, Start, Neighbour, [.. Coupling], [.. Down]);
        for (int column = 0; column < Columns; column++)
        {
            for (int p = 0; p < Planes; p++)
            {
                int n = (column * Planes) + p;
                free.Down[n] = isHeld[n] || (p + 1 < Planes && isHeld[n + 1]) ? 0 : Down[n];
                free.IsFree[n] = IsFree[n] && !isHeld[n];
                free.Diagonal[n] = free.IsFree[n] ? Diagonal[n] : 1;
                for (int k = Start[column]; k < Start[column + 1]; k++)
                {
                    if (isHeld[n] || isHeld[(Neighbour[k] * Planes) + p])
                    {
                        free.Coupling[(k * Planes) + p] = 0;
                    }
                }
            }
        }

        return free;
    }

    /// <summary>
    /// The same with a diagonal of its own that is no smaller than the couplings: what heat's own growth has pulled below them is raised.
    /// </summary>
    public HeatMatrix Dominant()
    {
        HeatMatrix dominant = new(Planes, Start, Neighbour, Coupling, Down);
        double[] sums = CouplingsOfAll();
        for (int n = 0; n < Size; n++)
        {
            dominant.IsFree[n] = IsFree[n];
            dominant.Diagonal[n] = Math.Max(Diagonal[n], (1 + Tie) * sums[n]);
        }

        return dominant;
    }

    /// <summary>Nodes a node is coupled to.</summary>
    public IEnumerable<int> NeighboursOf(int node)
    {
        (int column, int p) = (node / Planes, node % Planes);
        if (Down[node] > 0)
        {
            yield return node + 1;
        }

        if (p > 0 && Down[node - 1] > 0)
        {
            yield return node - 1;
        }

        for (int k = Start[column]; k < Start[column + 1]; k++)
        {
            if (Coupling[(k * Planes) + p] > 0)
            {
                yield return (Neighbour[k] * Planes) + p;
            }
        }
    }

    /// <summary>Sums of the couplings of each node.</summary>
    public double[] CouplingsOfAll()
    {
        double[] sums = new double[Size];
        for (int n = 0; n < Size; n++)
        {
            sums[n] = Down[n] + (n > 0 ? Down[n - 1] : 0);
        }

        for (int column = 0; column < Columns; column++)
        {
            for (int k = Start[column]; k < Start[column + 1]; k++)
            {
                for (int p = 0; p < Planes; p++)
                {
                    sums[(column * Planes) + p] += Coupling[(k * Planes) + p];
                }
            }
        }

        return sums;
    }

    /// <summary>What flows to each node from those of other values.</summary>
    public void Inflow(double[] values, double[] inflow) => EachPart((first, end) =>
    {
        for (int column = first; column < end; column++)
        {
            int top = column * Planes;
            Span<double> sum = inflow.AsSpan(top, Planes);
            ReadOnlySpan<double> own = values.AsSpan(top, Planes);
            for (int p = 0; p + 1 < own.Length; p++)
            {
                double up = Down[top + p] * (own[p + 1] - own[p]);
                sum[p] = up - (p > 0 ? Down[top + p - 1] * (own[p] - own[p - 1]) : 0);
            }

            sum[^1] = own.Length > 1 ? Down[top + own.Length - 2] * (own[^2] - own[^1]) : 0;
            for (int k = Start[column]; k < Start[column + 1]; k++)
            {
                ReadOnlySpan<double> coupling = Coupling.AsSpan(k * Planes, Planes);
                ReadOnlySpan<double> other = values.AsSpan(Neighbour[k] * Planes, Planes);
                for (int p = 0; p < sum.Length; p++)
                {
                    sum[p] += coupling[p] * (other[p] - own[p]);
                }
            }
        }
    });

    /// <inheritdoc/>
    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        // Spans can not be handed to other threads.
        (double[] from, double[] product) = (_from ??= new double[Size], _product ??= new double[Size]);
        x.CopyTo(from);
        EachPart((first, end) =>
        {
            for (int column = first; column < end; column++)
            {
                ColumnSums.Add(Coupling, Neighbour, Start[column], Start[column + 1], from, _none, product.AsSpan(column * Planes, Planes));
            }

            TakeFromOwn(from, product, first * Planes, end * Planes);
        });
        product.CopyTo(y);
    }

    /// <summary>What nodes and the levels above and below them make, less what their neighbours do.</summary>
    private void TakeFromOwn(double[] from, double[] product, int first, int end)
    {
        int n = first;
        if (n == 0)
        {
            TakeOne(n++);
        }

        int last = Math.Min(end, Size - 1);
        ref double values = ref MemoryMarshal.GetArrayDataReference(from);
        ref double down = ref MemoryMarshal.GetArrayDataReference(Down);
        for (; n <= last - Vector<double>.Count; n += Vector<double>.Count)
        {
            Vector<double> own = Vector.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(Diagonal), (nuint)n) * Vector.LoadUnsafe(ref values, (nuint)n);
            Vector<double> below = Vector.LoadUnsafe(ref down, (nuint)n) * Vector.LoadUnsafe(ref values, (nuint)(n + 1));
            Vector<double> above = Vector.LoadUnsafe(ref down, (nuint)(n - 1)) * Vector.LoadUnsafe(ref values, (nuint)(n - 1));
            ref double product0 = ref MemoryMarshal.GetArrayDataReference(product);
            (own - below - above - Vector.LoadUnsafe(ref product0, (nuint)n)).StoreUnsafe(ref product0, (nuint)n);
        }

        while (n < end)
        {
            TakeOne(n++);
        }

        void TakeOne(int node)
        {
            double below = node + 1 < Size ? Down[node] * from[node + 1] : 0;
            double above = node > 0 ? Down[node - 1] * from[node - 1] : 0;
            product[node] = (Diagonal[node] * from[node]) - below - above - product[node];
        }
    }

    /// <summary>Columns by parts that do not depend on how many threads there are.</summary>
    private void EachPart(Action<int, int> work)
    {
        int parts = (Columns + ColumnsAtATime - 1) / ColumnsAtATime;
        if (parts == 1)
        {
            work(0, Columns);
            return;
        }

        Parallel.For(0, parts, part => work(part * ColumnsAtATime, Math.Min(Columns, (part + 1) * ColumnsAtATime)));
    }
}

using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Substitution with several right-hand sides at once. The factor is far larger than the caches and is read from
/// memory once for all of them, so that a further right-hand side costs a fraction of the first.
/// </summary>
/// <remarks>
/// Right-hand sides lie side by side, four to a vector. Every sum is formed in the order in which
/// <see cref="CholeskyFactor.Solve"/> forms it, so each solution is the same bit by bit.
/// </remarks>
internal sealed class SimultaneousSolve
{
    private const int Lanes = 4;
    private const int MostGroups = 4;

    private readonly SupernodalStructure _structure;
    private readonly double[] _values;
    private readonly int _groups;
    private readonly double[] _y;
    private readonly double[] _gathered;

    private SimultaneousSolve(SupernodalStructure structure, double[] values, int groups)
    {
        _structure = structure;
        _values = values;
        _groups = groups;
        _y = new double[(long)structure.Size * groups * Lanes];
        int most = 0;
        for (int s = 0; s < structure.Count; s++)
        {
            most = Math.Max(most, structure.RowCount(s));
        }

        _gathered = new double[most * Lanes];
    }

    /// <summary>Solves for <paramref name="count"/> right-hand sides, one after the other in memory.</summary>
    public static void Run(
        SupernodalStructure structure, double[] values, ReadOnlySpan<double> b, Span<double> x, int count)
    {
        int size = structure.Size;
        SimultaneousSolve? solve = null;
        for (int first = 0; first < count; first += MostGroups * Lanes)
        {
            int part = Math.Min(count - first, MostGroups * Lanes);
            int groups = (part + Lanes - 1) / Lanes;
            if (solve is null || solve._groups != groups)
            {
                solve = new SimultaneousSolve(structure, values, groups);
            }

            solve.Load(b.Slice(first * size, part * size), part);
            solve.Substitute();
            solve.Store(x.Slice(first * size, part * size), part);
        }
    }

    private int Width => _groups * Lanes;

    private void Load(ReadOnlySpan<double> b, int count)
    {
        int size = _structure.Size, width = Width;
        Array.Clear(_y);
        for (int k = 0; k < size; k++)
        {
            int from = _structure.Order[k];
            for (int r = 0; r < count; r++)
            {
                _y[(k * width) + r] = b[(r * size) + from];
            }
        }
    }

    private void Store(Span<double> x, int count)
    {
        int size = _structure.Size, width = Width;
        for (int k = 0; k < size; k++)
        {
            int to = _structure.Order[k];
            for (int r = 0; r < count; r++)
            {
                x[(r * size) + to] = _y[(k * width) + r];
            }
        }
    }

    private void Substitute()
    {
        for (int s = 0; s < _structure.Count; s++)
        {
            for (int group = 0; group < _groups; group++)
            {
                Forward(s, group * Lanes);
            }
        }

        for (int s = _structure.Count - 1; s >= 0; s--)
        {
            for (int group = 0; group < _groups; group++)
            {
                Backward(s, group * Lanes);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Forward(int supernode, int lane)
    {
        ReadOnlySpan<int> rows = _structure.RowsOf(supernode);
        int columns = _structure.ColumnCount(supernode);
        nint width = Width, stride = rows.Length;
        ref double panel = ref Unsafe.Add(
            ref MemoryMarshal.GetArrayDataReference(_values), (nint)_structure.ValueStarts[supernode]);
        ref double y = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_y), lane);
        ref double own = ref Unsafe.Add(ref y, _structure.ColumnStarts[supernode] * width);
        for (int j = 0; j < columns; j++)
        {
            ref double column = ref Unsafe.Add(ref panel, j * stride);
            ref double place = ref Unsafe.Add(ref own, j * width);
            Vector256<double> value = Vector256.LoadUnsafe(ref place) / Vector256.Create(Unsafe.Add(ref column, j));
            value.StoreUnsafe(ref place);
            for (int i = j + 1; i < columns; i++)
            {
                ref double target = ref Unsafe.Add(ref own, i * width);
                Vector256.FusedMultiplyAdd(
                    Vector256.Create(Unsafe.Add(ref column, i)), -value, Vector256.LoadUnsafe(ref target)).StoreUnsafe(ref target);
            }
        }

        int row = columns;
        for (; row <= rows.Length - 4; row += 4)
        {
            Vector256<double> sum0 = default, sum1 = default, sum2 = default, sum3 = default;
            ref double entry = ref Unsafe.Add(ref panel, row);
            ref double factor = ref own;
            for (int j = 0; j < columns; j++)
            {
                Vector256<double> value = Vector256.LoadUnsafe(ref factor);
                sum0 = Vector256.FusedMultiplyAdd(Vector256.Create(entry), value, sum0);
                sum1 = Vector256.FusedMultiplyAdd(Vector256.Create(Unsafe.Add(ref entry, 1)), value, sum1);
                sum2 = Vector256.FusedMultiplyAdd(Vector256.Create(Unsafe.Add(ref entry, 2)), value, sum2);
                sum3 = Vector256.FusedMultiplyAdd(Vector256.Create(Unsafe.Add(ref entry, 3)), value, sum3);
                entry = ref Unsafe.Add(ref entry, stride);
                factor = ref Unsafe.Add(ref factor, width);
            }

            Subtract(sum0, ref Unsafe.Add(ref y, rows[row] * width));
            Subtract(sum1, ref Unsafe.Add(ref y, rows[row + 1] * width));
            Subtract(sum2, ref Unsafe.Add(ref y, rows[row + 2] * width));
            Subtract(sum3, ref Unsafe.Add(ref y, rows[row + 3] * width));
        }

        for (; row < rows.Length; row++)
        {
            Vector256<double> sum = default;
            for (int j = 0; j < columns; j++)
            {
                sum = Vector256.FusedMultiplyAdd(
                    Vector256.Create(Unsafe.Add(ref panel, row + (j * stride))),
                    Vector256.LoadUnsafe(ref Unsafe.Add(ref own, j * width)),
                    sum);
            }

            Subtract(sum, ref Unsafe.Add(ref y, rows[row] * width));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Subtract(Vector256<double> value, ref double target) =>
        (Vector256.LoadUnsafe(ref target) - value).StoreUnsafe(ref target);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Backward(int supernode, int lane)
    {
        ReadOnlySpan<int> rows = _structure.RowsOf(supernode);
        int columns = _structure.ColumnCount(supernode);
        nint width = Width;
        ref double panel = ref Unsafe.Add(
            ref MemoryMarshal.GetArrayDataReference(_values), (nint)_structure.ValueStarts[supernode]);
        ref double y = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_y), lane);
        ref double gathered = ref MemoryMarshal.GetArrayDataReference(_gathered);
        for (int i = 0; i < rows.Length; i++)
        {
            Vector256.LoadUnsafe(ref Unsafe.Add(ref y, rows[i] * width)).StoreUnsafe(ref gathered, (nuint)(i * Lanes));
        }

        ref double own = ref Unsafe.Add(ref y, _structure.ColumnStarts[supernode] * width);
        for (int j = columns - 1; j >= 0; j--)
        {
            ref double column = ref Unsafe.Add(ref panel, (nint)j * rows.Length);
            ref double place = ref Unsafe.Add(ref gathered, j * Lanes);
            Vector256<double> sum = Dot(
                ref Unsafe.Add(ref column, j + 1), ref Unsafe.Add(ref place, Lanes), rows.Length - j - 1);
            Vector256<double> value = (Vector256.LoadUnsafe(ref place) - sum) / Vector256.Create(Unsafe.Add(ref column, j));
            value.StoreUnsafe(ref place);
            value.StoreUnsafe(ref Unsafe.Add(ref own, j * width));
        }
    }

    /// <summary>The sums of <see cref="DenseKernels.Dot"/>, for four right-hand sides.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Dot(ref double entries, ref double values, int count)
    {
        Vector256<double> sum0 = default, sum1 = default, sum2 = default, sum3 = default;
        int i = 0;
        for (; i <= count - 4; i += 4)
        {
            ref double entry = ref Unsafe.Add(ref entries, i);
            ref double value = ref Unsafe.Add(ref values, i * Lanes);
            sum0 = Vector256.FusedMultiplyAdd(Vector256.Create(entry), Vector256.LoadUnsafe(ref value), sum0);
            sum1 = Vector256.FusedMultiplyAdd(
                Vector256.Create(Unsafe.Add(ref entry, 1)), Vector256.LoadUnsafe(ref value, 4), sum1);
            sum2 = Vector256.FusedMultiplyAdd(
                Vector256.Create(Unsafe.Add(ref entry, 2)), Vector256.LoadUnsafe(ref value, 8), sum2);
            sum3 = Vector256.FusedMultiplyAdd(
                Vector256.Create(Unsafe.Add(ref entry, 3)), Vector256.LoadUnsafe(ref value, 12), sum3);
        }

        Vector256<double> sum = (sum0 + sum1) + (sum2 + sum3);
        for (; i < count; i++)
        {
            sum = Vector256.FusedMultiplyAdd(
                Vector256.Create(Unsafe.Add(ref entries, i)), Vector256.LoadUnsafe(ref values, (nuint)(i * Lanes)), sum);
        }

        return sum;
    }
}

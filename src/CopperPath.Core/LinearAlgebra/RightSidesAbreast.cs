using System.Runtime.CompilerServices;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Substitution with several right-hand sides side by side: vectors run across them, so that each entry of a block is
/// read once for all. Every sum is formed in the order of <see cref="OneRightSide"/>, so each solution is the same bit
/// by bit.
/// </summary>
internal readonly struct RightSidesAbreast<TLanes> : ISubstitutionKernel
    where TLanes : struct, ILanes<TLanes>
{
    public static int Width => TLanes.Count;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Forward(ref double block, int rows, int columns, ref double own, ref double sums)
    {
        int width = TLanes.Count;
        nint stride = rows;
        for (int j = 0; j < columns; j++)
        {
            ref double column = ref Unsafe.Add(ref block, j * stride);
            ref double place = ref Unsafe.Add(ref own, j * width);
            TLanes value = TLanes.Load(ref place) / Unsafe.Add(ref column, j);
            value.Store(ref place);
            for (int i = j + 1; i < columns; i++)
            {
                ref double target = ref Unsafe.Add(ref own, i * width);
                TLanes.MultiplyAdd(-Unsafe.Add(ref column, i), value, TLanes.Load(ref target)).Store(ref target);
            }
        }

        int row = columns;
        ref double sum = ref sums;
        for (; row <= rows - 3; row += 3)
        {
            TLanes sum0 = default, sum1 = default, sum2 = default;
            ref double entry = ref Unsafe.Add(ref block, row);
            ref double factor = ref own;
            for (int j = 0; j < columns; j++)
            {
                TLanes value = TLanes.Load(ref factor);
                sum0 = TLanes.MultiplyAdd(entry, value, sum0);
                sum1 = TLanes.MultiplyAdd(Unsafe.Add(ref entry, 1), value, sum1);
                sum2 = TLanes.MultiplyAdd(Unsafe.Add(ref entry, 2), value, sum2);
                entry = ref Unsafe.Add(ref entry, stride);
                factor = ref Unsafe.Add(ref factor, width);
            }

            sum0.Store(ref sum);
            sum1.Store(ref Unsafe.Add(ref sum, width));
            sum2.Store(ref Unsafe.Add(ref sum, 2 * width));
            sum = ref Unsafe.Add(ref sum, 3 * width);
        }

        for (; row < rows; row++)
        {
            TLanes last = default;
            ref double entry = ref Unsafe.Add(ref block, row);
            for (int j = 0; j < columns; j++)
            {
                last = TLanes.MultiplyAdd(entry, TLanes.Load(ref Unsafe.Add(ref own, j * width)), last);
                entry = ref Unsafe.Add(ref entry, stride);
            }

            last.Store(ref sum);
            sum = ref Unsafe.Add(ref sum, width);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Backward(ref double block, int rows, int columns, ref double gathered)
    {
        int width = TLanes.Count;
        for (int j = columns - 1; j >= 0; j--)
        {
            ref double column = ref Unsafe.Add(ref block, (nint)j * rows);
            ref double place = ref Unsafe.Add(ref gathered, j * width);
            TLanes sum = Dot(ref Unsafe.Add(ref column, j + 1), ref Unsafe.Add(ref place, width), rows - j - 1);
            ((TLanes.Load(ref place) - sum) / Unsafe.Add(ref column, j)).Store(ref place);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Subtract(ref double values, ref double target) =>
        (TLanes.Load(ref target) - TLanes.Load(ref values)).Store(ref target);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Add(ref double values, ref double target) =>
        (TLanes.Load(ref target) + TLanes.Load(ref values)).Store(ref target);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Copy(ref double values, ref double target) => TLanes.Load(ref values).Store(ref target);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static TLanes Dot(ref double entries, ref double values, int count)
    {
        int width = TLanes.Count;
        TLanes sum0 = default, sum1 = default, sum2 = default, sum3 = default;
        int i = 0;
        for (; i <= count - 4; i += 4)
        {
            ref double entry = ref Unsafe.Add(ref entries, i);
            ref double value = ref Unsafe.Add(ref values, i * width);
            sum0 = TLanes.MultiplyAdd(entry, TLanes.Load(ref value), sum0);
            sum1 = TLanes.MultiplyAdd(Unsafe.Add(ref entry, 1), TLanes.Load(ref Unsafe.Add(ref value, width)), sum1);
            sum2 = TLanes.MultiplyAdd(Unsafe.Add(ref entry, 2), TLanes.Load(ref Unsafe.Add(ref value, 2 * width)), sum2);
            sum3 = TLanes.MultiplyAdd(Unsafe.Add(ref entry, 3), TLanes.Load(ref Unsafe.Add(ref value, 3 * width)), sum3);
        }

        TLanes sum = (sum0 + sum1) + (sum2 + sum3);
        for (; i < count; i++)
        {
            sum = TLanes.MultiplyAdd(Unsafe.Add(ref entries, i), TLanes.Load(ref Unsafe.Add(ref values, i * width)), sum);
        }

        return sum;
    }
}

using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CopperPath.Thermal;

/// <summary>What the neighbours of a column bring to each of its levels: the innermost loop of every temperature.</summary>
internal static class ColumnSums
{
    /// <summary>
    /// sum[p] = given[p] + Σ coupling[k, p] · values[neighbour[k], p], for every level p and every k from one number to before another.
    /// </summary>
    /// <remarks>
    /// Levels go by the register; where they are no multiple of its width the last registers overlap, and what lies in both is worked out
    /// twice to the same value. Hence <paramref name="sum"/> must be neither <paramref name="given"/> nor among the values that are read.
    /// </remarks>
    /// <param name="coupling">Couplings, level by level.</param>
    /// <param name="neighbour">Column on the other side of each.</param>
    /// <param name="from">First k.</param>
    /// <param name="to">One more than the last k.</param>
    /// <param name="values">Values of all columns, level by level.</param>
    /// <param name="given">What is there before; one number for each level.</param>
    /// <param name="sum">Where the sums go; its length is the number of levels.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Add<T>(T[] coupling, int[] neighbour, int from, int to, T[] values, ReadOnlySpan<T> given, Span<T> sum)
        where T : struct, INumber<T>
    {
        int planes = sum.Length;
        ref T couplings = ref MemoryMarshal.GetArrayDataReference(coupling);
        ref int neighbours = ref MemoryMarshal.GetArrayDataReference(neighbour);
        ref T all = ref MemoryMarshal.GetArrayDataReference(values);
        ref T start = ref MemoryMarshal.GetReference(given);
        ref T end = ref MemoryMarshal.GetReference(sum);
        if (planes >= Vector256<T>.Count)
        {
            for (int p = 0; ; p = Math.Min(p + Vector256<T>.Count, planes - Vector256<T>.Count))
            {
                Vector256<T> register = Vector256.LoadUnsafe(ref start, (nuint)p);
                for (int k = from; k < to; k++)
                {
                    register += Vector256.LoadUnsafe(ref couplings, (nuint)((k * planes) + p))
                        * Vector256.LoadUnsafe(ref all, (nuint)((Unsafe.Add(ref neighbours, k) * planes) + p));
                }

                register.StoreUnsafe(ref end, (nuint)p);
                if (p + Vector256<T>.Count >= planes)
                {
                    return;
                }
            }
        }

        if (planes >= Vector128<T>.Count)
        {
            for (int p = 0; ; p = Math.Min(p + Vector128<T>.Count, planes - Vector128<T>.Count))
            {
                Vector128<T> register = Vector128.LoadUnsafe(ref start, (nuint)p);
                for (int k = from; k < to; k++)
                {
                    register += Vector128.LoadUnsafe(ref couplings, (nuint)((k * planes) + p))
                        * Vector128.LoadUnsafe(ref all, (nuint)((Unsafe.Add(ref neighbours, k) * planes) + p));
                }

                register.StoreUnsafe(ref end, (nuint)p);
                if (p + Vector128<T>.Count >= planes)
                {
                    return;
                }
            }
        }

        for (int p = 0; p < planes; p++)
        {
            T total = given[p];
            for (int k = from; k < to; k++)
            {
                total += coupling[(k * planes) + p] * values[(neighbour[k] * planes) + p];
            }

            sum[p] = total;
        }
    }
}

using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Vectors one after the other -> one row of numbers per unknown, and back. The unknowns are walked in the order of the
/// vectors: then only whole rows are reached for here and there in memory, several of them at once.
/// </summary>
internal static class SideBySide
{
    private const int Lanes = 4;

    /// <param name="vectors">One after the other.</param>
    /// <param name="position">Row of each unknown.</param>
    /// <param name="rows">The rows; numbers beyond the last vector become 0.</param>
    /// <param name="width">Numbers in a row, a multiple of four and no fewer than there are vectors.</param>
    /// <param name="threads">Number of threads; one or more.</param>
    public static void Load(ReadOnlyMemory<double> vectors, int[] position, double[] rows, int width, int threads) =>
        InParts(position.Length, threads, (from, to) => Load(vectors.Span, position, rows, width, from, to));

    /// <summary>The reverse of <see cref="Load(ReadOnlyMemory{double}, int[], double[], int, int)"/>.</summary>
    public static void Store(double[] rows, int width, int[] position, Memory<double> vectors, int threads) =>
        InParts(position.Length, threads, (from, to) => Store(rows, width, position, vectors.Span, from, to));

    private static void InParts(int count, int threads, Action<int, int> work)
    {
        if (threads == 1)
        {
            work(0, count);
            return;
        }

        Parallel.For(0, threads, t => work((int)((long)count * t / threads), (int)((long)count * (t + 1) / threads)));
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Load(
        ReadOnlySpan<double> vectors, ReadOnlySpan<int> position, Span<double> rows, int width, int from, int to)
    {
        nint size = position.Length;
        int count = vectors.Length / position.Length;
        ref double first = ref MemoryMarshal.GetReference(vectors);
        for (int i = from; i < to; i++)
        {
            ref double source = ref Unsafe.Add(ref first, i);
            Span<double> row = rows.Slice(position[i] * width, width);
            int r = 0;
            for (; r <= count - Lanes; r += Lanes)
            {
                Vector256.Create(source, Unsafe.Add(ref source, size), Unsafe.Add(ref source, 2 * size), Unsafe.Add(ref source, 3 * size))
                    .StoreUnsafe(ref row[r]);
                source = ref Unsafe.Add(ref source, Lanes * size);
            }

            for (; r < count; r++)
            {
                row[r] = source;
                source = ref Unsafe.Add(ref source, size);
            }

            for (; r < width; r++)
            {
                row[r] = 0;
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Store(
        ReadOnlySpan<double> rows, int width, ReadOnlySpan<int> position, Span<double> vectors, int from, int to)
    {
        nint size = position.Length;
        int count = vectors.Length / position.Length;
        ref double first = ref MemoryMarshal.GetReference(vectors);
        for (int i = from; i < to; i++)
        {
            ref double target = ref Unsafe.Add(ref first, i);
            foreach (double value in rows.Slice(position[i] * width, count))
            {
                target = value;
                target = ref Unsafe.Add(ref target, size);
            }
        }
    }
}

using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace CopperPath.LinearAlgebra;

/// <summary>Substitution with one right-hand side: vectors run down the columns of a block.</summary>
internal readonly struct OneRightSide : ISubstitutionKernel
{
    public static int Width => 1;

    public static void Forward(ref double block, int rows, int columns, ref double own, ref double sums)
    {
        Span<double> ownRows = MemoryMarshal.CreateSpan(ref own, columns);
        Span<double> below = MemoryMarshal.CreateSpan(ref sums, rows - columns);
        below.Clear();
        for (int j = 0; j < columns; j++)
        {
            ReadOnlySpan<double> column = MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref block, (nint)j * rows), rows);
            double value = ownRows[j] / column[j];
            ownRows[j] = value;
            DenseKernels.AddScaled(column[(j + 1)..columns], -value, ownRows[(j + 1)..]);
            DenseKernels.AddScaled(column[columns..], value, below);
        }
    }

    public static void Backward(ref double block, int rows, int columns, ref double gathered)
    {
        Span<double> values = MemoryMarshal.CreateSpan(ref gathered, rows);
        for (int j = columns - 1; j >= 0; j--)
        {
            ReadOnlySpan<double> column = MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref block, (nint)j * rows), rows);
            values[j] = (values[j] - DenseKernels.Dot(column[(j + 1)..], values[(j + 1)..])) / column[j];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Subtract(ref double values, ref double target) => target -= values;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Add(ref double values, ref double target) => target += values;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Copy(ref double values, ref double target) => target = values;
}

using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// The dense arithmetic of the factorization, on column-major blocks: the product that updates a block and the
/// Cholesky factorization of a tall panel.
/// </summary>
/// <remarks>
/// The product is blocked for registers and caches after Goto and van de Geijn, "Anatomy of high-performance matrix
/// multiplication", ACM TOMS 34 (2008); the panel is split recursively after Gustavson, "Recursion leads to automatic
/// variable blocking for dense linear-algebra algorithms", IBM J. Res. Dev. 41 (1997). Every entry is summed in the
/// same order on every machine with fused multiply-add, however many threads run.
/// </remarks>
internal sealed class DenseKernels
{
    private const int TileRows = 8;
    private const int TileColumns = 4;
    private const int BlockDepth = 256;
    private const int BlockColumns = 128;
    private const int NarrowColumns = 8;

    private readonly double[] _packedLeft = new double[TileRows * BlockDepth];
    private readonly double[] _packedRight = new double[BlockColumns * BlockDepth];
    private readonly double[] _edgeTile = new double[TileRows * TileColumns];

    /// <summary>
    /// Factors the <paramref name="columns"/> columns of a panel in place: the square at its top into L Lᵀ, the rows
    /// below divided by Lᵀ. What lies above the diagonal of the square is left undefined.
    /// </summary>
    /// <param name="panel">First value; column j starts at j · <paramref name="rows"/>.</param>
    /// <param name="rows">Rows of the panel.</param>
    /// <param name="columns">Columns of the panel; no more than rows.</param>
    /// <param name="smallestPivots">For each column, the value its pivot must exceed.</param>
    /// <returns>−1, or the number of the first column whose pivot is not large enough.</returns>
    public int FactorPanel(Span<double> panel, int rows, int columns, ReadOnlySpan<double> smallestPivots) =>
        FactorPanel(ref MemoryMarshal.GetReference(panel), rows, rows, columns, smallestPivots);

    /// <summary>C = −A Aᵀ, lower triangle; the entries above the diagonal are left undefined.</summary>
    /// <param name="target">C, of the given order, packed column-major.</param>
    /// <param name="left">First value of A.</param>
    /// <param name="leadingDimension">Distance between the columns of A.</param>
    /// <param name="order">Rows of A.</param>
    /// <param name="depth">Columns of A; one or more.</param>
    public void SetNegativeSquare(
        Span<double> target, ReadOnlySpan<double> left, int leadingDimension, int order, int depth)
    {
        ref double a = ref MemoryMarshal.GetReference(left);
        Product(
            ref MemoryMarshal.GetReference(target), order, ref a, ref a, leadingDimension, order, order, depth, true);
    }

    /// <summary>y += factor · x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void AddScaled(ReadOnlySpan<double> x, double factor, Span<double> y)
    {
        ref double from = ref MemoryMarshal.GetReference(x);
        ref double to = ref MemoryMarshal.GetReference(y);
        Vector256<double> factors = Vector256.Create(factor);
        int i = 0;
        for (; i <= x.Length - 4; i += 4)
        {
            Vector256.FusedMultiplyAdd(
                factors, Vector256.LoadUnsafe(ref from, (nuint)i), Vector256.LoadUnsafe(ref to, (nuint)i))
                .StoreUnsafe(ref to, (nuint)i);
        }

        for (; i < x.Length; i++)
        {
            Unsafe.Add(ref to, i) = Math.FusedMultiplyAdd(factor, Unsafe.Add(ref from, i), Unsafe.Add(ref to, i));
        }
    }

    /// <summary>The sum of x · y, in four interleaved partial sums.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        ref double left = ref MemoryMarshal.GetReference(x);
        ref double right = ref MemoryMarshal.GetReference(y);
        Vector256<double> sums = default;
        int i = 0;
        for (; i <= x.Length - 4; i += 4)
        {
            sums = Vector256.FusedMultiplyAdd(
                Vector256.LoadUnsafe(ref left, (nuint)i), Vector256.LoadUnsafe(ref right, (nuint)i), sums);
        }

        double sum = (sums[0] + sums[1]) + (sums[2] + sums[3]);
        for (; i < x.Length; i++)
        {
            sum = Math.FusedMultiplyAdd(Unsafe.Add(ref left, i), Unsafe.Add(ref right, i), sum);
        }

        return sum;
    }

    private int FactorPanel(
        ref double panel, int stride, int rows, int columns, ReadOnlySpan<double> smallestPivots)
    {
        if (columns <= NarrowColumns)
        {
            return FactorNarrowPanel(ref panel, stride, rows, columns, smallestPivots);
        }

        int half = Math.Max(NarrowColumns, columns / 2 / NarrowColumns * NarrowColumns);
        int failed = FactorPanel(ref panel, stride, rows, half, smallestPivots[..half]);
        if (failed >= 0)
        {
            return failed;
        }

        ref double below = ref Unsafe.Add(ref panel, half);
        ref double rest = ref Unsafe.Add(ref panel, half + ((nint)half * stride));
        Product(ref rest, stride, ref below, ref below, stride, rows - half, columns - half, half, false);
        failed = FactorPanel(ref rest, stride, rows - half, columns - half, smallestPivots[half..]);
        return failed < 0 ? -1 : half + failed;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static int FactorNarrowPanel(
        ref double panel, int stride, int rows, int columns, ReadOnlySpan<double> smallestPivots)
    {
        for (int j = 0; j < columns; j++)
        {
            ref double column = ref Unsafe.Add(ref panel, (nint)j * stride);
            if (j > 0)
            {
                SubtractEarlierColumns(ref panel, stride, rows, j);
            }

            double pivot = Unsafe.Add(ref column, j);

            // Written so that a pivot that is not a number fails too.
            if (!(pivot > smallestPivots[j]) || double.IsPositiveInfinity(pivot))
            {
                return j;
            }

            double root = Math.Sqrt(pivot);
            Unsafe.Add(ref column, j) = root;
            Scale(ref Unsafe.Add(ref column, j + 1), rows - j - 1, 1 / root);
        }

        return -1;
    }

    /// <summary>Takes from column j, from its diagonal down, its products with the columns before it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void SubtractEarlierColumns(ref double panel, nint stride, int rows, int j)
    {
        ref double column = ref Unsafe.Add(ref panel, j * stride);
        int i = j;
        for (; i <= rows - 8; i += 8)
        {
            Vector256<double> low = Vector256.LoadUnsafe(ref column, (nuint)i);
            Vector256<double> high = Vector256.LoadUnsafe(ref column, (nuint)i + 4);
            ref double source = ref panel;
            for (int t = 0; t < j; t++)
            {
                Vector256<double> factor = Vector256.Create(-Unsafe.Add(ref source, j));
                low = Vector256.FusedMultiplyAdd(factor, Vector256.LoadUnsafe(ref source, (nuint)i), low);
                high = Vector256.FusedMultiplyAdd(factor, Vector256.LoadUnsafe(ref source, (nuint)i + 4), high);
                source = ref Unsafe.Add(ref source, stride);
            }

            low.StoreUnsafe(ref column, (nuint)i);
            high.StoreUnsafe(ref column, (nuint)i + 4);
        }

        for (; i < rows; i++)
        {
            double value = Unsafe.Add(ref column, i);
            ref double source = ref panel;
            for (int t = 0; t < j; t++)
            {
                value = Math.FusedMultiplyAdd(-Unsafe.Add(ref source, j), Unsafe.Add(ref source, i), value);
                source = ref Unsafe.Add(ref source, stride);
            }

            Unsafe.Add(ref column, i) = value;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Scale(ref double values, int count, double factor)
    {
        Vector256<double> factors = Vector256.Create(factor);
        int i = 0;
        for (; i <= count - 4; i += 4)
        {
            (Vector256.LoadUnsafe(ref values, (nuint)i) * factors).StoreUnsafe(ref values, (nuint)i);
        }

        for (; i < count; i++)
        {
            Unsafe.Add(ref values, i) *= factor;
        }
    }

    /// <summary>
    /// C −= A Bᵀ, or C = −A Bᵀ, for a C whose first entry lies on the diagonal of the matrix: tiles wholly above the
    /// diagonal are passed over.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Product(
        ref double c, nint strideC, ref double a, ref double b, nint stride, int rows, int columns, int depth, bool set)
    {
        ref double edge = ref MemoryMarshal.GetArrayDataReference(_edgeTile);
        ref double packedLeft = ref MemoryMarshal.GetArrayDataReference(_packedLeft);
        ref double packedRight = ref MemoryMarshal.GetArrayDataReference(_packedRight);
        for (int fromColumn = 0; fromColumn < columns; fromColumn += BlockColumns)
        {
            int blockColumns = Math.Min(BlockColumns, columns - fromColumn);
            for (int fromDepth = 0; fromDepth < depth; fromDepth += BlockDepth)
            {
                int blockDepth = Math.Min(BlockDepth, depth - fromDepth);
                bool overwrite = set && fromDepth == 0;
                for (int j = 0; j < blockColumns; j += TileColumns)
                {
                    Pack(
                        ref Unsafe.Add(ref b, fromColumn + j + (fromDepth * stride)),
                        stride,
                        Math.Min(TileColumns, blockColumns - j),
                        TileColumns,
                        blockDepth,
                        ref Unsafe.Add(ref packedRight, j * blockDepth));
                }

                for (int i = fromColumn; i < rows; i += TileRows)
                {
                    int tileRows = Math.Min(TileRows, rows - i);
                    Pack(
                        ref Unsafe.Add(ref a, i + (fromDepth * stride)),
                        stride,
                        tileRows,
                        TileRows,
                        blockDepth,
                        ref packedLeft);
                    int lastColumn = Math.Min(blockColumns, i + TileRows - fromColumn);
                    for (int j = 0; j < lastColumn; j += TileColumns)
                    {
                        ref double right = ref Unsafe.Add(ref packedRight, j * blockDepth);
                        ref double target = ref Unsafe.Add(ref c, i + ((fromColumn + j) * strideC));
                        int tileColumns = Math.Min(TileColumns, blockColumns - j);
                        if (tileRows == TileRows && tileColumns == TileColumns)
                        {
                            Tile(ref packedLeft, ref right, blockDepth, ref target, strideC, overwrite);
                        }
                        else
                        {
                            Tile(ref packedLeft, ref right, blockDepth, ref edge, TileRows, true);
                            AddEdge(ref edge, tileRows, tileColumns, ref target, strideC, overwrite);
                        }
                    }
                }
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Pack(
        ref double source, nint stride, int count, int tile, int depth, ref double packed)
    {
        for (int k = 0; k < depth; k++)
        {
            if (count == TileRows)
            {
                Vector256.LoadUnsafe(ref source).StoreUnsafe(ref packed);
                Vector256.LoadUnsafe(ref source, 4).StoreUnsafe(ref packed, 4);
            }
            else if (count == tile)
            {
                Vector256.LoadUnsafe(ref source).StoreUnsafe(ref packed);
            }
            else
            {
                for (int i = 0; i < tile; i++)
                {
                    Unsafe.Add(ref packed, i) = i < count ? Unsafe.Add(ref source, i) : 0;
                }
            }

            source = ref Unsafe.Add(ref source, stride);
            packed = ref Unsafe.Add(ref packed, tile);
        }
    }

    /// <summary>One 8 × 4 tile, kept in eight vector registers while the whole depth is summed.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Tile(ref double left, ref double right, int depth, ref double c, nint strideC, bool overwrite)
    {
        Vector256<double> c00 = default, c01 = default, c10 = default, c11 = default;
        Vector256<double> c20 = default, c21 = default, c30 = default, c31 = default;
        for (int k = 0; k < depth; k++)
        {
            Vector256<double> low = Vector256.LoadUnsafe(ref left);
            Vector256<double> high = Vector256.LoadUnsafe(ref left, 4);
            Vector256<double> factor = Vector256.Create(right);
            c00 = Vector256.FusedMultiplyAdd(low, factor, c00);
            c01 = Vector256.FusedMultiplyAdd(high, factor, c01);
            factor = Vector256.Create(Unsafe.Add(ref right, 1));
            c10 = Vector256.FusedMultiplyAdd(low, factor, c10);
            c11 = Vector256.FusedMultiplyAdd(high, factor, c11);
            factor = Vector256.Create(Unsafe.Add(ref right, 2));
            c20 = Vector256.FusedMultiplyAdd(low, factor, c20);
            c21 = Vector256.FusedMultiplyAdd(high, factor, c21);
            factor = Vector256.Create(Unsafe.Add(ref right, 3));
            c30 = Vector256.FusedMultiplyAdd(low, factor, c30);
            c31 = Vector256.FusedMultiplyAdd(high, factor, c31);
            left = ref Unsafe.Add(ref left, TileRows);
            right = ref Unsafe.Add(ref right, TileColumns);
        }

        StoreColumn(c00, c01, ref c, overwrite);
        StoreColumn(c10, c11, ref Unsafe.Add(ref c, strideC), overwrite);
        StoreColumn(c20, c21, ref Unsafe.Add(ref c, 2 * strideC), overwrite);
        StoreColumn(c30, c31, ref Unsafe.Add(ref c, 3 * strideC), overwrite);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void StoreColumn(Vector256<double> low, Vector256<double> high, ref double c, bool overwrite)
    {
        if (overwrite)
        {
            (-low).StoreUnsafe(ref c);
            (-high).StoreUnsafe(ref c, 4);
        }
        else
        {
            (Vector256.LoadUnsafe(ref c) - low).StoreUnsafe(ref c);
            (Vector256.LoadUnsafe(ref c, 4) - high).StoreUnsafe(ref c, 4);
        }
    }

    private static void AddEdge(ref double tile, int rows, int columns, ref double c, nint strideC, bool overwrite)
    {
        for (int j = 0; j < columns; j++)
        {
            for (int i = 0; i < rows; i++)
            {
                ref double target = ref Unsafe.Add(ref c, i + (j * strideC));
                double value = Unsafe.Add(ref tile, i + (j * TileRows));
                target = overwrite ? value : target + value;
            }
        }
    }
}

namespace CopperPath.LinearAlgebra;

/// <summary>
/// The incomplete Cholesky factor without fill, IC(0): entries outside the pattern of the matrix are dropped as they
/// arise.
/// </summary>
/// <remarks>
/// Meijerink and van der Vorst, "An iterative solution method for linear systems of which the coefficient matrix is a
/// symmetric M-matrix", Math. Comp. 31 (1977), who show that it exists for conductance matrices without negative
/// conductances. Elsewhere a pivot may fail; the diagonal is then raised until none does (Manteuffel, Math. Comp. 34,
/// 1980), and <see cref="DiagonalShift"/> says by what share.
/// </remarks>
public sealed class IncompleteCholesky : IPreconditioner
{
    private const double FirstShift = 1e-3;
    private const double LargestShift = 1e3;

    private readonly SymmetricSparseMatrix _factor;

    private IncompleteCholesky(SymmetricSparseMatrix factor, double diagonalShift)
    {
        _factor = factor;
        DiagonalShift = diagonalShift;
    }

    /// <summary>Share by which the diagonal was raised; zero where the plain factor exists.</summary>
    public double DiagonalShift { get; }

    /// <summary>Null when a diagonal entry is missing or not positive, or no shift helps.</summary>
    /// <param name="matrix">The matrix to approximate; rows ascending in every column.</param>
    public static IncompleteCholesky? TryCreate(SymmetricSparseMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        for (double shift = 0; shift <= LargestShift; shift = Math.Max(FirstShift, 4 * shift))
        {
            double[] values = [.. matrix.Values];
            if (Factor(matrix, values, shift))
            {
                return new IncompleteCholesky(matrix with { Values = values }, shift);
            }
        }

        return null;
    }

    private static bool Factor(SymmetricSparseMatrix matrix, double[] values, double shift)
    {
        int size = matrix.Size;
        int[] pointers = matrix.ColumnPointers;
        int[] rows = matrix.RowIndices;

        // Finished columns wait in a list at the next row they have an entry in; cursor is that entry.
        int[] cursor = new int[size];
        int[] listHead = new int[size];
        int[] listNext = new int[size];
        int[] slot = new int[size];
        Array.Fill(listHead, -1);
        Array.Fill(slot, -1);
        for (int j = 0; j < size; j++)
        {
            int first = pointers[j];
            int end = pointers[j + 1];
            if (first == end || rows[first] != j)
            {
                return false;
            }

            values[first] *= 1 + shift;
            for (int k = first; k < end; k++)
            {
                slot[rows[k]] = k;
            }

            int column = listHead[j];
            while (column != -1)
            {
                int following = listNext[column];
                int from = cursor[column];
                double multiplier = values[from];
                for (int k = from; k < pointers[column + 1]; k++)
                {
                    int target = slot[rows[k]];
                    if (target >= 0)
                    {
                        values[target] -= multiplier * values[k];
                    }
                }

                Wait(column, from + 1);
                column = following;
            }

            if (!(values[first] > 0) || double.IsPositiveInfinity(values[first]))
            {
                return false;
            }

            double root = Math.Sqrt(values[first]);
            values[first] = root;
            slot[j] = -1;
            for (int k = first + 1; k < end; k++)
            {
                values[k] /= root;
                slot[rows[k]] = -1;
            }

            Wait(j, first + 1);
        }

        return true;

        void Wait(int column, int at)
        {
            if (at < pointers[column + 1])
            {
                cursor[column] = at;
                listNext[column] = listHead[rows[at]];
                listHead[rows[at]] = column;
            }
        }
    }

    /// <inheritdoc/>
    public void Apply(ReadOnlySpan<double> residual, Span<double> result)
    {
        int[] pointers = _factor.ColumnPointers;
        int[] rows = _factor.RowIndices;
        double[] values = _factor.Values;
        residual.CopyTo(result);
        for (int j = 0; j < result.Length; j++)
        {
            double value = result[j] / values[pointers[j]];
            result[j] = value;
            for (int k = pointers[j] + 1; k < pointers[j + 1]; k++)
            {
                result[rows[k]] -= values[k] * value;
            }
        }

        for (int j = result.Length - 1; j >= 0; j--)
        {
            double sum = result[j];
            for (int k = pointers[j] + 1; k < pointers[j + 1]; k++)
            {
                sum -= values[k] * result[rows[k]];
            }

            result[j] = sum / values[pointers[j]];
        }
    }
}

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Symmetric successive over-relaxation: one sweep through the unknowns forwards and one backwards.
/// </summary>
/// <remarks>
/// M = ω/(2 − ω) (D/ω + L) D⁻¹ (D/ω + Lᵀ) for A = L + D + Lᵀ: Saad, Iterative Methods for Sparse Linear Systems,
/// section 10.2. ω = 1 is symmetric Gauss–Seidel.
/// </remarks>
public sealed class SymmetricOverRelaxation : IPreconditioner
{
    private readonly SymmetricSparseMatrix _matrix;
    private readonly double _factor;

    private SymmetricOverRelaxation(SymmetricSparseMatrix matrix, double factor)
    {
        _matrix = matrix;
        _factor = factor;
    }

    /// <summary>Null when a diagonal entry is missing or not positive.</summary>
    /// <param name="matrix">The matrix to approximate; rows ascending in every column.</param>
    /// <param name="relaxationFactor">ω, above 0 and below 2.</param>
    public static SymmetricOverRelaxation? TryCreate(SymmetricSparseMatrix matrix, double relaxationFactor = 1.5)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(relaxationFactor, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(relaxationFactor, 2);
        for (int j = 0; j < matrix.Size; j++)
        {
            int first = matrix.ColumnPointers[j];
            if (first == matrix.ColumnPointers[j + 1] || matrix.RowIndices[first] != j || !(matrix.Values[first] > 0))
            {
                return null;
            }
        }

        return new SymmetricOverRelaxation(matrix, relaxationFactor);
    }

    /// <inheritdoc/>
    public void Apply(ReadOnlySpan<double> residual, Span<double> result)
    {
        int[] pointers = _matrix.ColumnPointers;
        int[] rows = _matrix.RowIndices;
        double[] values = _matrix.Values;
        residual.CopyTo(result);
        for (int j = 0; j < result.Length; j++)
        {
            double value = result[j] * _factor / values[pointers[j]];
            result[j] = value;
            for (int k = pointers[j] + 1; k < pointers[j + 1]; k++)
            {
                result[rows[k]] -= values[k] * value;
            }
        }

        double scale = (2 - _factor) / _factor;
        for (int j = result.Length - 1; j >= 0; j--)
        {
            double diagonal = values[pointers[j]];
            double sum = result[j] * scale * diagonal;
            for (int k = pointers[j] + 1; k < pointers[j + 1]; k++)
            {
                sum -= values[k] * result[rows[k]];
            }

            result[j] = sum * _factor / diagonal;
        }
    }
}

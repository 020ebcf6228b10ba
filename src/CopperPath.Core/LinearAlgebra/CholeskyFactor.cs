using System.Buffers;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// The sparse Cholesky factor of a symmetric positive definite matrix: the rows and columns are
/// permuted to keep it sparse, and the permuted matrix is L Lᵀ.
/// </summary>
public sealed class CholeskyFactor
{
    private readonly SymmetricSparseMatrix _matrix;
    private readonly SupernodalStructure _structure;
    private readonly double[] _values;

    private CholeskyFactor(SymmetricSparseMatrix matrix, SupernodalStructure structure, double[] values)
    {
        _matrix = matrix;
        _structure = structure;
        _values = values;
    }

    /// <summary>Number of unknowns.</summary>
    public int Size => _structure.Size;

    /// <summary>Entries of the factor that are not zero by structure.</summary>
    public long NonZeroCount => _structure.NonZeroCount;

    /// <summary>Entries stored for it: some zeros are stored where that makes the work faster.</summary>
    public long StoredCount => _structure.StoredCount;

    /// <summary>Multiply-and-add operations the factorization took.</summary>
    public double OperationCount => _structure.OperationCount;

    /// <summary>
    /// Factors a matrix. A matrix that can not be factored is a named outcome, not an exception.
    /// </summary>
    /// <param name="matrix">Each entry of the lower triangle stated once.</param>
    /// <param name="options">Order, threads and tolerance; null for the defaults.</param>
    public static FactorResult Factor(SymmetricSparseMatrix matrix, CholeskyOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        options ??= new CholeskyOptions();
        if (matrix.Size == 0)
        {
            return new FactorResult(FactorOutcome.Empty, null, -1);
        }

        AdjacencyGraph graph = AdjacencyGraph.Of(matrix);
        int[] order = options.Order ?? FillReducingOrdering.Compute(graph, options.ThreadCount);
        SupernodalStructure structure = SupernodalStructure.Analyze(graph, order);
        if (!structure.FitsInArrays)
        {
            return new FactorResult(FactorOutcome.TooLarge, null, -1);
        }

        PermutedMatrix permuted = new(matrix, structure.Position);
        (double[]? values, int failedColumn) = MultifrontalFactorization.Compute(
            structure, permuted, options.PivotTolerance ?? matrix.Size * Math.ScaleB(1, -52), options.ThreadCount);
        return values is null
            ? new FactorResult(FactorOutcome.NotPositiveDefinite, null, structure.Order[failedColumn])
            : new FactorResult(FactorOutcome.Success, new CholeskyFactor(matrix, structure, values), -1);
    }

    /// <summary>Solves A x = b. The two spans may be the same; both hold <see cref="Size"/> values.</summary>
    public void Solve(ReadOnlySpan<double> b, Span<double> x)
    {
        double[] work = ArrayPool<double>.Shared.Rent(2 * Size);
        Span<double> y = work.AsSpan(0, Size);
        Span<double> gathered = work.AsSpan(Size, Size);
        int[] order = _structure.Order;
        for (int k = 0; k < y.Length; k++)
        {
            y[k] = b[order[k]];
        }

        for (int s = 0; s < _structure.Count; s++)
        {
            SolveForward(s, y, gathered);
        }

        for (int s = _structure.Count - 1; s >= 0; s--)
        {
            SolveBackward(s, y, gathered);
        }

        for (int k = 0; k < y.Length; k++)
        {
            x[order[k]] = y[k];
        }

        ArrayPool<double>.Shared.Return(work);
    }

    private void SolveForward(int supernode, Span<double> y, Span<double> gathered)
    {
        ReadOnlySpan<int> rows = _structure.RowsOf(supernode);
        int columns = _structure.ColumnCount(supernode);
        int below = rows.Length - columns;
        ReadOnlySpan<double> panel = _values.AsSpan(
            (int)_structure.ValueStarts[supernode], rows.Length * columns);
        Span<double> own = y.Slice(_structure.ColumnStarts[supernode], columns);
        gathered[..below].Clear();
        for (int j = 0; j < columns; j++)
        {
            ReadOnlySpan<double> column = panel.Slice(j * rows.Length, rows.Length);
            double value = own[j] / column[j];
            own[j] = value;
            DenseKernels.AddScaled(column[(j + 1)..columns], -value, own[(j + 1)..]);
            DenseKernels.AddScaled(column[columns..], value, gathered[..below]);
        }

        for (int i = 0; i < below; i++)
        {
            y[rows[columns + i]] -= gathered[i];
        }
    }

    private void SolveBackward(int supernode, Span<double> y, Span<double> gathered)
    {
        ReadOnlySpan<int> rows = _structure.RowsOf(supernode);
        int columns = _structure.ColumnCount(supernode);
        ReadOnlySpan<double> panel = _values.AsSpan(
            (int)_structure.ValueStarts[supernode], rows.Length * columns);
        for (int i = 0; i < rows.Length; i++)
        {
            gathered[i] = y[rows[i]];
        }

        for (int j = columns - 1; j >= 0; j--)
        {
            ReadOnlySpan<double> column = panel.Slice(j * rows.Length, rows.Length);
            gathered[j] = (gathered[j] - DenseKernels.Dot(column[(j + 1)..], gathered[(j + 1)..rows.Length]))
                / column[j];
        }

        gathered[..columns].CopyTo(y.Slice(_structure.ColumnStarts[supernode], columns));
    }

    /// <summary>
    /// Solves for several right-hand sides, held one after the other in <paramref name="b"/> and likewise in
    /// <paramref name="x"/>. Each comes out exactly as <see cref="Solve"/> gives it alone.
    /// </summary>
    public void SolveMany(ReadOnlySpan<double> b, Span<double> x, int count) =>
        SimultaneousSolve.Run(_structure, _values, b, x, count);

    /// <summary>
    /// Solves A x = b and corrects x by solving for its residual while that makes the residual smaller, at most
    /// <paramref name="maxCorrections"/> times.
    /// </summary>
    /// <returns>The evidence: the residual that is left.</returns>
    public SolveEvidence SolveRefined(ReadOnlySpan<double> b, Span<double> x, int maxCorrections = 3)
    {
        Solve(b, x);
        double[] residual = new double[Size];
        double[] correction = new double[Size];
        double[] candidate = new double[Size];
        double remaining = Residual(b, x, residual);
        int corrections = 0;
        while (corrections < maxCorrections && remaining > 0)
        {
            Solve(residual, correction);
            for (int i = 0; i < candidate.Length; i++)
            {
                candidate[i] = x[i] + correction[i];
            }

            double improved = Residual(b, candidate, residual);

            // Written so that a residual that is not a number is no improvement.
            if (!(improved < remaining))
            {
                Residual(b, x, residual);
                break;
            }

            bool isSlow = improved > remaining / 2;
            candidate.CopyTo(x);
            remaining = improved;
            corrections++;
            if (isSlow)
            {
                break;
            }
        }

        return new SolveEvidence(remaining, BackwardError(b, x, residual), corrections);
    }

    /// <summary>Leaves b − A x in <paramref name="residual"/> and returns its norm over that of b.</summary>
    private double Residual(ReadOnlySpan<double> b, ReadOnlySpan<double> x, double[] residual)
    {
        _matrix.Multiply(x, residual);
        double squares = 0;
        double reference = 0;
        for (int i = 0; i < residual.Length; i++)
        {
            residual[i] = b[i] - residual[i];
            squares += residual[i] * residual[i];
            reference += b[i] * b[i];
        }

        return reference == 0 ? Math.Sqrt(squares) : Math.Sqrt(squares / reference);
    }

    /// <summary>Largest residual over what the terms of its row add up to in size: ‖A‖ ‖x‖ + ‖b‖ in the ∞-norm.</summary>
    private double BackwardError(ReadOnlySpan<double> b, ReadOnlySpan<double> x, double[] residual)
    {
        double[] rowSums = new double[Size];
        for (int j = 0; j < Size; j++)
        {
            for (int k = _matrix.ColumnPointers[j]; k < _matrix.ColumnPointers[j + 1]; k++)
            {
                int i = _matrix.RowIndices[k];
                double size = Math.Abs(_matrix.Values[k]);
                rowSums[j] += size;
                if (i != j)
                {
                    rowSums[i] += size;
                }
            }
        }

        double scale = (LargestMagnitude(rowSums) * LargestMagnitude(x)) + LargestMagnitude(b);
        return scale == 0 ? 0 : LargestMagnitude(residual) / scale;
    }

    private static double LargestMagnitude(ReadOnlySpan<double> values)
    {
        double largest = 0;
        foreach (double value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        return largest;
    }
}

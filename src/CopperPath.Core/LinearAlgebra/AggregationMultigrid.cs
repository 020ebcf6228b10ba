namespace CopperPath.LinearAlgebra;

/// <summary>
/// Multigrid by aggregation: unknowns are gathered into groups of up to four along their strongest couplings, the groups
/// are the unknowns of a coarser matrix, and so on until that is small enough to factor. For conductance matrices.
/// </summary>
/// <remarks>
/// Groups by pairing twice, after Notay, "An aggregation-based algebraic multigrid method", ETNA 37 (2010); one sweep of
/// Gauss-Seidel forwards before and one backwards after each coarse correction, which is made twice (W cycle). The
/// whole is a symmetric positive definite operator, as the conjugate gradient method asks.
/// </remarks>
public sealed class AggregationMultigrid : IPreconditioner
{
    private const int CoarsestSize = 600;

    /// <summary>A level that shrinks less than this is not worth having.</summary>
    private const double LeastShrinking = 0.8;

    private readonly List<Level> _levels;
    private readonly CholeskyFactor _coarsest;

    private AggregationMultigrid(List<Level> levels, CholeskyFactor coarsest) => (_levels, _coarsest) = (levels, coarsest);

    /// <summary>Null when a diagonal entry is missing or not positive, or the coarsest matrix can not be factored.</summary>
    /// <param name="matrix">The matrix to approximate; rows ascending in every column. It may change afterwards.</param>
    public static AggregationMultigrid? TryCreate(SymmetricSparseMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        List<Level> levels = [];
        SymmetricSparseMatrix current = matrix with { Values = [.. matrix.Values] };
        while (current.Size > CoarsestSize)
        {
            if (!HasPositiveDiagonal(current))
            {
                return null;
            }

            int[] pairs = PairwiseGroups.Of(current, out int pairCount);
            SymmetricSparseMatrix paired = Coarser(current, pairs, pairCount);
            int[] second = PairwiseGroups.Of(paired, out int count);
            if (count > LeastShrinking * current.Size)
            {
                break;
            }

            levels.Add(new Level(current, [.. pairs.Select(pair => second[pair])], count));
            current = Coarser(paired, second, count);
        }

        return CholeskyFactor.Factor(current).Factor is { } coarsest ? new AggregationMultigrid(levels, coarsest) : null;
    }

    /// <inheritdoc/>
    public void Apply(ReadOnlySpan<double> residual, Span<double> result) => Cycle(0, residual, result);

    private void Cycle(int depth, ReadOnlySpan<double> b, Span<double> x)
    {
        if (depth == _levels.Count)
        {
            _coarsest.Solve(b, x);
            return;
        }

        Level level = _levels[depth];
        level.SweepForward(b, x);
        level.ResidualAfterForwardSweep(x);
        level.Restrict();
        Cycle(depth + 1, level.CoarseB, level.CoarseX);
        if (depth + 1 < _levels.Count)
        {
            // What the first correction left over, once more.
            SymmetricSparseMatrix coarse = _levels[depth + 1].Matrix;
            coarse.Multiply(level.CoarseX, level.CoarseRest);
            for (int i = 0; i < level.CoarseRest.Length; i++)
            {
                level.CoarseRest[i] = level.CoarseB[i] - level.CoarseRest[i];
            }

            Cycle(depth + 1, level.CoarseRest, level.CoarseStep);
            for (int i = 0; i < level.CoarseX.Length; i++)
            {
                level.CoarseX[i] += level.CoarseStep[i];
            }
        }

        level.Prolong(x);
        level.SweepBackward(b, x);
    }

    private static bool HasPositiveDiagonal(SymmetricSparseMatrix matrix)
    {
        for (int j = 0; j < matrix.Size; j++)
        {
            int first = matrix.ColumnPointers[j];
            if (first == matrix.ColumnPointers[j + 1] || matrix.RowIndices[first] != j || !(matrix.Values[first] > 0))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The matrix between groups: sums of the entries between their members.</summary>
    private static SymmetricSparseMatrix Coarser(SymmetricSparseMatrix matrix, int[] groupOf, int groupCount)
    {
        SparseMatrixBuilder builder = new(groupCount, matrix.NonZeroCount);
        for (int j = 0; j < matrix.Size; j++)
        {
            for (int k = matrix.ColumnPointers[j]; k < matrix.ColumnPointers[j + 1]; k++)
            {
                int i = matrix.RowIndices[k];

                // An entry inside a group, off the diagonal, stands for itself and its mirror image.
                bool counts2 = groupOf[i] == groupOf[j] && i != j;
                builder.Add(groupOf[i], groupOf[j], counts2 ? 2 * matrix.Values[k] : matrix.Values[k]);
            }
        }

        return builder.Build();
    }

    /// <summary>One matrix of the hierarchy with the groups that make the next, and room to work in.</summary>
    private sealed class Level(SymmetricSparseMatrix matrix, int[] groupOf, int groupCount)
    {
        private readonly double[] _residual = new double[matrix.Size];

        public SymmetricSparseMatrix Matrix => matrix;

        public double[] CoarseB { get; } = new double[groupCount];

        public double[] CoarseX { get; } = new double[groupCount];

        public double[] CoarseRest { get; } = new double[groupCount];

        public double[] CoarseStep { get; } = new double[groupCount];

        /// <summary>Gauss-Seidel from zero: (D + L) x = b.</summary>
        public void SweepForward(ReadOnlySpan<double> b, Span<double> x)
        {
            int[] pointers = matrix.ColumnPointers;
            int[] rows = matrix.RowIndices;
            double[] values = matrix.Values;
            b.CopyTo(x);
            for (int j = 0; j < x.Length; j++)
            {
                int first = pointers[j];
                double value = x[j] / values[first];
                x[j] = value;
                for (int k = first + 1; k < pointers[j + 1]; k++)
                {
                    x[rows[k]] -= values[k] * value;
                }
            }
        }

        /// <summary>What the forward sweep leaves: minus the upper triangle times x.</summary>
        public void ResidualAfterForwardSweep(ReadOnlySpan<double> x)
        {
            int[] pointers = matrix.ColumnPointers;
            for (int j = 0; j < x.Length; j++)
            {
                double sum = 0;
                for (int k = pointers[j] + 1; k < pointers[j + 1]; k++)
                {
                    sum += matrix.Values[k] * x[matrix.RowIndices[k]];
                }

                _residual[j] = -sum;
            }
        }

        public void Restrict()
        {
            Array.Clear(CoarseB);
            for (int i = 0; i < groupOf.Length; i++)
            {
                CoarseB[groupOf[i]] += _residual[i];
            }
        }

        public void Prolong(Span<double> x)
        {
            for (int i = 0; i < groupOf.Length; i++)
            {
                x[i] += CoarseX[groupOf[i]];
            }
        }

        /// <summary>Gauss-Seidel backwards from x: x + (D + Lᵀ)⁻¹ (b - A x).</summary>
        public void SweepBackward(ReadOnlySpan<double> b, Span<double> x)
        {
            int[] pointers = matrix.ColumnPointers;
            int[] rows = matrix.RowIndices;
            double[] values = matrix.Values;
            matrix.Multiply(x, _residual);
            for (int j = x.Length - 1; j >= 0; j--)
            {
                int first = pointers[j];
                double sum = b[j] - _residual[j];
                for (int k = first + 1; k < pointers[j + 1]; k++)
                {
                    sum -= values[k] * _residual[rows[k]];
                }

                // From here on the place of the residual holds the step.
                _residual[j] = sum / values[first];
                x[j] += _residual[j];
            }
        }
    }
}

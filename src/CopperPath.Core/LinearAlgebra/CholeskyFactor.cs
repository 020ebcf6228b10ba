using System.Buffers;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// The sparse Cholesky factor of a symmetric positive definite matrix: the rows and columns are
/// permuted to keep it sparse, and the permuted matrix is L Lᵀ.
/// </summary>
public sealed class CholeskyFactor
{
    private const long LeastSharedWork = 200_000;

    private readonly SymmetricSparseMatrix _matrix;
    private readonly SupernodalStructure _structure;
    private readonly EliminationTasks _tasks;
    private readonly double[] _values;
    private readonly int _threadCount;

    private CholeskyFactor(
        SymmetricSparseMatrix matrix, SupernodalStructure structure, EliminationTasks tasks, double[] values, int threadCount)
    {
        _matrix = matrix;
        _structure = structure;
        _tasks = tasks;
        _values = values;
        _threadCount = threadCount;
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

        EliminationTasks tasks = new(structure);
        PermutedMatrix permuted = new(matrix, structure.Position);
        (double[]? values, int failedColumn) = MultifrontalFactorization.Compute(
            structure, tasks, permuted, options.PivotTolerance ?? matrix.Size * Math.ScaleB(1, -52), options.ThreadCount);
        return values is null
            ? new FactorResult(FactorOutcome.NotPositiveDefinite, null, structure.Order[failedColumn])
            : new FactorResult(FactorOutcome.Success, new CholeskyFactor(matrix, structure, tasks, values, options.ThreadCount), -1);
    }

    /// <summary>Solves A x = b. The two spans may be the same; both hold <see cref="Size"/> values.</summary>
    public void Solve(ReadOnlySpan<double> b, Span<double> x)
    {
        double[] y = ArrayPool<double>.Shared.Rent(Size);
        int[] order = _structure.Order;
        for (int k = 0; k < order.Length; k++)
        {
            y[k] = b[order[k]];
        }

        Substitution<OneRightSide>.Run(_structure, _values, _tasks, y, ThreadsFor(1));
        for (int k = 0; k < order.Length; k++)
        {
            x[order[k]] = y[k];
        }

        ArrayPool<double>.Shared.Return(y);
    }

    /// <summary>
    /// Solves for several right-hand sides, held one after the other in <paramref name="b"/> and likewise in
    /// <paramref name="x"/>, which may be the same. Each comes out exactly as <see cref="Solve"/> gives it alone.
    /// </summary>
    public void SolveMany(ReadOnlyMemory<double> b, Memory<double> x, int count)
    {
        int done = 0;
        while (done < count)
        {
            int width = count - done > FourLanes.Count ? TwelveLanes.Count : FourLanes.Count;
            int part = Math.Min(width, count - done);
            int threads = ThreadsFor(width);
            double[] y = ArrayPool<double>.Shared.Rent(Size * width);
            SideBySide.Load(b.Slice(done * Size, part * Size), _structure.Position, y, width, threads);
            if (width == FourLanes.Count)
            {
                Substitution<RightSidesAbreast<FourLanes>>.Run(_structure, _values, _tasks, y, threads);
            }
            else
            {
                Substitution<RightSidesAbreast<TwelveLanes>>.Run(_structure, _values, _tasks, y, threads);
            }

            SideBySide.Store(y, width, _structure.Position, x.Slice(done * Size, part * Size), threads);
            ArrayPool<double>.Shared.Return(y);
            done += part;
        }
    }

    /// <summary>Work below this much is done before a second thread has started.</summary>
    private int ThreadsFor(int rightSides) => _structure.StoredCount * rightSides < LeastSharedWork ? 1 : _threadCount;

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

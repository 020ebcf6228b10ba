using System.Buffers;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Computes the values of a Cholesky factor: each supernode gathers its entries of the matrix and what its children
/// pass up, is factored as a dense panel, and passes its own update to its parent.
/// </summary>
/// <remarks>
/// The multifrontal method: Liu, "The multifrontal method for sparse matrix solution: theory and practice", SIAM
/// Review 34 (1992). Children are added in ascending order, so the sums do not depend on which was ready first.
/// </remarks>
internal sealed class MultifrontalFactorization
{
    private readonly SupernodalStructure _structure;
    private readonly PermutedMatrix _matrix;
    private readonly double[] _smallestPivots;
    private readonly double[] _values;
    private readonly double[]?[] _updates;
    private readonly int[] _firstChild;
    private readonly int[] _nextSibling;
    private readonly int[] _failedColumn;

    private MultifrontalFactorization(
        SupernodalStructure structure, PermutedMatrix matrix, double pivotTolerance)
    {
        _structure = structure;
        _matrix = matrix;
        _smallestPivots = new double[structure.Size];
        for (int j = 0; j < structure.Size; j++)
        {
            _smallestPivots[j] = pivotTolerance * Math.Max(matrix.Diagonal(j), 0);
        }

        _values = new double[structure.ValueStarts[structure.Count]];
        _updates = new double[structure.Count][];
        _failedColumn = new int[structure.Count];
        Array.Fill(_failedColumn, -1);
        _firstChild = new int[structure.Count];
        _nextSibling = new int[structure.Count];
        Array.Fill(_firstChild, -1);
        for (int s = structure.Count - 1; s >= 0; s--)
        {
            int parent = structure.Parent[s];
            if (parent != -1)
            {
                _nextSibling[s] = _firstChild[parent];
                _firstChild[parent] = s;
            }
        }
    }

    /// <summary>
    /// The values of all supernodes, or none and the failed column (in the eliminated order). Where several branches of
    /// the tree fail, the lowest column is named.
    /// </summary>
    public static (double[]? Values, int FailedColumn) Compute(
        SupernodalStructure structure, EliminationTasks tasks, PermutedMatrix matrix, double pivotTolerance, int threads)
    {
        MultifrontalFactorization factorization = new(structure, matrix, pivotTolerance);
        tasks.RunUpwards(threads, () => new Workspace(structure.Size), (workspace, task) =>
        {
            (int first, int last) = tasks.RangeOf(task);
            for (int s = first; s <= last; s++)
            {
                factorization.Process(workspace, s);
            }
        });

        for (int s = 0; s < structure.Count; s++)
        {
            if (factorization._failedColumn[s] >= 0)
            {
                return (null, factorization._failedColumn[s]);
            }
        }

        return (factorization._values, -1);
    }

    private void Process(Workspace workspace, int supernode)
    {
        ReadOnlySpan<int> rows = _structure.RowsOf(supernode);
        int columnCount = _structure.ColumnCount(supernode);
        int firstColumn = _structure.ColumnStarts[supernode];
        Span<double> panel = _values.AsSpan((int)_structure.ValueStarts[supernode], rows.Length * columnCount);

        int failedBelow = FailureBelow(supernode);
        if (failedBelow >= 0)
        {
            _failedColumn[supernode] = failedBelow;
            ReleaseChildren(supernode);
            return;
        }

        int[] localRow = workspace.LocalRow;
        for (int t = 0; t < rows.Length; t++)
        {
            localRow[rows[t]] = t;
        }

        for (int j = 0; j < columnCount; j++)
        {
            _matrix.ScatterColumn(firstColumn + j, localRow, panel.Slice(j * rows.Length, rows.Length));
        }

        AddChildrenToPanel(workspace, supernode, panel, rows.Length, columnCount);
        int failed = workspace.Kernels.FactorPanel(
            panel, rows.Length, columnCount, _smallestPivots.AsSpan(firstColumn, columnCount));
        if (failed >= 0)
        {
            _failedColumn[supernode] = firstColumn + failed;
            ReleaseChildren(supernode);
            return;
        }

        int below = rows.Length - columnCount;
        if (below > 0)
        {
            double[] update = ArrayPool<double>.Shared.Rent(below * below);
            workspace.Kernels.SetNegativeSquare(update, panel[columnCount..], rows.Length, below, columnCount);
            AddChildrenToUpdate(workspace, supernode, update, below, columnCount);
            _updates[supernode] = update;
        }

        ReleaseChildren(supernode);
    }

    private int FailureBelow(int supernode)
    {
        for (int child = _firstChild[supernode]; child != -1; child = _nextSibling[child])
        {
            if (_failedColumn[child] >= 0)
            {
                return _failedColumn[child];
            }
        }

        return -1;
    }

    private void AddChildrenToPanel(
        Workspace workspace, int supernode, Span<double> panel, int rowCount, int columnCount)
    {
        workspace.ClearTargets();
        for (int child = _firstChild[supernode]; child != -1; child = _nextSibling[child])
        {
            ReadOnlySpan<int> target = workspace.AddTargets(_structure.RowsOf(child)[_structure.ColumnCount(child)..]);
            ReadOnlySpan<double> update = _updates[child].AsSpan(0, target.Length * target.Length);
            for (int j = 0; j < target.Length && target[j] < columnCount; j++)
            {
                AddColumn(
                    update.Slice(j * target.Length, target.Length),
                    panel.Slice(target[j] * rowCount, rowCount),
                    target,
                    j,
                    0);
            }
        }
    }

    private void AddChildrenToUpdate(
        Workspace workspace, int supernode, double[] ownUpdate, int order, int columnCount)
    {
        int targetStart = 0;
        for (int child = _firstChild[supernode]; child != -1; child = _nextSibling[child])
        {
            int length = _structure.RowCount(child) - _structure.ColumnCount(child);
            ReadOnlySpan<int> target = workspace.Targets(targetStart, length);
            targetStart += length;
            ReadOnlySpan<double> update = _updates[child].AsSpan(0, length * length);
            int j = 0;
            while (j < length && target[j] < columnCount)
            {
                j++;
            }

            for (; j < length; j++)
            {
                AddColumn(
                    update.Slice(j * length, length),
                    ownUpdate.AsSpan((target[j] - columnCount) * order, order),
                    target,
                    j,
                    columnCount);
            }
        }
    }

    private static void AddColumn(
        ReadOnlySpan<double> source, Span<double> destination, ReadOnlySpan<int> target, int from, int offset)
    {
        for (int i = from; i < target.Length; i++)
        {
            destination[target[i] - offset] += source[i];
        }
    }

    private void ReleaseChildren(int supernode)
    {
        for (int child = _firstChild[supernode]; child != -1; child = _nextSibling[child])
        {
            if (_updates[child] is { } update)
            {
                ArrayPool<double>.Shared.Return(update);
                _updates[child] = null;
            }
        }
    }

    /// <summary>What one thread needs to itself.</summary>
    private sealed class Workspace(int size) : IDisposable
    {
        private int[] _targets = new int[256];
        private int _targetCount;

        public DenseKernels Kernels { get; } = new();

        /// <summary>Place of each row in the current supernode; meaningful for its rows only.</summary>
        public int[] LocalRow { get; } = ArrayPool<int>.Shared.Rent(size);

        public void Dispose() => ArrayPool<int>.Shared.Return(LocalRow);

        public void ClearTargets() => _targetCount = 0;

        /// <summary>Looks up where the rows of a child lie in the current supernode.</summary>
        public ReadOnlySpan<int> AddTargets(ReadOnlySpan<int> rows)
        {
            if (_targetCount + rows.Length > _targets.Length)
            {
                Array.Resize(ref _targets, Math.Max(2 * _targets.Length, _targetCount + rows.Length));
            }

            int start = _targetCount;
            foreach (int row in rows)
            {
                _targets[_targetCount++] = LocalRow[row];
            }

            return Targets(start, rows.Length);
        }

        public ReadOnlySpan<int> Targets(int start, int length) => _targets.AsSpan(start, length);
    }
}

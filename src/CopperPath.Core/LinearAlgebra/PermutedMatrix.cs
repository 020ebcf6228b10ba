namespace CopperPath.LinearAlgebra;

/// <summary>The lower triangle of a symmetric matrix with rows and columns renumbered, rows in no set order.</summary>
internal sealed class PermutedMatrix
{
    private readonly int[] _starts;
    private readonly int[] _rows;
    private readonly double[] _values;
    private readonly double[] _diagonal;

    /// <param name="matrix">The matrix in its own numbering.</param>
    /// <param name="position">New number of each row and column.</param>
    public PermutedMatrix(SymmetricSparseMatrix matrix, int[] position)
    {
        int size = matrix.Size;
        _starts = new int[size + 1];
        _rows = new int[matrix.NonZeroCount];
        _values = new double[matrix.NonZeroCount];
        _diagonal = new double[size];
        for (int j = 0; j < size; j++)
        {
            for (int k = matrix.ColumnPointers[j]; k < matrix.ColumnPointers[j + 1]; k++)
            {
                _starts[Math.Min(position[j], position[matrix.RowIndices[k]]) + 1]++;
            }
        }

        for (int j = 0; j < size; j++)
        {
            _starts[j + 1] += _starts[j];
        }

        int[] next = _starts.AsSpan(0, size).ToArray();
        for (int j = 0; j < size; j++)
        {
            int column = position[j];
            for (int k = matrix.ColumnPointers[j]; k < matrix.ColumnPointers[j + 1]; k++)
            {
                int row = position[matrix.RowIndices[k]];
                int slot = next[Math.Min(row, column)]++;
                _rows[slot] = Math.Max(row, column);
                _values[slot] = matrix.Values[k];
                if (row == column)
                {
                    _diagonal[row] = matrix.Values[k];
                }
            }
        }
    }

    public double Diagonal(int column) => _diagonal[column];

    /// <summary>Writes the entries of a column to <paramref name="target"/> at the places its rows have there.</summary>
    public void ScatterColumn(int column, int[] place, Span<double> target)
    {
        for (int k = _starts[column]; k < _starts[column + 1]; k++)
        {
            target[place[_rows[k]]] = _values[k];
        }
    }
}

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Collects the contributions of a symmetric matrix and sums them into compressed columns.
/// </summary>
/// <remarks>
/// Each unordered pair of row and column is stated once: <c>Add(i, j, v)</c> and <c>Add(j, i, v)</c> mean the same and
/// both raise a(i,j) = a(j,i) by v. Contributions to one entry are summed in the order in which they were added, so a
/// matrix is reproduced bit by bit when it is assembled in the same order.
/// </remarks>
public sealed class SparseMatrixBuilder
{
    private int[] _rows;
    private int[] _columns;
    private double[] _values;
    private int _count;

    /// <param name="size">Number of rows and columns; zero or more.</param>
    /// <param name="expectedContributions">How many contributions to make room for; only a matter of speed.</param>
    public SparseMatrixBuilder(int size, int expectedContributions = 16)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(size);
        ArgumentOutOfRangeException.ThrowIfNegative(expectedContributions);
        Size = size;
        int capacity = Math.Max(expectedContributions, 16);
        _rows = new int[capacity];
        _columns = new int[capacity];
        _values = new double[capacity];
    }

    /// <summary>Number of rows and columns.</summary>
    public int Size { get; }

    /// <summary>Number of contributions added so far.</summary>
    public int ContributionCount => _count;

    /// <summary>Adds <paramref name="value"/> to the entry at the given row and column and to its mirror image.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An index lies outside the matrix: a fault of the caller.</exception>
    public void Add(int row, int column, double value)
    {
        if ((uint)row >= (uint)Size)
        {
            throw new ArgumentOutOfRangeException(nameof(row));
        }

        if ((uint)column >= (uint)Size)
        {
            throw new ArgumentOutOfRangeException(nameof(column));
        }

        if (_count == _values.Length)
        {
            int capacity = (int)Math.Min(2L * _count, Array.MaxLength);
            Array.Resize(ref _rows, capacity);
            Array.Resize(ref _columns, capacity);
            Array.Resize(ref _values, capacity);
        }

        _rows[_count] = Math.Max(row, column);
        _columns[_count] = Math.Min(row, column);
        _values[_count] = value;
        _count++;
    }

    /// <summary>
    /// Adds the Laplacian of one conductance between two unknowns: +g on both diagonals, −g between them.
    /// </summary>
    public void AddBranch(int first, int second, double conductance)
    {
        Add(first, first, conductance);
        Add(second, second, conductance);
        Add(first, second, -conductance);
    }

    /// <summary>
    /// Sums the contributions. Entries that cancel to zero stay in the pattern; an entry never named is absent.
    /// The builder may be added to and built from again.
    /// </summary>
    public SymmetricSparseMatrix Build()
    {
        // Two stable counting sorts, by row and then by column, leave every column sorted by row and every entry's
        // contributions in the order of arrival.
        int[] byRow = StableOrder(_rows, null);
        int[] byColumn = StableOrder(_columns, byRow);

        int[] pointers = new int[Size + 1];
        int[] rowIndices = new int[_count];
        double[] values = new double[_count];
        int stored = 0;
        int position = 0;
        for (int column = 0; column < Size; column++)
        {
            int columnStart = stored;
            for (; position < _count && _columns[byColumn[position]] == column; position++)
            {
                int source = byColumn[position];
                if (stored > columnStart && rowIndices[stored - 1] == _rows[source])
                {
                    values[stored - 1] += _values[source];
                }
                else
                {
                    rowIndices[stored] = _rows[source];
                    values[stored] = _values[source];
                    stored++;
                }
            }

            pointers[column + 1] = stored;
        }

        Array.Resize(ref rowIndices, stored);
        Array.Resize(ref values, stored);
        return new SymmetricSparseMatrix(Size, pointers, rowIndices, values);
    }

    private int[] StableOrder(int[] keys, int[]? previous)
    {
        int[] next = new int[Size + 1];
        for (int k = 0; k < _count; k++)
        {
            next[keys[k] + 1]++;
        }

        for (int i = 0; i < Size; i++)
        {
            next[i + 1] += next[i];
        }

        int[] order = new int[_count];
        for (int k = 0; k < _count; k++)
        {
            int source = previous is null ? k : previous[k];
            order[next[keys[source]]++] = source;
        }

        return order;
    }
}

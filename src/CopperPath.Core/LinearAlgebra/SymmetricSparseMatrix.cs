namespace CopperPath.LinearAlgebra;

/// <summary>
/// A symmetric matrix held as the compressed columns of its lower triangle (diagonal included),
/// row numbers ascending within each column.
/// </summary>
/// <param name="Size">Number of rows and columns.</param>
/// <param name="ColumnPointers">Start of each column in the arrays below; length Size + 1.</param>
/// <param name="RowIndices">Row of each stored value.</param>
/// <param name="Values">Stored values.</param>
public sealed record SymmetricSparseMatrix(int Size, int[] ColumnPointers, int[] RowIndices, double[] Values) : ISymmetricOperator
{
    public int NonZeroCount => ColumnPointers[Size];

    /// <summary>y = A x.</summary>
    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        y.Clear();
        for (int j = 0; j < Size; j++)
        {
            double xj = x[j];
            double sum = 0;
            for (int k = ColumnPointers[j]; k < ColumnPointers[j + 1]; k++)
            {
                int i = RowIndices[k];
                if (i == j)
                {
                    sum += Values[k] * xj;
                }
                else
                {
                    sum += Values[k] * x[i];
                    y[i] += Values[k] * xj;
                }
            }

            y[j] += sum;
        }
    }
}

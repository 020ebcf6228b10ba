namespace CopperPath.LinearAlgebra;

/// <summary>The diagonal of a matrix in place of the matrix. Unknowns without an entry on it stay as they are.</summary>
internal sealed class DiagonalScaling(ReadOnlyMemory<double> diagonal) : IPreconditioner
{
    public void Apply(ReadOnlySpan<double> residual, Span<double> result)
    {
        ReadOnlySpan<double> entries = diagonal.Span;
        for (int i = 0; i < entries.Length; i++)
        {
            result[i] = entries[i] > 0 ? residual[i] / entries[i] : 0;
        }
    }
}

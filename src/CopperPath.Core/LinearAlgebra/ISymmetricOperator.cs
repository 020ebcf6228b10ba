namespace CopperPath.LinearAlgebra;

/// <summary>A symmetric matrix known by what it makes of a vector.</summary>
public interface ISymmetricOperator
{
    /// <summary>Number of rows and columns.</summary>
    int Size { get; }

    /// <summary>y = A x. The two spans do not overlap.</summary>
    void Multiply(ReadOnlySpan<double> x, Span<double> y);
}

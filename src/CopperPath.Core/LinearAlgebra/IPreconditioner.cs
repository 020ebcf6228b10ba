namespace CopperPath.LinearAlgebra;

/// <summary>A symmetric positive definite approximation M of a matrix whose equations are cheap to solve.</summary>
public interface IPreconditioner
{
    /// <summary>Solves M z = r. The two spans do not overlap.</summary>
    void Apply(ReadOnlySpan<double> residual, Span<double> result);
}

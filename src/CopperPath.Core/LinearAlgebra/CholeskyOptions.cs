namespace CopperPath.LinearAlgebra;

/// <summary>How a matrix is to be factored.</summary>
public sealed record CholeskyOptions
{
    /// <summary>
    /// Number of threads, one or more; all processors unless set. The factor is the same bit by bit for any number.
    /// </summary>
    public int ThreadCount { get; init; } = Environment.ProcessorCount;

    /// <summary>
    /// A pivot must exceed this share of its diagonal entry, or the matrix counts as singular to working precision.
    /// Null for the default, 2⁻⁵² times the number of unknowns: in a matrix of conductances the last pivot is the sum
    /// of all conductances to the reference, and the rounding of that many diagonal entries alone may leave as much.
    /// </summary>
    public double? PivotTolerance { get; init; }

    /// <summary>
    /// The order of elimination, entry k the unknown eliminated k-th; null to have
    /// <see cref="FillReducingOrdering"/> choose one.
    /// </summary>
    public int[]? Order { get; init; }
}

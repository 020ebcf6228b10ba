namespace CopperPath.LinearAlgebra;

/// <summary>How a conjugate gradient iteration ended.</summary>
public enum IterationOutcome
{
    /// <summary>The true residual meets the tolerance.</summary>
    Converged,

    /// <summary>The allowed number of iterations was used up; the solution is the last one reached.</summary>
    IterationLimit,

    /// <summary>
    /// A direction of zero or negative energy, or a value that is not finite, was met: matrix or preconditioner is not
    /// positive definite.
    /// </summary>
    NotPositiveDefinite,

    /// <summary>
    /// The recursive residual met the tolerance but the true one does not and no longer falls: rounding allows no more.
    /// </summary>
    Stagnated,
}

/// <summary>The end of a conjugate gradient iteration.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Iterations">Steps taken.</param>
/// <param name="RelativeResidual">
/// Euclidean norm of b − A x, computed afresh, over that of b; the norm itself where b is zero.
/// </param>
public sealed record ConjugateGradientResult(IterationOutcome Outcome, int Iterations, double RelativeResidual);

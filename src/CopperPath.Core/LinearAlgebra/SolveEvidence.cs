namespace CopperPath.LinearAlgebra;

/// <summary>How well a solution satisfies its equations.</summary>
/// <param name="RelativeResidual">
/// Euclidean norm of b − A x over that of b; the norm of A x itself where b is zero. Not a number where x is not
/// finite.
/// </param>
/// <param name="BackwardError">
/// The normwise backward error ‖b − A x‖ / (‖A‖ ‖x‖ + ‖b‖) in the ∞-norm (Rigal and Gaches, "On the compatibility of a
/// given solution with the data of a linear system", J. ACM 14, 1967): x solves exactly a system that differs from the
/// given one by this share. A few units of rounding, 2⁻⁵³, is the best any solver can do.
/// </param>
/// <param name="Corrections">Steps of iterative refinement that were kept.</param>
public sealed record SolveEvidence(double RelativeResidual, double BackwardError, int Corrections);

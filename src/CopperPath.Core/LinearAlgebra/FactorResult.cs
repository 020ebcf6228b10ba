using System.Diagnostics.CodeAnalysis;

namespace CopperPath.LinearAlgebra;

/// <summary>How an attempt to factor a matrix ended.</summary>
public enum FactorOutcome
{
    /// <summary>The factor exists.</summary>
    Success,

    /// <summary>The matrix has no rows: there is nothing to factor.</summary>
    Empty,

    /// <summary>
    /// A pivot was negative, not a number, or zero to working precision: the matrix is indefinite, singular or
    /// holds values that are not finite. A conductance matrix ends here when part of it is tied to no reference.
    /// </summary>
    NotPositiveDefinite,

    /// <summary>The factor would hold more values than one array can.</summary>
    TooLarge,
}

/// <summary>The outcome of <see cref="CholeskyFactor.Factor"/>.</summary>
/// <param name="Outcome">How the attempt ended.</param>
/// <param name="Factor">The factor; present on success only.</param>
/// <param name="Column">
/// Column of the matrix, in its own numbering, whose pivot failed; −1 unless the outcome is
/// <see cref="FactorOutcome.NotPositiveDefinite"/>. For a singular block this is the unknown of the block that was
/// eliminated last.
/// </param>
public sealed record FactorResult(FactorOutcome Outcome, CholeskyFactor? Factor, int Column)
{
    [MemberNotNullWhen(true, nameof(Factor))]
    public bool Succeeded => Outcome == FactorOutcome.Success;
}

namespace CopperPath.LinearAlgebra;

/// <summary>
/// The dense arithmetic of one supernode in a substitution, for as many right-hand sides as lie side by side. A block
/// is column-major with <c>rows</c> rows, those of its own columns first; a row of right-hand sides is
/// <see cref="Width"/> numbers.
/// </summary>
internal interface ISubstitutionKernel
{
    /// <summary>Numbers in a row of right-hand sides.</summary>
    static abstract int Width { get; }

    /// <summary>
    /// Replaces the block's own rows by L₁⁻¹ times them, L₁ the triangle at its top, and sets the sums to the rest of
    /// the block times those. Each sum is formed column by column.
    /// </summary>
    static abstract void Forward(ref double block, int rows, int columns, ref double own, ref double sums);

    /// <summary>
    /// Replaces the first <paramref name="columns"/> of the gathered rows by L₁⁻ᵀ times what the rest of the block,
    /// times the other rows, leaves of them. Each sum is formed as by <see cref="DenseKernels.Dot"/>.
    /// </summary>
    static abstract void Backward(ref double block, int rows, int columns, ref double gathered);

    /// <summary>target −= values.</summary>
    static abstract void Subtract(ref double values, ref double target);

    /// <summary>target += values.</summary>
    static abstract void Add(ref double values, ref double target);

    /// <summary>target = values.</summary>
    static abstract void Copy(ref double values, ref double target);
}

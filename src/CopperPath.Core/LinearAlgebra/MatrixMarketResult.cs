using CopperPath.Diagnostics;

namespace CopperPath.LinearAlgebra;

/// <summary>What came of reading a Matrix Market file.</summary>
/// <param name="Matrix">The matrix; null when the text was not understood.</param>
/// <param name="Diagnostics">What was wrong, in the order of the text.</param>
public sealed record MatrixMarketResult(SymmetricSparseMatrix? Matrix, IReadOnlyList<Diagnostic> Diagnostics);

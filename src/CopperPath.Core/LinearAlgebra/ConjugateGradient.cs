namespace CopperPath.LinearAlgebra;

/// <summary>
/// The preconditioned conjugate gradient method, for systems too large to factor and as a check on the factor by an
/// unrelated method.
/// </summary>
/// <remarks>Saad, Iterative Methods for Sparse Linear Systems, algorithm 9.1.</remarks>
public static class ConjugateGradient
{
    /// <summary>
    /// Solves A x = b, starting from the values found in <paramref name="x"/>.
    /// </summary>
    /// <remarks>
    /// The iteration stops when the recursively updated residual falls to the tolerance; the true residual b − A x is
    /// then computed, and the iteration restarts from it if that is still too large. It is given up as stagnated when a
    /// restart has not halved the true residual.
    /// </remarks>
    /// <param name="matrix">A symmetric positive definite matrix.</param>
    /// <param name="b">Right-hand side.</param>
    /// <param name="x">Starting values on entry, the solution on return.</param>
    /// <param name="preconditioner">Null for none.</param>
    /// <param name="relativeTolerance">Largest allowed ratio of the Euclidean norms of b − A x and b.</param>
    /// <param name="maxIterations">Most steps to take; null for ten times the number of unknowns.</param>
    public static ConjugateGradientResult Solve(
        ISymmetricOperator matrix,
        ReadOnlySpan<double> b,
        Span<double> x,
        IPreconditioner? preconditioner = null,
        double relativeTolerance = 1e-12,
        int? maxIterations = null)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        int size = matrix.Size;
        long limit = maxIterations ?? (10L * size);
        double[] residual = new double[size];
        double[] direction = new double[size];
        double[] product = new double[size];
        double[] preconditioned = new double[size];
        double normOfB = Math.Sqrt(DenseKernels.Dot(b, b));
        double reference = normOfB == 0 ? 1 : normOfB;
        double target = relativeTolerance * reference;
        int iterations = 0;
        double previousTrueNorm = double.PositiveInfinity;
        while (true)
        {
            matrix.Multiply(x, residual);
            for (int i = 0; i < size; i++)
            {
                residual[i] = b[i] - residual[i];
            }

            double norm = Math.Sqrt(DenseKernels.Dot(residual, residual));
            if (norm <= target)
            {
                return End(IterationOutcome.Converged, norm);
            }

            if (!double.IsFinite(norm))
            {
                return End(IterationOutcome.NotPositiveDefinite, norm);
            }

            if (iterations >= limit)
            {
                return End(IterationOutcome.IterationLimit, norm);
            }

            if (norm > previousTrueNorm / 2)
            {
                return End(IterationOutcome.Stagnated, norm);
            }

            previousTrueNorm = norm;
            Precondition();
            preconditioned.CopyTo(direction, 0);
            double energy = DenseKernels.Dot(residual, preconditioned);
            while (iterations < limit)
            {
                matrix.Multiply(direction, product);
                double curvature = DenseKernels.Dot(direction, product);

                // Written so that values that are not numbers fail too.
                if (!(curvature > 0) || !(energy > 0))
                {
                    return End(IterationOutcome.NotPositiveDefinite, norm);
                }

                double step = energy / curvature;
                DenseKernels.AddScaled(direction, step, x);
                DenseKernels.AddScaled(product, -step, residual);
                iterations++;
                norm = Math.Sqrt(DenseKernels.Dot(residual, residual));
                if (norm <= target)
                {
                    break;
                }

                Precondition();
                double newEnergy = DenseKernels.Dot(residual, preconditioned);
                double share = newEnergy / energy;
                energy = newEnergy;
                for (int i = 0; i < size; i++)
                {
                    direction[i] = preconditioned[i] + (share * direction[i]);
                }
            }
        }

        void Precondition()
        {
            if (preconditioner is null)
            {
                residual.CopyTo(preconditioned, 0);
            }
            else
            {
                preconditioner.Apply(residual, preconditioned);
            }
        }

        ConjugateGradientResult End(IterationOutcome outcome, double norm) => new(outcome, iterations, norm / reference);
    }
}

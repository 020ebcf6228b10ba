namespace CopperPath.LinearAlgebra;

/// <summary>
/// The preconditioned conjugate gradient method, stopped by what it gains: for uses where any approximation is valid and
/// only its energy x.A x / 2 - b.x counts. (Each step lowers it by half the gain that is compared; M. R. Hestenes and
/// E. Stiefel, J. Res. NBS 49, 1952, theorem 6:1.)
/// </summary>
public static class EnergyDescent
{
    /// <summary>Improves x from the values found in it.</summary>
    /// <param name="matrix">A symmetric positive definite matrix; where it is only semidefinite, b lies in its range.</param>
    /// <param name="preconditioner">An approximation of it.</param>
    /// <param name="b">Right-hand side.</param>
    /// <param name="x">Starting values on entry, the improved ones on return.</param>
    /// <param name="leastGain">A step that lowers x.A x - 2 b.x by less is the last.</param>
    /// <param name="mostSteps">Steps at most.</param>
    /// <returns>Steps taken.</returns>
    public static int Minimise(
        ISymmetricOperator matrix, IPreconditioner preconditioner, ReadOnlySpan<double> b, Span<double> x, double leastGain,
        int mostSteps)
    {
        double[] residual = new double[b.Length], direction = new double[b.Length], work = new double[b.Length];
        matrix.Multiply(x, work);
        for (int i = 0; i < residual.Length; i++)
        {
            residual[i] = b[i] - work[i];
        }

        preconditioner.Apply(residual, direction);
        double energy = DenseKernels.Dot(residual, direction);
        for (int step = 0; step < mostSteps; step++)
        {
            matrix.Multiply(direction, work);
            double curvature = DenseKernels.Dot(direction, work);

            // Written so that values that are not numbers end the descent too.
            if (!(curvature > 0) || !(energy > 0))
            {
                return step;
            }

            double length = energy / curvature;
            DenseKernels.AddScaled(direction, length, x);
            if (length * energy < leastGain)
            {
                return step + 1;
            }

            DenseKernels.AddScaled(work, -length, residual);
            preconditioner.Apply(residual, work);
            double newEnergy = DenseKernels.Dot(residual, work);
            double share = newEnergy / energy;
            energy = newEnergy;
            for (int i = 0; i < direction.Length; i++)
            {
                direction[i] = work[i] + (share * direction[i]);
            }
        }

        return mostSteps;
    }
}

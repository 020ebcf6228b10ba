using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

public sealed class ConjugateGradientTests
{
    public enum Kind
    {
        None,
        SymmetricOverRelaxation,
        IncompleteCholesky,
    }

    [Theory]
    [InlineData("poisson 2-D 40x40", Kind.None)]
    [InlineData("poisson 2-D 40x40", Kind.SymmetricOverRelaxation)]
    [InlineData("poisson 2-D 40x40", Kind.IncompleteCholesky)]
    [InlineData("poisson 2-D anisotropic", Kind.IncompleteCholesky)]
    [InlineData("poisson 3-D", Kind.SymmetricOverRelaxation)]
    [InlineData("triangle mesh", Kind.SymmetricOverRelaxation)]
    [InlineData("triangle mesh", Kind.IncompleteCholesky)]
    [InlineData("random dominant", Kind.IncompleteCholesky)]
    [InlineData("disconnected", Kind.IncompleteCholesky)]
    public void TheDirectSolutionIsReached(string name, Kind kind)
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named(name);
        double[] b = MatrixGallery.RandomVector(matrix.Size, 31);
        double[] direct = new double[matrix.Size];
        double[] x = new double[matrix.Size];
        CholeskyFactor.Factor(matrix).Factor.ShouldNotBeNull().Solve(b, direct);

        ConjugateGradientResult result = ConjugateGradient.Solve(matrix, b, x, Preconditioner(matrix, kind), 1e-11);

        result.Outcome.ShouldBe(IterationOutcome.Converged);
        result.RelativeResidual.ShouldBeLessThanOrEqualTo(1e-11);
        double scale = direct.Max(Math.Abs);
        for (int i = 0; i < x.Length; i++)
        {
            x[i].ShouldBe(direct[i], 1e-7 * scale);
        }
    }

    [Fact]
    public void AsManyStepsSufficeAsTheMatrixHasDistinctEigenvalues()
    {
        // Without rounding the method ends after as many steps as there are distinct eigenvalues (Saad, section 6.11):
        // here 1, 2 and 3.
        SparseMatrixBuilder builder = new(90);
        for (int i = 0; i < 90; i++)
        {
            builder.Add(i, i, 1 + (i % 3));
        }

        double[] x = new double[90];

        ConjugateGradientResult result =
            ConjugateGradient.Solve(builder.Build(), MatrixGallery.RandomVector(90, 32), x, null, 1e-14);

        result.Outcome.ShouldBe(IterationOutcome.Converged);
        result.Iterations.ShouldBe(3);
    }

    [Fact]
    public void IncompleteCholeskyIsCompleteWhereThereIsNoFill()
    {
        // A tridiagonal matrix has no fill, so IC(0) is its exact factor and one step solves the system.
        SymmetricSparseMatrix matrix = MatrixGallery.SecondDifference(300);
        IncompleteCholesky preconditioner = IncompleteCholesky.TryCreate(matrix).ShouldNotBeNull();
        double[] x = new double[300];

        ConjugateGradientResult result =
            ConjugateGradient.Solve(matrix, MatrixGallery.RandomVector(300, 33), x, preconditioner, 1e-10);

        preconditioner.DiagonalShift.ShouldBe(0);
        result.Outcome.ShouldBe(IterationOutcome.Converged);
        result.Iterations.ShouldBe(1);
    }

    [Fact]
    public void PreconditioningSavesSteps()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named("triangle mesh");

        int plain = StepsWith(matrix, Kind.None);

        StepsWith(matrix, Kind.SymmetricOverRelaxation).ShouldBeLessThan(plain / 2);
        StepsWith(matrix, Kind.IncompleteCholesky).ShouldBeLessThan(plain / 2);
    }

    [Fact]
    public void ThePreconditionersAreSymmetric()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named("sheets with holes");
        double[] u = MatrixGallery.RandomVector(matrix.Size, 35);
        double[] v = MatrixGallery.RandomVector(matrix.Size, 36);
        double[] appliedToU = new double[matrix.Size];
        double[] appliedToV = new double[matrix.Size];
        foreach (Kind kind in new[] { Kind.SymmetricOverRelaxation, Kind.IncompleteCholesky })
        {
            IPreconditioner preconditioner = Preconditioner(matrix, kind).ShouldNotBeNull();
            preconditioner.Apply(u, appliedToU);
            preconditioner.Apply(v, appliedToV);

            double left = appliedToU.Zip(v, (a, c) => a * c).Sum();
            double right = appliedToV.Zip(u, (a, c) => a * c).Sum();

            left.ShouldBe(right, 1e-10 * Math.Abs(left));
        }
    }

    [Fact]
    public void AnIndefiniteMatrixIsANamedOutcome()
    {
        SparseMatrixBuilder builder = new(2);
        builder.Add(0, 0, 1);
        builder.Add(1, 1, -1);
        double[] x = new double[2];

        ConjugateGradient.Solve(builder.Build(), [1, 2], x).Outcome.ShouldBe(IterationOutcome.NotPositiveDefinite);
    }

    [Fact]
    public void RunningOutOfStepsIsANamedOutcome()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Poisson2D(30, 30);
        double[] x = new double[900];

        ConjugateGradientResult result =
            ConjugateGradient.Solve(matrix, MatrixGallery.RandomVector(900, 34), x, null, 1e-12, 5);

        result.Outcome.ShouldBe(IterationOutcome.IterationLimit);
        result.Iterations.ShouldBe(5);
        result.RelativeResidual.ShouldBeGreaterThan(1e-12);
    }

    [Fact]
    public void AToleranceBelowRoundingEndsAsStagnated()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Poisson2D(30, 30);
        double[] x = new double[900];

        ConjugateGradient.Solve(matrix, MatrixGallery.RandomVector(900, 37), x, null, 1e-30).Outcome
            .ShouldBe(IterationOutcome.Stagnated);
    }

    [Fact]
    public void AMissingDiagonalGivesNoPreconditioner()
    {
        SparseMatrixBuilder builder = new(2);
        builder.Add(1, 0, 1);
        SymmetricSparseMatrix matrix = builder.Build();

        IncompleteCholesky.TryCreate(matrix).ShouldBeNull();
        SymmetricOverRelaxation.TryCreate(matrix).ShouldBeNull();
    }

    [Fact]
    public void IncompleteCholeskyRaisesTheDiagonalWhereAPivotFails()
    {
        // Kershaw's matrix (J. Comput. Phys. 26, 1978) is positive definite but its IC(0) has the pivot −5.
        SparseMatrixBuilder builder = new(4);
        for (int i = 0; i < 4; i++)
        {
            builder.Add(i, i, 3);
        }

        builder.Add(1, 0, -2);
        builder.Add(2, 1, -2);
        builder.Add(3, 2, -2);
        builder.Add(3, 0, 2);
        SymmetricSparseMatrix matrix = builder.Build();

        CholeskyFactor.Factor(matrix).Outcome.ShouldBe(FactorOutcome.Success);
        IncompleteCholesky.TryCreate(matrix).ShouldNotBeNull().DiagonalShift.ShouldBeGreaterThan(0);
    }

    private static int StepsWith(SymmetricSparseMatrix matrix, Kind kind)
    {
        double[] x = new double[matrix.Size];
        ConjugateGradientResult result = ConjugateGradient.Solve(
            matrix, MatrixGallery.RandomVector(matrix.Size, 38), x, Preconditioner(matrix, kind), 1e-8);
        result.Outcome.ShouldBe(IterationOutcome.Converged);
        return result.Iterations;
    }

    private static IPreconditioner? Preconditioner(SymmetricSparseMatrix matrix, Kind kind) => kind switch
    {
        Kind.SymmetricOverRelaxation => SymmetricOverRelaxation.TryCreate(matrix).ShouldNotBeNull(),
        Kind.IncompleteCholesky => IncompleteCholesky.TryCreate(matrix).ShouldNotBeNull(),
        _ => null,
    };
}

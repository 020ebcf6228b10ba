using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

public sealed class CholeskyFactorTests
{
    [Fact]
    public void ATwoByTwoSystemIsSolvedExactly()
    {
        // [4 2; 2 5] x = [8; 12] has the solution [1; 2]; worked by hand.
        SparseMatrixBuilder builder = new(2);
        builder.Add(0, 0, 4);
        builder.Add(1, 0, 2);
        builder.Add(1, 1, 5);
        double[] x = new double[2];

        Factored(builder.Build()).Solve([8, 12], x);

        x[0].ShouldBe(1, 1e-15);
        x[1].ShouldBe(2, 1e-15);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(17)]
    [InlineData(400)]
    public void TheInverseOfTheSecondDifferenceIsTheKnownOne(int n)
    {
        // (A⁻¹)ij = min(i, j) (n + 1 − max(i, j)) / (n + 1), counted from 1: the discrete Green's function.
        CholeskyFactor factor = Factored(MatrixGallery.SecondDifference(n));
        int column = (n / 3) + 1;
        double[] b = new double[n];
        b[column - 1] = 1;
        double[] x = new double[n];

        factor.Solve(b, x);

        for (int i = 1; i <= n; i++)
        {
            double expected = Math.Min(i, column) * (n + 1.0 - Math.Max(i, column)) / (n + 1);
            x[i - 1].ShouldBe(expected, 1e-11 * n);
        }
    }

    [Theory]
    [InlineData(63, 63, 1, 1)]
    [InlineData(80, 33, 3, 7)]
    [InlineData(200, 150, 200, 150)]
    public void AGridSineIsDividedByItsKnownEigenvalue(int nx, int ny, int p, int q)
    {
        // The eigenpairs of the five-point Laplacian are known in closed form (Saad, Iterative Methods for Sparse
        // Linear Systems, section on discretized PDEs).
        CholeskyFactor factor = Factored(MatrixGallery.Poisson2D(nx, ny));
        double sineX = Math.Sin(p * Math.PI / (2 * (nx + 1)));
        double sineY = Math.Sin(q * Math.PI / (2 * (ny + 1)));
        double eigenvalue = 4 * ((sineX * sineX) + (sineY * sineY));
        double[] b = new double[nx * ny];
        for (int i = 0; i < b.Length; i++)
        {
            b[i] = Math.Sin(p * Math.PI * ((i % nx) + 1) / (nx + 1)) * Math.Sin(q * Math.PI * ((i / nx) + 1) / (ny + 1));
        }

        double[] x = new double[b.Length];
        factor.Solve(b, x);

        double largestError = 0;
        for (int i = 0; i < b.Length; i++)
        {
            largestError = Math.Max(largestError, Math.Abs((x[i] * eigenvalue) - b[i]));
        }

        largestError.ShouldBeLessThan(1e-11);
    }

    [Fact]
    public void AManufacturedPolynomialIsReproduced()
    {
        // The five-point formula is exact for x(w − x) y(h − y): minus its discrete Laplacian is 2 y(h − y) + 2 x(w − x).
        const int width = 120;
        const int height = 75;
        double[] b = new double[width * height];
        double[] expected = new double[b.Length];
        for (int i = 0; i < b.Length; i++)
        {
            double x = (i % width) + 1;
            double y = (i / width) + 1;
            double alongX = x * (width + 1 - x);
            double alongY = y * (height + 1 - y);
            expected[i] = alongX * alongY;
            b[i] = 2 * (alongX + alongY);
        }

        double[] solution = new double[b.Length];
        Factored(MatrixGallery.Poisson2D(width, height)).Solve(b, solution);

        for (int i = 0; i < b.Length; i++)
        {
            solution[i].ShouldBe(expected[i], 1e-11 * expected.Max());
        }
    }

    [Theory]
    [MemberData(nameof(MatrixGallery.Names), MemberType = typeof(MatrixGallery))]
    public void EveryMatrixOfTheGalleryIsSolvedToRounding(string name)
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named(name);
        CholeskyFactor factor = Factored(matrix);
        double[] b = MatrixGallery.RandomVector(matrix.Size, 11);
        double[] x = new double[matrix.Size];

        factor.Solve(b, x);

        RelativeResidual(matrix, x, b).ShouldBeLessThan(1e-12);
    }

    [Theory]
    [MemberData(nameof(MatrixGallery.Names), MemberType = typeof(MatrixGallery))]
    public void AKnownSolutionIsRecovered(string name)
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named(name);
        double[] expected = MatrixGallery.RandomVector(matrix.Size, 12);
        double[] b = new double[matrix.Size];
        matrix.Multiply(expected, b);
        double[] x = new double[matrix.Size];

        Factored(matrix).SolveRefined(b, x);

        // The worst of the gallery has a condition number near 1e6: ten digits must be left.
        for (int i = 0; i < x.Length; i++)
        {
            x[i].ShouldBe(expected[i], 1e-9);
        }
    }

    [Fact]
    public void TheResidualThatSolveRefinedReportsIsTheTrueOne()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named("sheets with holes");
        double[] b = MatrixGallery.RandomVector(matrix.Size, 13);
        double[] x = new double[matrix.Size];

        SolveEvidence evidence = Factored(matrix).SolveRefined(b, x);

        evidence.RelativeResidual.ShouldBe(RelativeResidual(matrix, x, b), 1e-15);
        evidence.RelativeResidual.ShouldBeLessThan(1e-12);
        evidence.BackwardError.ShouldBeLessThan(1e-15);
    }

    [Fact]
    public void AnIllConditionedMatrixIsSolvedWithASmallResidual()
    {
        // Condition number about 1e13: the solution is lost but a stable method keeps the residual at rounding level.
        SymmetricSparseMatrix matrix = MatrixGallery.Moler(20);
        double[] b = MatrixGallery.RandomVector(20, 14);
        double[] x = new double[20];

        Factored(matrix).Solve(b, x);

        double[] product = new double[20];
        matrix.Multiply(x, product);
        double norm = x.Max(Math.Abs) * 20 * 20;
        for (int i = 0; i < 20; i++)
        {
            Math.Abs(product[i] - b[i]).ShouldBeLessThan(1e-14 * norm);
        }
    }

    [Fact]
    public void AnIndefiniteMatrixIsANamedOutcome()
    {
        // [1 2; 2 1] has the eigenvalues 3 and −1.
        SparseMatrixBuilder builder = new(3);
        builder.Add(0, 0, 5);
        builder.Add(1, 1, 1);
        builder.Add(2, 1, 2);
        builder.Add(2, 2, 1);

        FactorResult result = CholeskyFactor.Factor(builder.Build());

        result.Outcome.ShouldBe(FactorOutcome.NotPositiveDefinite);
        result.Factor.ShouldBeNull();
        result.Column.ShouldBeInRange(1, 2);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(-1)]
    [InlineData(0)]
    public void ADiagonalThatIsNotPositiveAndFiniteIsNamedByItsColumn(double value)
    {
        SparseMatrixBuilder builder = new(4);
        for (int i = 0; i < 4; i++)
        {
            builder.Add(i, i, i == 2 ? value : 1);
        }

        FactorResult result = CholeskyFactor.Factor(builder.Build());

        result.Outcome.ShouldBe(FactorOutcome.NotPositiveDefinite);
        result.Column.ShouldBe(2);
    }

    [Fact]
    public void AMissingDiagonalIsNotPositiveDefinite()
    {
        SparseMatrixBuilder builder = new(2);
        builder.Add(1, 0, 1);

        CholeskyFactor.Factor(builder.Build()).Outcome.ShouldBe(FactorOutcome.NotPositiveDefinite);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(100)]
    [InlineData(250)]
    public void APieceTiedToNoReferenceIsNotPositiveDefiniteAndIsFound(int n)
    {
        // A grid of conductances with no path to the reference is singular: constants are its null space.
        SparseMatrixBuilder floating = new(n * n);
        for (int v = 0; v < n * n; v++)
        {
            if (v % n + 1 < n)
            {
                floating.AddBranch(v, v + 1, 1.0 / 3);
            }

            if (v + n < n * n)
            {
                floating.AddBranch(v, v + n, 0.1);
            }
        }

        SymmetricSparseMatrix tied = MatrixGallery.Poisson2D(20, 20);
        FactorResult result = CholeskyFactor.Factor(MatrixGallery.Disconnected(tied, floating.Build()));

        result.Outcome.ShouldBe(FactorOutcome.NotPositiveDefinite);
        result.Column.ShouldBeGreaterThanOrEqualTo(tied.Size);
    }

    [Fact]
    public void AnEmptyMatrixIsANamedOutcome()
    {
        CholeskyFactor.Factor(new SparseMatrixBuilder(0).Build()).Outcome.ShouldBe(FactorOutcome.Empty);
    }

    [Theory]
    [InlineData("triangle mesh", 1)]
    [InlineData("triangle mesh", 4)]
    [InlineData("triangle mesh", 7)]
    [InlineData("sheets with holes", 12)]
    [InlineData("sheets with holes", 17)]
    [InlineData("disconnected", 26)]
    [InlineData("single", 3)]
    public void ManyRightHandSidesComeOutExactlyAsOneByOne(string name, int count)
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named(name);
        CholeskyFactor factor = Factored(matrix);
        double[] b = MatrixGallery.RandomVector(matrix.Size * count, 15);
        double[] together = new double[b.Length];
        double[] alone = new double[b.Length];

        factor.SolveMany(b, together, count);
        for (int r = 0; r < count; r++)
        {
            factor.Solve(b.AsSpan(r * matrix.Size, matrix.Size), alone.AsSpan(r * matrix.Size, matrix.Size));
        }

        together.ShouldBe(alone);
    }

    [Theory]
    [InlineData("triangle mesh")]
    [InlineData("large triangle mesh")]
    [InlineData("poisson 3-D")]
    [InlineData("disconnected")]
    public void TheSolutionsAreTheSameBitByBitForAnyNumberOfThreads(string name)
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named(name);
        double[] b = MatrixGallery.RandomVector(matrix.Size * 6, 16);
        (double[] alone, double[] together) = SolvedWith(matrix, b, 1);

        foreach (int threads in new[] { 2, 3, 8 })
        {
            (double[] aloneAgain, double[] togetherAgain) = SolvedWith(matrix, b, threads);
            aloneAgain.ShouldBe(alone);
            togetherAgain.ShouldBe(together);
        }
    }

    [Fact]
    public void OneFactorMaySolveOnSeveralThreadsAtOnce()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named("large triangle mesh");
        CholeskyFactor factor = Factored(matrix);
        double[] b = MatrixGallery.RandomVector(matrix.Size * 5, 18);
        double[] expected = new double[b.Length];
        factor.SolveMany(b, expected, 5);
        double[][] found = new double[6][];

        Parallel.For(0, found.Length, k =>
        {
            found[k] = new double[b.Length];
            factor.SolveMany(b, found[k], 5);
        });

        found.ShouldAllBe(solutions => solutions.SequenceEqual(expected));
    }

    [Fact]
    public void TheFailedColumnIsTheSameForAnyNumberOfThreads()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.TriangleMesh(60, 60, 8);
        double[] values = [.. matrix.Values];
        for (int j = 100; j < matrix.Size; j += 500)
        {
            values[matrix.ColumnPointers[j]] = -1;
        }

        SymmetricSparseMatrix indefinite = matrix with { Values = values };
        FactorResult expected = CholeskyFactor.Factor(indefinite, new CholeskyOptions { ThreadCount = 1 });

        expected.Outcome.ShouldBe(FactorOutcome.NotPositiveDefinite);
        CholeskyFactor.Factor(indefinite, new CholeskyOptions { ThreadCount = 4 }).ShouldBe(expected);
    }

    [Fact]
    public void AnOrderGivenByTheCallerIsUsed()
    {
        // A star eliminated hub first fills completely: n (n + 1) / 2 entries.
        SymmetricSparseMatrix star = MatrixGallery.Star(40);
        int[] hubFirst = [.. Enumerable.Range(0, 40)];

        FactorResult result = CholeskyFactor.Factor(star, new CholeskyOptions { Order = hubFirst });

        result.Factor.ShouldNotBeNull().NonZeroCount.ShouldBe(40 * 41 / 2);
    }

    [Fact]
    public void InputAndOutputMayBeTheSameMemory()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Poisson2D(20, 20);
        CholeskyFactor factor = Factored(matrix);
        double[] b = MatrixGallery.RandomVector(matrix.Size, 17);
        double[] x = new double[matrix.Size];
        factor.Solve(b, x);

        factor.Solve(b, b);

        b.ShouldBe(x);
    }

    private static CholeskyFactor Factored(SymmetricSparseMatrix matrix)
    {
        FactorResult result = CholeskyFactor.Factor(matrix);
        result.Outcome.ShouldBe(FactorOutcome.Success);
        return result.Factor.ShouldNotBeNull();
    }

    private static (double[] Alone, double[] Together) SolvedWith(SymmetricSparseMatrix matrix, double[] b, int threads)
    {
        CholeskyFactor factor = CholeskyFactor.Factor(matrix, new CholeskyOptions { ThreadCount = threads }).Factor.ShouldNotBeNull();
        double[] alone = new double[matrix.Size];
        double[] together = new double[b.Length];
        factor.Solve(b.AsSpan(0, matrix.Size), alone);
        factor.SolveMany(b, together, b.Length / matrix.Size);
        return (alone, together);
    }

    private static double RelativeResidual(SymmetricSparseMatrix matrix, double[] x, double[] b)
    {
        double[] product = new double[matrix.Size];
        matrix.Multiply(x, product);
        double squares = 0;
        double reference = 0;
        for (int i = 0; i < product.Length; i++)
        {
            squares += (product[i] - b[i]) * (product[i] - b[i]);
            reference += b[i] * b[i];
        }

        return Math.Sqrt(squares / reference);
    }
}

using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

/// <summary>Multigrid as a preconditioner: symmetric, positive, and nearly as quick on a fine grid as on a coarse one.</summary>
public sealed class AggregationMultigridTests
{
    [Fact]
    public void ItIsASymmetricPositiveOperator()
    {
        SymmetricSparseMatrix matrix = Grid(60);
        AggregationMultigrid multigrid = AggregationMultigrid.TryCreate(matrix).ShouldNotBeNull();
        double[] a = MatrixGallery.RandomVector(matrix.Size, 1);
        double[] b = MatrixGallery.RandomVector(matrix.Size, 2);
        double[] ma = new double[a.Length];
        double[] mb = new double[b.Length];
        multigrid.Apply(a, ma);
        multigrid.Apply(b, mb);

        Dot(b, ma).ShouldBe(Dot(a, mb), 1e-9 * Math.Sqrt(Dot(a, ma) * Dot(b, mb)));
        Dot(a, ma).ShouldBeGreaterThan(0);
    }

    /// <summary>The direct factor, an unrelated method, says what the answer is.</summary>
    [Fact]
    public void ConjugateGradientsReachTheDirectSolution()
    {
        SymmetricSparseMatrix matrix = Grid(90);
        double[] b = MatrixGallery.RandomVector(matrix.Size, 3);
        double[] direct = new double[b.Length];
        CholeskyFactor.Factor(matrix).Factor.ShouldNotBeNull().Solve(b, direct);
        double[] x = new double[b.Length];
        ConjugateGradient.Solve(matrix, b, x, AggregationMultigrid.TryCreate(matrix), 1e-12).Outcome.ShouldBe(IterationOutcome.Converged);

        double scale = direct.Max(Math.Abs);
        for (int i = 0; i < x.Length; i++)
        {
            x[i].ShouldBe(direct[i], 1e-8 * scale);
        }
    }

    /// <summary>Sixteen times the unknowns, four times the steps without preconditioner (Saad, section 6.11.3); here less than twice.</summary>
    [Fact]
    public void StepsGrowLittleWithTheGrid()
    {
        int coarse = Steps(60);
        int fine = Steps(240);

        fine.ShouldBeLessThan(2 * coarse, $"{coarse} and {fine} steps");
        fine.ShouldBeLessThan(60);

        static int Steps(int side)
        {
            SymmetricSparseMatrix matrix = Grid(side);
            return ConjugateGradient.Solve(
                matrix, MatrixGallery.RandomVector(matrix.Size, 4), new double[matrix.Size], AggregationMultigrid.TryCreate(matrix), 1e-8).Iterations;
        }
    }

    [Fact]
    public void AMatrixWithoutPositiveDiagonalIsRefused()
    {
        SymmetricSparseMatrix matrix = Grid(30);
        matrix.Values[0] = -1;
        AggregationMultigrid.TryCreate(matrix).ShouldBeNull();
    }

    /// <summary>Two sheets of a square grid with unlike conductances, tied to each other and weakly to the ground.</summary>
    private static SymmetricSparseMatrix Grid(int side)
    {
        SparseMatrixBuilder builder = new(2 * side * side);
        for (int j = 0; j < side; j++)
        {
            for (int i = 0; i < side; i++)
            {
                for (int p = 0; p < 2; p++)
                {
                    int node = (2 * ((j * side) + i)) + p;
                    double conductance = p == 0 ? 1 : 0.01;
                    builder.Add(node, node, 1e-4);
                    if (i + 1 < side)
                    {
                        builder.AddBranch(node, node + 2, conductance);
                    }

                    if (j + 1 < side)
                    {
                        builder.AddBranch(node, node + (2 * side), conductance);
                    }
                }

                builder.AddBranch(2 * ((j * side) + i), (2 * ((j * side) + i)) + 1, 0.05);
            }
        }

        return builder.Build();
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
}

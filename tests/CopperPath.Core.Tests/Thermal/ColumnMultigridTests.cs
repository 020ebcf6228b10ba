using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>Multigrid as a preconditioner: symmetric, positive, and nearly as quick on a fine grid as on a coarse one.</summary>
public sealed class ColumnMultigridTests
{
    [Fact]
    public void ItIsASymmetricPositiveOperator()
    {
        (ColumnMatrix matrix, double[] lines) = Sheets(40, 1e-3);
        ColumnMultigrid multigrid = ColumnMultigrid.TryCreate(matrix, lines, lines).ShouldNotBeNull();
        double[] a = MatrixGallery.RandomVector(matrix.Size, 1);
        double[] b = MatrixGallery.RandomVector(matrix.Size, 2);
        double[] ma = new double[a.Length];
        double[] mb = new double[b.Length];
        multigrid.Apply(a, ma);
        multigrid.Apply(b, mb);

        Dot(b, ma).ShouldBe(Dot(a, mb), 1e-9 * Math.Sqrt(Dot(a, ma) * Dot(b, mb)));
        Dot(a, ma).ShouldBeGreaterThan(0);
    }

    /// <summary>The direct factor, an unrelated method, says what the answer is; a slit in the copper included.</summary>
    [Fact]
    public void ConjugateGradientsReachTheDirectSolution()
    {
        (ColumnMatrix matrix, double[] lines) = Sheets(40, 1e-3);
        SparseMatrixBuilder builder = new(matrix.Size);
        for (int n = 0; n < matrix.Size; n++)
        {
            builder.Add(n, n, matrix.Diagonal[n]);
            foreach ((double coupling, int step) in ((double, int)[])[(matrix.Down[n], 1), (matrix.East[n], matrix.Planes), (matrix.North[n], matrix.RowStride)])
            {
                if (coupling > 0)
                {
                    builder.Add(n, n + step, -coupling);
                }
            }
        }

        double[] b = MatrixGallery.RandomVector(matrix.Size, 3);
        double[] direct = new double[b.Length];
        CholeskyFactor.Factor(builder.Build()).Factor.ShouldNotBeNull().Solve(b, direct);
        double[] x = new double[b.Length];
        ConjugateGradient.Solve(matrix, b, x, ColumnMultigrid.TryCreate(matrix, lines, lines), 1e-12).Outcome.ShouldBe(IterationOutcome.Converged);

        double scale = direct.Max(Math.Abs);
        for (int i = 0; i < x.Length; i++)
        {
            x[i].ShouldBe(direct[i], 1e-8 * scale);
        }
    }

    /// <summary>
    /// Sixteen times the columns, four times the steps without preconditioner (Saad, section 6.11.3); here less than twice, on even
    /// and on graded lines.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(1.05)]
    public void StepsGrowLittleWithTheGrid(double growth)
    {
        int coarse = Steps(40);
        int fine = Steps(160);

        fine.ShouldBeLessThan(2 * coarse, $"{coarse} and {fine} steps");
        fine.ShouldBeLessThan(40);

        int Steps(int side)
        {
            (ColumnMatrix matrix, double[] lines) = Sheets(side, 1e-3, Math.Pow(growth, 40.0 / side));
            return ConjugateGradient.Solve(
                matrix, MatrixGallery.RandomVector(matrix.Size, 4), new double[matrix.Size], ColumnMultigrid.TryCreate(matrix, lines, lines), 1e-8).Iterations;
        }
    }

    /// <summary>
    /// Copper over laminate over copper on a square grid whose cells grow outwards, tied weakly to the ground, with a
    /// slit in the upper copper.
    /// </summary>
    private static (ColumnMatrix Matrix, double[] LinesM) Sheets(int side, double cellM, double growth = 1)
    {
        double[] lines = new double[side + 1];
        for (int k = 1; k <= side; k++)
        {
            lines[k] = lines[k - 1] + (cellM * Math.Pow(growth, Math.Abs(k - (side / 2))));
        }

        ColumnMatrix matrix = new(side, side, 3);
        double[] sheetWPerK = [0.027, 1e-4, 0.013];
        for (int j = 0; j < side; j++)
        {
            for (int i = 0; i < side; i++)
            {
                (double widthM, double heightM) = (lines[i + 1] - lines[i], lines[j + 1] - lines[j]);
                for (int p = 0; p < 3; p++)
                {
                    int n = (((j * side) + i) * 3) + p;
                    bool isSlit = p == 0 && i == side / 3 && j > side / 4;
                    matrix.East[n] = i + 1 == side ? 0 : (isSlit ? 1e-4 : sheetWPerK[p]) * heightM * 2 / (lines[i + 2] - lines[i]);
                    matrix.North[n] = j + 1 == side ? 0 : sheetWPerK[p] * widthM * 2 / (lines[j + 2] - lines[j]);
                    matrix.Down[n] = p == 2 ? 0 : 1500 * widthM * heightM;
                    matrix.IsFree[n] = true;
                }
            }
        }

        for (int n = 0; n < matrix.Size; n++)
        {
            matrix.Diagonal[n] = matrix.CouplingsOf(n) + (n % 3 == 1 ? 0 : 10 * cellM * cellM);
        }

        return (matrix, lines);
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
}

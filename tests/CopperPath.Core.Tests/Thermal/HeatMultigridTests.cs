using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>Multigrid as a preconditioner: symmetric, positive, and nearly as quick on a fine grid as on a coarse one.</summary>
public sealed class HeatMultigridTests
{
    /// <summary>To the rounding of single precision; on few columns and on so many that they are swept in several parts at once.</summary>
    [Theory]
    [InlineData(40)]
    [InlineData(120)]
    public void ItIsASymmetricPositiveOperator(int side)
    {
        (HeatMatrix matrix, HeatGrid grid) = Sheets(side, 1e-3);
        HeatMultigrid multigrid = HeatMultigrid.TryCreate(matrix, grid).ShouldNotBeNull();
        double[] a = MatrixGallery.RandomVector(matrix.Size, 1);
        double[] b = MatrixGallery.RandomVector(matrix.Size, 2);
        double[] ma = new double[a.Length];
        double[] mb = new double[b.Length];
        multigrid.Apply(a, ma);
        multigrid.Apply(b, mb);

        Dot(b, ma).ShouldBe(Dot(a, mb), 1e-6 * Math.Sqrt(Dot(a, ma) * Dot(b, mb)));
        Dot(a, ma).ShouldBeGreaterThan(0);
    }

    /// <summary>The direct factor, an unrelated method, says what the answer is; a slit in the copper included.</summary>
    [Fact]
    public void ConjugateGradientsReachTheDirectSolution()
    {
        (HeatMatrix matrix, HeatGrid grid) = Sheets(40, 1e-3);
        SparseMatrixBuilder builder = new(matrix.Size);
        for (int n = 0; n < matrix.Size; n++)
        {
            builder.Add(n, n, matrix.Diagonal[n]);
            if (matrix.Down[n] > 0)
            {
                builder.Add(n, n + 1, -matrix.Down[n]);
            }
        }

        for (int column = 0; column < matrix.Columns; column++)
        {
            for (int k = matrix.Start[column]; k < matrix.Start[column + 1]; k++)
            {
                for (int p = 0; p < matrix.Planes && matrix.Neighbour[k] > column; p++)
                {
                    builder.Add((column * matrix.Planes) + p, (matrix.Neighbour[k] * matrix.Planes) + p, -matrix.Coupling[(k * matrix.Planes) + p]);
                }
            }
        }

        double[] b = MatrixGallery.RandomVector(matrix.Size, 3);
        double[] direct = new double[b.Length];
        CholeskyFactor.Factor(builder.Build()).Factor.ShouldNotBeNull().Solve(b, direct);
        double[] x = new double[b.Length];
        ConjugateGradient.Solve(matrix, b, x, HeatMultigrid.TryCreate(matrix, grid), 1e-12).Outcome.ShouldBe(IterationOutcome.Converged);

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
            (HeatMatrix matrix, HeatGrid grid) = Sheets(side, 1e-3, Math.Pow(growth, 40.0 / side));
            return ConjugateGradient.Solve(
                matrix, MatrixGallery.RandomVector(matrix.Size, 4), new double[matrix.Size], HeatMultigrid.TryCreate(matrix, grid), 1e-8).Iterations;
        }
    }

    /// <summary>Two sheets with a line of little coupling between them in the middle of a wider cell, and the levels that hold them.</summary>
    [Theory]
    [InlineData(1e-6, 2)]
    [InlineData(10, 1)]
    public void ColumnsThatCopperPartsAreGatheredApart(double downWPerK, int groups)
    {
        // Four columns of one wider cell: 0 and 2 are copper in the west, 1 and 3 in the east.
        HeatMatrix matrix = HeatMatrix.Of(
            4, 2, [(0, 1), (2, 3), (0, 2), (1, 3)], [1e-4, 1e-4, 1e-4, 1e-4, 0.013, 1e-4, 0.013, 1e-4],
            [downWPerK, 0, downWPerK, 0, downWPerK, 0, downWPerK, 0]);

        (int[] groupOf, int[] parentOf) = ColumnGathering.Of(matrix, [7, 7, 7, 7]);

        parentOf.ShouldBe(Enumerable.Repeat(7, groups));
        groupOf.ShouldBe(groups == 2 ? [0, 1, 0, 1] : [0, 0, 0, 0]);
    }

    /// <summary>
    /// Copper over laminate over copper on a square grid whose cells grow outwards, tied weakly to the ground, with a
    /// slit in the upper copper.
    /// </summary>
    private static (HeatMatrix Matrix, HeatGrid Grid) Sheets(int side, double cellM, double growth = 1)
    {
        GridAxis axis = GridAxis.Graded(0, side * cellM, side * cellM / 2.0, (side / 2.0 * cellM) + cellM, cellM, growth, 20 * cellM);
        HeatGrid grid = new(axis, axis, [.. Enumerable.Range(1, 3).Select(layer => new HeatPlane(layer, Plate.CopperM, 0, 0))]);
        double[] sheetWPerK = [0.027, 1e-4, 0.013];
        double[] couplings = new double[grid.Faces.Count * 3];
        double[] down = new double[grid.NodeCount];
        for (int f = 0; f < grid.Faces.Count; f++)
        {
            CellFace face = grid.Faces[f];
            (CellBox low, CellBox high) = (grid.BoxOf(face.Low), grid.BoxOf(face.High));
            (int i, int j) = (face.Low % axis.Count, face.Low / axis.Count);
            bool isSlit = face.IsAcrossX && i == axis.Count / 3 && j > axis.Count / 4;
            double squares = face.IsAcrossX ? low.HeightM / (high.CentreXM - low.CentreXM) : low.WidthM / (high.CentreYM - low.CentreYM);
            for (int p = 0; p < 3; p++)
            {
                couplings[(3 * f) + p] = (isSlit && p == 0 ? 1e-4 : sheetWPerK[p]) * squares;
            }
        }

        for (int n = 0; n < down.Length; n++)
        {
            down[n] = n % 3 == 2 ? 0 : 1500 * grid.BoxOf(n / 3).AreaM2;
        }

        HeatMatrix matrix = HeatMatrix.Of(grid.Count, 3, [.. grid.Faces.Select(face => (face.Low, face.High))], couplings, down);
        for (int n = 0; n < matrix.Size; n++)
        {
            matrix.Diagonal[n] += n % 3 == 1 ? 0 : 10 * cellM * cellM;
        }

        return (matrix, grid);
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
}

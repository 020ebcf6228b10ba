using CopperPath.Cli.Report.Html;
using CopperPath.Cli.Tests.Report;
using CopperPath.Electrical;
using CopperPath.Meshing;

namespace CopperPath.Cli.Tests.Html;

/// <summary>Oracle: each triangle asked in turn whether it holds the point, and its own value worked out there.</summary>
public sealed class FieldGridTests(ReviewedNeck neck) : IClassFixture<ReviewedNeck>
{
    [Fact]
    public void ACellHoldsTheValueOfTheTriangleAtItsCentre()
    {
        Review review = Analysis.Check(neck.Brief);
        int checkedCells = 0;
        foreach (FieldGrid grid in FieldGrid.Of(review))
        {
            ConductionResult result = review.Nets[grid.Stretch].Conduction;
            SheetField sheet = result.Sheets.Single(s => s.Layer == grid.Layer);
            double highestV = result.Terminals.Max(terminal => terminal.PotentialV);
            for (int cell = 0; cell < grid.Columns * grid.Rows; cell += 997)
            {
                (int column, int row) = (cell % grid.Columns, cell / grid.Columns);
                if (Holding(sheet.Mesh, grid.CentreXM(column), grid.CentreYM(row)) is not var (triangle, weights))
                {
                    continue;
                }

                double potentialV = Enumerable.Range(0, 3).Sum(k => weights[k] * sheet.PotentialV[sheet.Mesh.Triangles[(3 * triangle) + k]]);
                ((double)grid.DropV[column, row]).ShouldBe(highestV - potentialV, 1e-6 * result.DropV);
                if (sheet.Mesh.TriangleMarkers[triangle] == 0)
                {
                    double current = Enumerable.Range(0, 3).Sum(k => weights[k] * sheet.CornerCurrentAPerM[(3 * triangle) + k]);
                    double density = current / review.Stack!.ThicknessM[grid.Layer - 1];
                    ((double)grid.DensityAPerM2[column, row]).ShouldBe(density, 1e-6 * density);
                    checkedCells++;
                }
                else
                {
                    float.IsNaN(grid.DensityAPerM2[column, row]).ShouldBeTrue();
                }
            }
        }

        checkedCells.ShouldBeGreaterThan(50);
    }

    /// <summary>The triangle a point lies well within and the point's barycentric coordinates in it; null for points near edges.</summary>
    private static (int Triangle, double[] Weights)? Holding(SheetMesh mesh, double xM, double yM)
    {
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (int a, int b, int c) = (mesh.Triangles[3 * t], mesh.Triangles[(3 * t) + 1], mesh.Triangles[(3 * t) + 2]);
            double whole = Cross(mesh.XM[a], mesh.YM[a], mesh.XM[b], mesh.YM[b], mesh.XM[c], mesh.YM[c]);
            double[] weights =
            [
                Cross(xM, yM, mesh.XM[b], mesh.YM[b], mesh.XM[c], mesh.YM[c]) / whole,
                Cross(mesh.XM[a], mesh.YM[a], xM, yM, mesh.XM[c], mesh.YM[c]) / whole,
                Cross(mesh.XM[a], mesh.YM[a], mesh.XM[b], mesh.YM[b], xM, yM) / whole,
            ];
            if (weights.Min() > 1e-6)
            {
                return (t, weights);
            }
        }

        return null;
    }

    private static double Cross(double ax, double ay, double bx, double by, double cx, double cy) =>
        ((bx - ax) * (cy - ay)) - ((cx - ax) * (by - ay));
}

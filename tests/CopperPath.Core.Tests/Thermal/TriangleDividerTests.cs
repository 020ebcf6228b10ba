using CopperPath.Geometry;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>The loss of triangles on cells, against areas that are cut by an unrelated way.</summary>
public sealed class TriangleDividerTests
{
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.5)]
    [InlineData(4)]
    public void EachLeafHasTheTrianglesPartInIt(double sizeMm)
    {
        CellTree tree = new(new CellBox(0, 0, 9e-3, 7e-3), 1e-3);
        for (int split = 0; split < 3; split++)
        {
            tree.Split(tree.LeafAt(4.3e-3, 3.1e-3));
        }

        CellTree finer = tree.Finer();
        Random random = new(5);
        for (int triangle = 0; triangle < 40; triangle++)
        {
            PointNm[] corners = Corners(random, sizeMm);
            TriangleLoss loss = new(1, At(corners[0]), At(corners[1]), At(corners[2]), 2);
            double[] onTree = new double[tree.CellCount];
            double[] onFiner = new double[finer.CellCount];
            int holder = new TriangleDivider(tree, onTree).Divide(loss, CellTree.Root);
            new TriangleDivider(finer, onFiner).Divide(loss, holder);

            IsTheShareIn(tree, corners, loss, onTree);
            IsTheShareIn(finer, corners, loss, onFiner);
        }
    }

    private static void IsTheShareIn(CellTree tree, PointNm[] corners, TriangleLoss loss, double[] powerW)
    {
        double[] expectedW = new double[tree.CellCount];
        new CellClipper(tree).Divide([corners], (leaf, areaM2, _) => expectedW[leaf] += loss.PowerW * areaM2 / loss.AreaM2);
        for (int cell = 0; cell < powerW.Length; cell++)
        {
            powerW[cell].ShouldBe(expectedW[cell], 1e-9 * loss.PowerW);
        }

        powerW.Sum().ShouldBe(loss.PowerW, 1e-9 * loss.PowerW);
    }

    /// <summary>Counter-clockwise, inside the board, some of them along lines of the cells.</summary>
    private static PointNm[] Corners(Random random, double sizeMm)
    {
        while (true)
        {
            (double x, double y) = (random.NextDouble() * (9 - sizeMm), random.NextDouble() * (7 - sizeMm));
            PointNm[] corners = [.. Enumerable.Range(0, 3).Select(_ => new PointNm(
                (int)(1e6 * (x + (sizeMm * random.Next(0, 5) / 4))), (int)(1e6 * (y + (sizeMm * random.NextDouble())))))];
            if (Ring.SignedAreaNm2(corners) > 1e6)
            {
                return corners;
            }
        }
    }

    private static (double XM, double YM) At(PointNm point) => (Units.MetresFromNm(point.X), Units.MetresFromNm(point.Y));
}

using System.Globalization;
using CopperPath.Electrical;
using CopperPath.Meshing;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// How fast the error of the resistance falls on meshes of equal elements, against theory: the energy of linear elements
/// converges as h^2 where the field is smooth and as h^(2a) at a singularity r^a (Strang and Fix, An Analysis of the
/// Finite Element Method, 1973, ch. 8): a = 2/3 at a re-entrant right angle, 1/2 at the tip of a slit and at the end of a
/// contact on a straight edge.
/// </summary>
public sealed class ConvergenceTests(ITestOutputHelper output)
{
    private static readonly double[] EdgesM = [1.4e-3, 1e-3, 0.7e-3, 0.5e-3, 0.35e-3, 0.25e-3];

    [Theory]
    [InlineData("annulus 5", 2)]
    [InlineData("right-angle corner", 4.0 / 3)]
    [InlineData("T, stem to both arms", 4.0 / 3)]
    [InlineData("width step, flush, 0.5", 4.0 / 3)]
    [InlineData("slit, gap 0.5, half by symmetry", 1)]
    [InlineData("disc, arcs of 60 degrees", 1)]
    public void ErrorOnEqualElementsFallsAsTheorySays(string name, double expectedOrder)
    {
        ExactCase exact = ExactCases.All.Single(each => each.Name == name);
        List<(double LogEdge, double LogError)> points = [];
        foreach (double edgeM in EdgesM)
        {
            ConductionResult result = exact.Piece().Solve(EqualElements(edgeM));
            double error = 1 - (exact.Measured(result) / exact.Squares);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"convergence | {name} | equal | {result.UnknownCount} | {error:E3}"));
            error.ShouldBeGreaterThan(0, "linear elements give a resistance that is too low");
            points.Add((-Math.Log(result.UnknownCount) / 2, Math.Log(error)));
        }

        Slope(points).ShouldBe(expectedOrder, 0.15 * expectedOrder);
    }

    private static MeshQuality EqualElements(double edgeM) => new(edgeM, EdgesAcrossNeck: 1)
    {
        Grading = 1,
        ReentrantCornerFraction = 1,
        EdgesAroundRing = 3,
        SimplificationToleranceM = 0.5e-6,
    };

    /// <summary>Slope of the line of least squares.</summary>
    private static double Slope(List<(double X, double Y)> points)
    {
        double x = points.Average(p => p.X), y = points.Average(p => p.Y);
        return points.Sum(p => (p.X - x) * (p.Y - y)) / points.Sum(p => (p.X - x) * (p.X - x));
    }
}

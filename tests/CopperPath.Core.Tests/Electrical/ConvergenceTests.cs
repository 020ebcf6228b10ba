using System.Globalization;
using CopperPath.Electrical;
using CopperPath.Meshing;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// How fast the error of the resistance falls, against theory. On equal elements the energy converges as h^(2a) at a
/// singularity r^a whatever the order of the elements (Strang and Fix, An Analysis of the Finite Element Method, 1973,
/// ch. 8): a = 2/3 at a re-entrant right angle, 1/2 at the tip of a slit and at the end of a contact on a straight edge.
/// Refinement where the error is restores the order of the smooth field: quadratic elements h^4, the square of one over
/// the number of unknowns (W. Dorfler, SIAM J. Numer. Anal. 33, 1996). Both from memory.
/// </summary>
public sealed class ConvergenceTests(ITestOutputHelper output)
{
    private static readonly double[] EdgesM = [1.4e-3, 1e-3, 0.7e-3, 0.5e-3, 0.35e-3, 0.25e-3];

    /// <summary>Cases and the order of the error in the edge length on equal elements.</summary>
    public static TheoryData<string, double> Cases { get; } = new()
    {
        { "right-angle corner", 4.0 / 3 },
        { "T, stem to both arms", 4.0 / 3 },
        { "width step, flush, 0.5", 4.0 / 3 },
        { "slit, gap 0.5, half by symmetry", 1 },
        { "central gap 0.5, half by symmetry", 1 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void ErrorOnEqualElementsFallsAsTheorySays(string name, double expectedOrder)
    {
        ExactCase exact = ExactCases.All.Single(each => each.Name == name);
        List<(double LogEdge, double LogError)> points = [];
        foreach (double edgeM in EdgesM)
        {
            ConductionResult result = exact.Piece().Solve(new SolveDemand(EqualElements(edgeM)) { RoundLimit = 1 });
            double error = 1 - (result.DropBoundsV.Least / exact.Squares);
            Note(name, "equal", result.UnknownCount, error);
            error.ShouldBeGreaterThan(0, "an approximate potential gives a resistance that is too low");
            points.Add((-Math.Log(result.UnknownCount) / 2, Math.Log(error)));
        }

        Slope(points).ShouldBe(expectedOrder, 0.15 * expectedOrder);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void RefinementWhereTheErrorIsRestoresTheOrderOfASmoothField(string name, double orderOnEqualElements)
    {
        ExactCase exact = ExactCases.All.Single(each => each.Name == name);
        List<(double LogEdge, double LogWidth)> points = [];
        foreach (double accuracy in new[] { 0.02, 0.01, 0.005, 0.0025, 0.00125, 0.0006, 0.0003, 0.00015 })
        {
            ConductionResult result = exact.Piece().Solve(SolveDemand.Default with { Accuracy = accuracy });
            Bracket bounds = result.DropBoundsV;
            Note(name, "refined", result.UnknownCount, 1 - (bounds.Least / exact.Squares));
            Note(name, "bounds", result.UnknownCount, bounds.RelativeWidth);
            if (points.Count == 0 || result.UnknownCount > Math.Exp(-2 * points[^1].LogEdge))
            {
                points.Add((-Math.Log(result.UnknownCount) / 2, Math.Log(bounds.RelativeWidth)));
            }
        }

        points.Count.ShouldBeGreaterThan(2);
        Slope(points).ShouldBeGreaterThan(3.5, string.Create(CultureInfo.InvariantCulture, $"equal elements: {orderOnEqualElements:F2}"));
    }

    /// <summary>A line for <c>tests/independent/plot_convergence.py</c>.</summary>
    private void Note(string name, string how, int unknowns, double error) => output.WriteLine(
        string.Create(CultureInfo.InvariantCulture, $"convergence | {name} | {how} | {unknowns} | {error:E3}"));

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

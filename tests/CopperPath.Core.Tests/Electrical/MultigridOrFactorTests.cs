using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.LinearAlgebra;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// One right-hand side of the equations of real nets: conjugate gradients preconditioned by multigrid against factoring
/// and one solve. The table of docs/benchmarks-solver.md comes from here.
/// </summary>
public sealed class MultigridOrFactorTests(ITestOutputHelper output)
{
    private const double RelativeResidual = 1e-10;

    [Theory]
    [Trait("Category", "Soak")]
    [InlineData("bitaxe-ultra", 0.4e-3)]
    [InlineData("eez-dcp405-r4", 0.4e-3)]
    [InlineData("thunderscope-r53", 0.6e-3)]
    public void BothFindTheSamePotentials(string name, double maximumEdgeM)
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        RealBoard board = RealBoard.Open(name);
        Net net = board.Nets[0];
        ConductanceSystem system = board.EquationsOf(net, maximumEdgeM);
        double[] currents = system.CurrentsFor([1, -1]);
        double[] byFactor = new double[currents.Length], byIteration = new double[currents.Length];
        TimedSeries factor = new("factor and solve"), multigrid = new("multigrid");
        ConjugateGradientResult? result = null;
        for (int turn = 0; turn < 3; turn++)
        {
            factor.Time(() => CholeskyFactor.Factor(system.Matrix).Factor.ShouldNotBeNull().Solve(currents, byFactor));
            Array.Clear(byIteration);
            multigrid.Time(() => result = ConjugateGradient.Solve(
                system.Matrix, currents, byIteration, AggregationMultigrid.TryCreate(system.Matrix), RelativeResidual));
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name} | {net.Name} | {net.Sheets.Count} layers | {net.Barrels.Count} holes | {system.Matrix.Size} unknowns | {result!.Iterations} iterations"));
        output.WriteLine(factor.ToString());
        output.WriteLine(multigrid.ToString());
        result.Outcome.ShouldBe(IterationOutcome.Converged);
        double largest = byFactor.Max(Math.Abs);
        byFactor.Zip(byIteration, (a, b) => Math.Abs(a - b)).Max().ShouldBeLessThan(1e-6 * largest);
    }
}

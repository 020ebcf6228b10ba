using System.Diagnostics;
using System.Globalization;
using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

/// <summary>
/// Times the solver on irregular triangle meshes. The figures of docs/benchmarks-solver.md come from here; the matrix
/// is written beside the test assembly so that another solver can be given the same system.
/// </summary>
public sealed class CholeskySpeedTests(ITestOutputHelper output)
{
    private const int WarmUps = 3;
    private const int Runs = 3;

    [Theory]
    [Trait("Category", "Soak")]
    [InlineData(100)]
    [InlineData(316)]
    [InlineData(1000)]
    public void ATriangleMeshIsFactoredAndSolved(int side)
    {
        Assert.SkipUnless(
            Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        SymmetricSparseMatrix matrix = MatrixGallery.TriangleMesh(side, side, 1);
        string path = Path.Combine(
            AppContext.BaseDirectory, string.Create(CultureInfo.InvariantCulture, $"triangles-{side}.mtx"));
        using (StreamWriter writer = new(path))
        {
            MatrixMarket.Write(writer, matrix);
        }

        double[] b = MatrixGallery.RandomVector(matrix.Size, 1);
        double[] x = new double[matrix.Size];
        List<(double Cpu, double Wall)> factorSeconds = [];
        List<(double Cpu, double Wall)> solveSeconds = [];
        CholeskyFactor? factor = null;
        for (int run = 0; run < WarmUps + Runs; run++)
        {
            (double Cpu, double Wall) factored = Timed(() => factor = CholeskyFactor.Factor(matrix).Factor);
            (double Cpu, double Wall) solved = Timed(() => factor!.Solve(b, x));
            if (run >= WarmUps)
            {
                factorSeconds.Add(factored);
                solveSeconds.Add(solved);
            }
        }

        SolveEvidence evidence = factor!.SolveRefined(b, x);
        (double Cpu, double Wall) factorMedian = Median(factorSeconds);
        (double Cpu, double Wall) solveMedian = Median(solveSeconds);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{matrix.Size} unknowns, {factor.NonZeroCount} entries in L, {factor.StoredCount} stored: order and factor {factorMedian.Wall:F3} s ({factorMedian.Cpu:F3} s of processor), solve {solveMedian.Wall:F3} s ({solveMedian.Cpu:F3} s), residual {evidence.RelativeResidual:E1}, backward error {evidence.BackwardError:E1}"));
        evidence.BackwardError.ShouldBeLessThan(1e-15);
    }

    private static (double Cpu, double Wall) Timed(Action action)
    {
        using Process process = Process.GetCurrentProcess();
        TimeSpan before = process.TotalProcessorTime;
        Stopwatch watch = Stopwatch.StartNew();
        action();
        watch.Stop();
        process.Refresh();
        return ((process.TotalProcessorTime - before).TotalSeconds, watch.Elapsed.TotalSeconds);
    }

    private static (double Cpu, double Wall) Median(List<(double Cpu, double Wall)> seconds) =>
        (seconds.Select(pair => pair.Cpu).Order().ElementAt(Runs / 2),
            seconds.Select(pair => pair.Wall).Order().ElementAt(Runs / 2));
}

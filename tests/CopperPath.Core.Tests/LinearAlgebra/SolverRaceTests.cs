using System.Globalization;
using System.Runtime.InteropServices;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

/// <summary>
/// This solver against SciPy's SuperLU and Octave's CHOLMOD on the same irregular triangle mesh, in turns within one run.
/// The figures of docs/benchmarks-solver.md come from here. Elapsed times are compared: the machine must be quiet.
/// </summary>
public sealed class SolverRaceTests(ITestOutputHelper output)
{
    private const int RightHandSides = 10;

    /// <summary>Side of the mesh and how often the solvers take turns.</summary>
    [Theory]
    [Trait("Category", "Soak")]
    [InlineData(100, 9)]
    [InlineData(316, 5)]
    [InlineData(1000, 3)]
    public void OneMatrixIsSolvedInTurns(int side, int turns)
    {
        Assert.SkipUnless(
            Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        SymmetricSparseMatrix matrix = MatrixGallery.TriangleMesh(side, side, 1);
        double[] b = MatrixGallery.RandomVector(RightHandSides * matrix.Size, 1);
        string folder = Directory.CreateTempSubdirectory("copperpath-race-").FullName;
        try
        {
            Write(folder, matrix, b);
            TimedSeries factor = new("order and factor"), solve = new("one solve"), many = new("ten more"), superLu = new("SuperLU"), cholmod = new("CHOLMOD");
            double[] x = new double[b.Length];
            CholeskyFactor? own = null;
            WarmUp();
            for (int turn = 0; turn < turns; turn++)
            {
                factor.Time(() => own = CholeskyFactor.Factor(matrix).Factor);
                solve.Time(() => own!.Solve(b.AsSpan(0, matrix.Size), x));
                many.Time(() => own!.SolveMany(b, x, RightHandSides));
                superLu.Add(IndependentProgram.Python("solve_timed.py", folder));
                cholmod.Add(IndependentProgram.Octave("solve_timed.m", folder));
            }

            SolveEvidence evidence = own!.SolveRefined(b.AsSpan(0, matrix.Size), x.AsSpan(0, matrix.Size));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{matrix.Size} unknowns, {own.NonZeroCount} entries in L, {own.StoredCount} stored, backward error {evidence.BackwardError:E1}"));
            foreach (TimedSeries series in new[] { factor, solve, many, superLu, cholmod })
            {
                output.WriteLine(series.ToString());
            }

            evidence.BackwardError.ShouldBeLessThan(1e-15);
            many.ProcessorSeconds.ShouldBeLessThan(0.15 * factor.ProcessorSeconds);
            many.ElapsedSeconds.ShouldBeLessThan(0.15 * factor.ElapsedSeconds);
            (factor.ElapsedSeconds + solve.ElapsedSeconds).ShouldBeLessThan(Math.Min(superLu.ElapsedSeconds, cholmod.ElapsedSeconds));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Lets the compiler finish: methods are optimised after some calls.</summary>
    private static void WarmUp()
    {
        SymmetricSparseMatrix small = MatrixGallery.TriangleMesh(60, 60, 2);
        double[] b = MatrixGallery.RandomVector(RightHandSides * small.Size, 1);
        double[] x = new double[b.Length];
        for (int i = 0; i < 60; i++)
        {
            CholeskyFactor factor = CholeskyFactor.Factor(small).Factor.ShouldNotBeNull();
            factor.Solve(b.AsSpan(0, small.Size), x);
            factor.SolveMany(b, x, RightHandSides);
        }
    }

    /// <summary>Columns of the lower triangle and right-hand sides as raw numbers: 32-bit integers, 64-bit floats.</summary>
    private static void Write(string folder, SymmetricSparseMatrix matrix, double[] b)
    {
        File.WriteAllBytes(Path.Combine(folder, "pointers.bin"), MemoryMarshal.AsBytes(matrix.ColumnPointers.AsSpan()).ToArray());
        File.WriteAllBytes(Path.Combine(folder, "rows.bin"), MemoryMarshal.AsBytes(matrix.RowIndices.AsSpan(0, (int)matrix.NonZeroCount)).ToArray());
        File.WriteAllBytes(Path.Combine(folder, "values.bin"), MemoryMarshal.AsBytes(matrix.Values.AsSpan(0, (int)matrix.NonZeroCount)).ToArray());
        File.WriteAllBytes(Path.Combine(folder, "right.bin"), MemoryMarshal.AsBytes(b.AsSpan(0, matrix.Size)).ToArray());
    }
}

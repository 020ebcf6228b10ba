using System.Globalization;
using System.Text.RegularExpressions;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.LinearAlgebra;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// The equations of whole nets of real boards, written in Matrix Market form and solved by SciPy's SuperLU
/// (<c>tests/independent/solve_matrix.py</c>): an unrelated solver must find the same potentials.
/// </summary>
public sealed partial class DirectSolveAgreementTests(ITestOutputHelper output)
{
    /// <summary>Boards and how many of their nets have more copper than the one taken.</summary>
    [Theory]
    [InlineData("picopd-v12", 1)]
    [InlineData("bitaxe-ultra", 1)]
    [InlineData("thunderscope-r53", 2)]
    public void AnotherDirectSolverFindsTheSamePotentials(string name, int place)
    {
        RealBoard board = RealBoard.Open(name);
        Net net = board.Nets[place];
        net.Sheets.Count.ShouldBeGreaterThan(1);
        net.Barrels.ShouldNotBeEmpty();
        ConductanceSystem system = board.EquationsOf(net, 0.5e-3);
        double[] currents = system.CurrentsFor([1, -1]);
        double[] potentials = new double[system.Matrix.Size];
        SolveEvidence evidence = CholeskyFactor.Factor(system.Matrix).Factor.ShouldNotBeNull()
            .SolveRefined(currents, potentials);

        string folder = Directory.CreateTempSubdirectory("copperpath-matrix-").FullName;
        try
        {
            using (StreamWriter writer = new(Path.Combine(folder, "matrix.mtx")))
            {
                MatrixMarket.Write(writer, system.Matrix);
            }

            WriteNumbers(Path.Combine(folder, "currents.txt"), currents);
            WriteNumbers(Path.Combine(folder, "potentials.txt"), potentials);
            string report = IndependentProgram.Python("solve_matrix.py", folder);
            double difference = double.Parse(Difference().Match(report).Groups[1].Value, CultureInfo.InvariantCulture);

            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{name} | {net.Name} | {net.AreaM2 * 1e6:F0} mm2 | {net.Sheets.Count} layers | {net.Barrels.Count} holes | {system.Matrix.Size} | {difference:E1} | residual {evidence.RelativeResidual:E1}"));
            difference.ShouldBeLessThan(1e-8);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void WriteNumbers(string path, double[] values) =>
        File.WriteAllLines(path, values.Select(value => value.ToString("R", CultureInfo.InvariantCulture)));

    [GeneratedRegex(@"difference (\S+)")]
    private static partial Regex Difference();
}

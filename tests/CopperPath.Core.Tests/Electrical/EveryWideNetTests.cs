using System.Diagnostics;
using System.Globalization;
using CopperPath.Electrical;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Every net above 20 mm2 of every real board meshes and solves between its farthest pads. The table of
/// docs/field-solve.md comes from here.
/// </summary>
public sealed class EveryWideNetTests(ITestOutputHelper output)
{
    private const double LeastAreaM2 = 20e-6;

    public static TheoryData<string> Boards => [.. RealBoard.Names];

    [Theory]
    [Trait("Category", "Soak")]
    [MemberData(nameof(Boards))]
    public void NetSolvesBetweenItsFarthestPads(string name)
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        RealBoard board = RealBoard.Open(name);
        List<string> failures = [];
        int solved = 0;
        foreach (Net net in board.Nets.Where(net => net.AreaM2 > LeastAreaM2))
        {
            Stopwatch watch = Stopwatch.StartNew();
            ConductionResult result = ConductionSolver.Solve(net, RealBoard.FarthestTerminals(net), board.Cuts, board.Stack, SolveDemand.Default);
            double seconds = watch.Elapsed.TotalSeconds;
            if (result.Status != ConductionStatus.Solved)
            {
                failures.Add($"{net.Name}: {result.Status}, {result.Explanation}");
                continue;
            }

            solved++;
            if (result.CurrentBalanceRatio > 1e-9 || result.DropBoundsV.RelativeWidth > SolveDemand.Default.Accuracy || !(result.DropV > 0))
            {
                failures.Add(string.Create(CultureInfo.InvariantCulture, $"{net.Name}: balance {result.CurrentBalanceRatio:E1}, width {result.DropBoundsV.RelativeWidth:P2}, drop {result.DropV}"));
            }

            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{name} | {net.Name} | {net.AreaM2 * 1e6:F0} mm2 | {net.Sheets.Count} layers | {net.Barrels.Count} holes | {result.Sheets.Sum(sheet => sheet.Mesh.TriangleCount)} | {result.Sheets.Min(sheet => sheet.Mesh.MinimumAngleDegrees):F2} | {result.UnknownCount} | {result.DropV * 1e3:F4} mohm | {result.DropBoundsV.RelativeWidth:P2} in {result.Rounds.Count} rounds | {result.CurrentBalanceRatio:E1} | {seconds:F2} s"));
        }

        solved.ShouldBeGreaterThan(0);
        failures.ShouldBeEmpty();
    }
}

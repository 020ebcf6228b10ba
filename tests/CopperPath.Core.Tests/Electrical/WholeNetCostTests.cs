using System.Diagnostics;
using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Time and memory of whole nets, from copper to certified drop, the largest net of each board, small boards first. The
/// table of docs/field-solve.md comes from here; memory is the most the process held so far, so run this test alone.
/// </summary>
public sealed class WholeNetCostTests(ITestOutputHelper output)
{
    [Fact]
    [Trait("Category", "Soak")]
    public void LargestNetsAreCertified()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        foreach (string name in new[] { "picopd-v12", "bitaxe-ultra", "eez-dcp405-r4", "sonata-one-r09", "opsis", "thunderscope-r53" })
        {
            RealBoard board = RealBoard.Open(name);
            Net net = board.Nets[0];
            IReadOnlyList<BoundTerminal> terminals = RealBoard.FarthestTerminals(net);
            TimedSeries time = new("mesh, solve and bounds");
            ConductionResult? result = null;
            time.Time(() => result = ConductionSolver.Solve(net, terminals, board.Cuts, board.Stack, SolveDemand.Default));
            using Process process = Process.GetCurrentProcess();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {name}, {net.Name} | {net.AreaM2 * 1e6:F0} mm2 | {net.Sheets.Count} | {net.Barrels.Count} | {result!.Sheets.Sum(sheet => sheet.Mesh.TriangleCount)} | {result.DropBoundsV.RelativeWidth:P2} in {result.Rounds.Count} | {time.ElapsedSeconds:F1} s | {time.ProcessorSeconds:F1} s | {process.PeakWorkingSet64 / 1e6:F0} MB |"));
            result.Status.ShouldBe(ConductionStatus.Solved, result.Explanation);
            result.DropBoundsV.RelativeWidth.ShouldBeLessThanOrEqualTo(SolveDemand.Default.Accuracy);
        }
    }
}

using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CopperPath.Copper;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Nets of real boards against <c>tests/independent/raster_model.py</c>: square cells and finite differences in
/// place of triangles, SciPy in place of the solver, nothing shared but the copper.
/// </summary>
public sealed partial class RasterModelTests(ITestOutputHelper output)
{
    [Theory]
    [Trait("Category", "Soak")]
    [InlineData("bitaxe-ultra", "/5V", "50", "25")]
    [InlineData("esp32-poe-b2", "+3V3", "40", "20")]
    [InlineData("vesc-4", "L1@79.00,-127.80", "40", "20")]
    [InlineData("picopd-v12", "+3.3V", "50", "25")]
    public void FiniteDifferencesAgreeWithinTheirOwnAccuracy(string name, string netName, params string[] cellsUm)
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        RealBoard board = RealBoard.Open(name);
        Net net = board.Nets.Single(each => each.Name == netName);
        IReadOnlyList<BoundTerminal> terminals = RealBoard.FarthestTerminals(net);
        ConductionResult result = ConductionSolver.Solve(net, terminals, board.Cuts, board.Stack, SolveDemand.Default with { Accuracy = 0.002 });
        result.Status.ShouldBe(ConductionStatus.Solved, result.Explanation);

        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, Describe(board, net, terminals));
            string report = IndependentProgram.Python("raster_model.py", [file, .. cellsUm]);
            double raster = Number(Extrapolated().Match(report)), accuracy = Number(Accuracy().Match(report));

            output.WriteLine(report);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{name} | {net.Name} | {net.AreaM2 * 1e6:F0} mm2 | {net.Sheets.Count} layers | {net.Barrels.Count} holes | triangles {result.DropBoundsV.Least * 1e3:F5} to {result.DropBoundsV.Greatest * 1e3:F5} mohm | raster {raster * 1e3:F5} +- {accuracy * 1e3:F5} mohm | {(result.DropV / raster) - 1:P2}"));
            accuracy.ShouldBeLessThan(0.01 * raster);
            raster.ShouldBeInRange(result.DropBoundsV.Least - accuracy, result.DropBoundsV.Greatest + accuracy);
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Copper, holes and contacts as plain text; lengths in nanometres, conductances in siemens.</summary>
    private static string Describe(RealBoard board, Net net, IReadOnlyList<BoundTerminal> terminals)
    {
        StringBuilder text = new();
        List<PointNm[]> cuts = [.. board.Cuts.Select(cut => HoleOutline.Of(cut, 0))];
        foreach (NetSheet sheet in net.Sheets)
        {
            text.Append(CultureInfo.InvariantCulture, $"layer {sheet.Layer} {board.Stack.SheetConductanceS(sheet.Layer):R}\n");
            foreach (PointNm[] ring in PolygonOperations.Subtract(CopperBuilder.RingsOf(sheet.Islands), cuts).SelectMany(island => island.Rings))
            {
                AppendRing(text, "copper", ring);
            }

            foreach ((BoundTerminal terminal, string word) in terminals.Zip(["source", "sink"]))
            {
                foreach (ContactArea area in terminal.Contacts[0].Areas.Where(area => area.Layer == sheet.Layer))
                {
                    AppendRing(text, word, area.Outline);
                }

                // A pin in a plated hole holds the hole's wall on every layer.
                foreach (Barrel barrel in BarrelsUnder(terminal.Contacts[0], net).Where(barrel => barrel.Layers.Contains(sheet.Layer)))
                {
                    AppendRing(text, word, HoleOutline.Of(barrel.Feature, board.Stack.PlatingM * 1e9));
                }
            }
        }

        foreach (Barrel barrel in net.Barrels)
        {
            double sectionM2 = BarrelSection.AreaM2(barrel.Feature, board.Stack);
            IEnumerable<string> stretches = barrel.Layers.Skip(1).Select((layer, i) => string.Create(CultureInfo.InvariantCulture,
                $"{layer} {sectionM2 / (board.Stack.ResistivityOhmM * board.Stack.BarrelLengthM(barrel.Layers[i], layer)):R}"));
            AppendRing(text, $"barrel {barrel.Layers[0]} {string.Join(' ', stretches)} :", HoleOutline.Of(barrel.Feature, board.Stack.WallOutsideToolM * 1e9));
        }

        return text.ToString();
    }

    private static IEnumerable<Barrel> BarrelsUnder(Contact contact, Net net) => net.Barrels.Where(barrel =>
        contact.Areas.Any(area => BoxNm.Of(area.Outline).Centre.DistanceNmTo(barrel.Centre) < barrel.Feature.ToolDiameterNm / 4.0));

    private static void AppendRing(StringBuilder text, string word, PointNm[] ring)
    {
        text.Append(word);
        foreach (PointNm p in ring)
        {
            text.Append(CultureInfo.InvariantCulture, $" {p.X} {p.Y}");
        }

        text.Append('\n');
    }

    private static double Number(Match match) => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"extrapolated (\S+)")]
    private static partial Regex Extrapolated();

    [GeneratedRegex(@"accuracy (\S+)")]
    private static partial Regex Accuracy();
}

using System.Globalization;
using CopperPath.Cli.Plots;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>A load profile is drawn, tabled and told in the page.</summary>
public sealed class LoadProfileFilesTests : IDisposable
{
    private readonly SyntheticBoard _board = new(1);

    [Fact]
    public void RisesOverTimeStandInPlotTableAndPage()
    {
        string brief = _board.Rectangle(1, 0, 0, 50, 10).WriteBrief("""
              - name: Bar
                at: { layer: top, x: 10 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, enters: 5 A }
                  - { name: right, rectangle: { layer: top, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 5 A }
            thermal: { cell: 2 mm, top: { film: 10 W/m2K, emissivity: 0 }, bottom: { film: 10 W/m2K, emissivity: 0 } }
            load profile: { points: [[0 s, 1], [60 s, 1]] }
            """);
        string first = Path.Combine(_board.Folder, "first"), second = Path.Combine(_board.Folder, "second");
        CommandRun.Of("check", brief, "--output", first).ExitCode.ShouldBe(0);
        CommandRun.Of("check", brief, "--output", second);

        foreach (string name in new[] { "load-profile.png", "load-profile.svg", "load-profile.csv", "report.html" })
        {
            File.ReadAllBytes(Path.Combine(first, name)).ShouldBe(File.ReadAllBytes(Path.Combine(second, name)), name);
        }

        File.ReadAllText(Path.Combine(first, "report.html")).ShouldContain("load-profile");
        string[][] rows = [.. File.ReadAllLines(Path.Combine(first, "load-profile.csv")).Select(line => line.Split(','))];
        rows[0].ShouldBe(["name", "rise", "time_s", "rise_K"]);
        double[] rises = [.. rows.Where(row => row[0] == "Bar").Select(row => double.Parse(row[^1], CultureInfo.InvariantCulture))];
        rises[0].ShouldBe(0, 1e-9);
        rises.ShouldBe(rises.Order());

        // Copper alone stores heat, so after ten time constants of 6 s it is steady: 123.15 W/m2 on the 48 mm between contacts, spread over
        // 50 mm, between two films, and growing by 0.393 % a kelvin.
        const double SteadyK = 123.15 * 48 / 50 / (20 - (0.00393 * 123.15));
        rises[^1].ShouldBe(SteadyK, 0.01 * SteadyK);
    }

    [Fact]
    public void ALinearAxisHasRoundTicksInTheirPlaces()
    {
        LinearAxis axis = LinearAxis.To(60, 100, 700);

        axis.PlaceOf(0).ShouldBe(100);
        axis.PlaceOf(30).ShouldBe(400);
        axis.Ticks.First().ShouldBe(("0", 100f));
        axis.Ticks.Last().ShouldBe(("60", 700f));
        LinearAxis.ToTickAfter(9.9, 0, 100).Ticks.Last().Word.ShouldBe("10");
    }

    public void Dispose() => _board.Dispose();
}

using System.Text.RegularExpressions;
using CopperPath.Core.Tests.Gallery;
using SkiaSharp;

namespace CopperPath.Cli.Tests.Commands;

/// <summary><c>copperpath curve</c> from a brief to a printed table and plots.</summary>
public sealed class CurveCommandTests : IDisposable
{
    private readonly SyntheticBoard _board = new(1);

    [Fact]
    public void TableAndPlotsAreWrittenAndTheSameAgain()
    {
        string brief = Brief();
        string first = Path.Combine(_board.Folder, "first");
        string second = Path.Combine(_board.Folder, "second");
        CommandRun run = CommandRun.Of("curve", brief, "--output", first);
        CommandRun again = CommandRun.Of("curve", brief, "--output", second);

        run.ExitCode.ShouldBe(0, run.Error);
        run.Output.ShouldContain("capacity curves of Synthetic");
        again.Output.Replace(second, first, StringComparison.Ordinal).ShouldBe(run.Output);
        string[] files = ["curve-layer-1.png", "curve-layer-1.svg"];
        Directory.GetFiles(first).Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal).ShouldBe([".copperpath-report", .. files]);
        foreach (string file in files)
        {
            File.ReadAllBytes(Path.Combine(second, file)).ShouldBe(File.ReadAllBytes(Path.Combine(first, file)));
        }

        using SKBitmap picture = SKBitmap.Decode(Path.Combine(first, files[0]));
        picture.Width.ShouldBeGreaterThan(1000);
        File.ReadAllText(Path.Combine(first, files[1])).ShouldStartWith("<?xml");
    }

    /// <summary>Ten times the width carries more, and a higher rise asks for more: at least what any law of heat says.</summary>
    [Fact]
    public void CurrentsGrowWithWidthAndRise()
    {
        CommandRun run = CommandRun.Of("curve", Brief(), "--output", Path.Combine(_board.Folder, "out"));
        (double RiseK, double WidthMm, double CurrentA)[] rows =
        [
            .. Regex.Matches(run.Output, @"^ *1 +([0-9.]+) K +([0-9.]+) (µm|mm) +([0-9.]+) (mA|A) ", RegexOptions.Multiline)
                .Select(match => (Number(match, 1), Number(match, 2) * (match.Groups[3].Value == "µm" ? 1e-3 : 1),
                    Number(match, 4) * (match.Groups[5].Value == "mA" ? 1e-3 : 1))),
        ];

        rows.Select(row => row.RiseK).Distinct().ShouldBe([10, 20, 30]);
        foreach (IGrouping<double, (double RiseK, double WidthMm, double CurrentA)> curve in rows.GroupBy(row => row.RiseK))
        {
            curve.Count().ShouldBeGreaterThan(3);
            curve.Select(row => row.WidthMm).ShouldBeInOrder();
            curve.Select(row => row.CurrentA).ShouldBeInOrder();
        }

        foreach (IGrouping<double, (double RiseK, double WidthMm, double CurrentA)> width in rows.GroupBy(row => row.WidthMm))
        {
            width.Select(row => row.CurrentA).ShouldBeInOrder();
        }

        static double Number(Match match, int group) =>
            double.Parse(match.Groups[group].Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void BadInputEndsWithTwoAndWritesNothing()
    {
        string brief = Brief();
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("ambient: 20 degC", "ambient: 20", StringComparison.Ordinal));
        string folder = Path.Combine(_board.Folder, "none");
        CommandRun run = CommandRun.Of("curve", brief, "--output", folder);

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldContain("BRF020");
        run.Error.ShouldContain("No curves: nothing was written.");
        Directory.Exists(folder).ShouldBeFalse();
        CommandRun.Of("curve", Path.Combine(_board.Folder, "absent.yaml")).ExitCode.ShouldBe(2);
    }

    public void Dispose() => _board.Dispose();

    private string Brief() => _board.Rectangle(1, 0, 0, 60, 30).WriteBrief("""
          - name: Plate
            at: { layer: top, x: 20 mm, y: 5 mm }
            terminals:
              - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 30 mm] }, enters: 1 A }
              - { name: right, rectangle: { layer: top, from: [59 mm, 0 mm], to: [60 mm, 30 mm] }, takes: rest }
        thermal: { laminate: { below: 1.5 mm } }
        """);
}

using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Cli.Plots;
using CopperPath.Core.Tests;
using CopperPath.Electrical;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Tests.Plots;

/// <summary>
/// The published case against this solver: 6-inch trace, board of 1.78 mm, still air, 1 to 30 A, 10 to 400 mil, 1 to
/// 3 oz, against the fit dT = 215.3 I^2 W^-1.15 Th^-1 (Brooks and Adam, 2015; from memory). Draws docs/images/trace-study.png.
/// </summary>
public sealed class TraceStudyTests
{
    private static readonly double[] s_ounces = [1, 2, 3];
    private static readonly double[] s_widthsMil = [10, 20, 50, 100, 200, 400];
    private static readonly double[] s_risesK = [5, 10, 20, 40];

    [Fact]
    [Trait("Category", "Soak")]
    public void SolverAgainstThePublishedFit()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") == "1", "long study; set COPPERPATH_SOAK=1");
        List<(double PublishedK, double AloneK, double OverPlaneK, double WidthMil)> study = [];
        foreach (double ounces in s_ounces)
        {
            foreach (double widthMil in s_widthsMil)
            {
                foreach (double riseK in s_risesK)
                {
                    (double thicknessM, double widthM) = (ounces * Units.MPerOunceCopper, widthMil * Units.MPerMil);
                    double currentA = Ipc2152StyleFit.Current(riseK, widthM, thicknessM).CurrentA;
                    if (currentA is >= 1 and <= 30)
                    {
                        study.Add((riseK, Board(thicknessM, hasPlane: false).Solve(currentA, widthM).MeanK,
                            Board(thicknessM, hasPlane: true).Solve(currentA, widthM).MeanK, widthMil));
                    }
                }
            }
        }

        File.WriteAllBytes(Path.Combine(SharedData.ProjectRoot, "docs", "images", "trace-study.png"), PlotPainter.PaintPng(PlotOf(study)));
        study.Count.ShouldBeGreaterThan(50);
        foreach ((double publishedK, double aloneK, double overPlaneK, double widthMil) in study)
        {
            (aloneK / publishedK).ShouldBeInRange(0.69, 1, $"{widthMil} mil");
            (overPlaneK / aloneK).ShouldBeInRange(0.34, 0.45, $"{widthMil} mil");
        }
    }

    private static LogLogPlot PlotOf(List<(double PublishedK, double AloneK, double OverPlaneK, double WidthMil)> study)
    {
        List<PlotSeries> series =
        [
            new("equal", SeriesStyle.Line, 0, [(5, 5), (40, 40)]),
            new("25 % less", SeriesStyle.DashedLine, 0, [(5, 3.75), (40, 30)]),
        ];
        foreach (double widthMil in s_widthsMil)
        {
            // Widths share a published rise: set them side by side to be seen.
            double aside = Math.Pow(1.02, Array.IndexOf(s_widthsMil, widthMil) - 2.5);
            double shade = 0.25 + (0.75 * Array.IndexOf(s_widthsMil, widthMil) / (s_widthsMil.Length - 1));
            series.Add(new PlotSeries(FormattableString.Invariant($"{widthMil} mil, alone; below it over a plane"), SeriesStyle.Dots, shade,
                [.. study.Where(at => at.WidthMil == widthMil).SelectMany(at => new[] { (at.PublishedK * aside, at.AloneK), (at.PublishedK * aside, at.OverPlaneK) })]));
        }

        return new LogLogPlot(
            "Mean rise of a 6-inch trace: this solver against the published fit", "By the fit, K", "Solved, K", series,
            [
                "Board 202 by 76 mm (own choice), 1.78 mm of FR-4, 25 °C, horizontal in still air, emissivity 0.9; 1, 2 and 3 oz fall on each other. "
                    + "Plane: 1 oz, 0.2 mm below. Nothing was tuned.",
            ]);
    }

    private static StraightTrace Board(double thicknessM, bool hasPlane) => new(
        6 * 25.4e-3, (6 * 25.4e-3) + 50e-3, 76e-3,
        hasPlane ? new Stackup([thicknessM, Units.MPerOunceCopper], [0.2e-3], 25e-6, 1.7241e-8) : new Stackup([thicknessM], [], 25e-6, 1.7241e-8),
        hasPlane ? 1.58e-3 : 1.78e-3, 1, [0, 1], ThermalMaterials.CopperOnFr4,
        new Cooling(Units.ZeroCelsiusK + 25, BoardPosture.Horizontal, new FaceCooling(null, 0.9), new FaceCooling(null, 0.9)));
}

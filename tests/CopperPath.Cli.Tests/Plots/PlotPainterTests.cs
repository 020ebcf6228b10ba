using System.Text;
using CopperPath.Cli.Plots;

namespace CopperPath.Cli.Tests.Plots;

/// <summary>Plots are pictures of the same bytes every time, with their words as words in SVG.</summary>
public sealed class PlotPainterTests
{
    private static readonly LogLogPlot s_plot = new("Title of the plot", "Width, mm", "Current, A",
        [
            new PlotSeries("line", SeriesStyle.Line, 0, [(0.2, 1), (2, 10)]),
            new PlotSeries("dashes", SeriesStyle.DashedLine, 0.5, [(0.2, 2), (2, 20)]),
            new PlotSeries("dots", SeriesStyle.Dots, 1, [(1, 5)]),
        ],
        ["A note under the plot."]);

    [Fact]
    public void TheSamePlotIsTheSamePng()
    {
        byte[] png = PlotPainter.PaintPng(s_plot);

        png.Take(4).ShouldBe([0x89, (byte)'P', (byte)'N', (byte)'G']);
        PlotPainter.PaintPng(s_plot).ShouldBe(png);
    }

    [Fact]
    public void SvgHoldsTheWords()
    {
        byte[] svg = PlotPainter.PaintSvg(s_plot);
        string text = Encoding.UTF8.GetString(svg);

        foreach (string word in new[] { "Title of the plot", "Width, mm", "Current, A", "dashes", "A note under the plot." })
        {
            text.ShouldContain(word);
        }

        PlotPainter.PaintSvg(s_plot).ShouldBe(svg);
    }

    [Fact]
    public void APlotWithoutPointsIsStillDrawn() =>
        PlotPainter.PaintPng(s_plot with { Series = [new PlotSeries("none", SeriesStyle.Line, 0, [])] }).Length.ShouldBeGreaterThan(1000);
}

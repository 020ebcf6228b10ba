using CopperPath.Cli.Plots;

namespace CopperPath.Cli.Report;

/// <summary>The pictures of the load profile, where there is one that was solved.</summary>
internal static class LoadProfileFiles
{
    public const string Name = "load-profile";

    /// <returns>PNG and SVG, or nothing.</returns>
    public static IReadOnlyList<OutputFile> Of(Review review)
    {
        if (review.InTime is not { Failure: null })
        {
            return [];
        }

        TimePlot plot = LoadProfilePlot.Of(review);
        return [new OutputFile($"{Name}.png", TimePlotPainter.PaintPng(plot)), new OutputFile($"{Name}.svg", TimePlotPainter.PaintSvg(plot))];
    }
}

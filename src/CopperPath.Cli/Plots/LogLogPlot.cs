namespace CopperPath.Cli.Plots;

/// <summary>How a series is drawn.</summary>
public enum SeriesStyle
{
    Line,
    DashedLine,
    Dots,
}

/// <summary>Points that belong together; all coordinates positive.</summary>
/// <param name="Name">What the key says.</param>
/// <param name="Style">Line or dots.</param>
/// <param name="Shade">Place on the colour map, 0 to 1; series with one shade speak of one thing.</param>
/// <param name="Points">The points, in drawing order.</param>
public sealed record PlotSeries(string Name, SeriesStyle Style, double Shade, IReadOnlyList<(double X, double Y)> Points);

/// <summary>A picture of quantities over each other on logarithmic axes.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="AbscissaName">Quantity and unit along the foot.</param>
/// <param name="OrdinateName">Quantity and unit along the side.</param>
/// <param name="Series">What is drawn, in order.</param>
/// <param name="Notes">Lines under the plot.</param>
public sealed record LogLogPlot(
    string Title, string AbscissaName, string OrdinateName, IReadOnlyList<PlotSeries> Series, IReadOnlyList<string> Notes);

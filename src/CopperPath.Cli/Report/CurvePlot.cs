using CopperPath.Capacity;
using CopperPath.Cli.Plots;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>Capacity curves of one layer as a plot: this board's beside the published ones.</summary>
internal static class CurvePlot
{
    public static LogLogPlot Of(CurveReview review, int layer)
    {
        BoardCurve[] curves = [.. review.Curves.Where(curve => curve.Layer == layer)];
        List<PlotSeries> series = [];
        for (int c = 0; c < curves.Length; c++)
        {
            string rise = FormattableString.Invariant($"{curves[c].RiseK:0} K");
            double shade = c / (double)Math.Max(1, curves.Length - 1);
            IReadOnlyList<BoardCurvePoint> points = curves[c].Points;
            series.Add(new PlotSeries($"{rise}, this board", SeriesStyle.Line, shade,
                [.. points.Where(point => point.BoardA is not null).Select(point => (Millimetres(point), point.BoardA!.Value))]));
            series.Add(new PlotSeries($"{rise}, IPC-2152-style fit", SeriesStyle.DashedLine, shade,
                [.. points.Where(point => point.ByFit.Basis.IsInRange).Select(point => (Millimetres(point), point.ByFit.CurrentA))]));
            series.Add(new PlotSeries($"{rise}, IPC-2221", SeriesStyle.Dots, shade,
                [.. points.Where(point => point.ByIpc2221.Basis.IsInRange).Select(point => (Millimetres(point), point.ByIpc2221.CurrentA))]));
        }

        string thickness = QuantityText.Length(review.Trace!.Stack.ThicknessM[layer - 1]);
        return new LogLogPlot(
            FormattableString.Invariant($"{review.Brief!.Board.Name}: current of a straight trace on layer {layer}, {thickness}"),
            "Width, mm", "Current, A", series, CurveSummary.Conditions(review.Trace));
    }

    private static double Millimetres(BoardCurvePoint point) => point.WidthM * 1e3;
}

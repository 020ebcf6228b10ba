using CopperPath.Cli.Overlays;
using SkiaSharp;

namespace CopperPath.Cli.Plots;

/// <summary>Draws a <see cref="LogLogPlot"/>; the same plot gives the same bytes.</summary>
public static class PlotPainter
{
    private const float TextPx = PlotSheet.TextPx;

    public static byte[] PaintPng(LogLogPlot plot) => PlotSheet.Png(canvas => Paint(canvas, plot));

    public static byte[] PaintSvg(LogLogPlot plot) => PlotSheet.Svg(canvas => Paint(canvas, plot));

    private static void Paint(SKCanvas canvas, LogLogPlot plot)
    {
        SKRect frame = PlotSheet.Frame;
        LogAxis x = LogAxis.For(plot.Series.SelectMany(series => series.Points.Select(point => point.X)), frame.Left, frame.Right);
        LogAxis y = LogAxis.For(plot.Series.SelectMany(series => series.Points.Select(point => point.Y)), frame.Bottom, frame.Top);
        PlotSheet.PaintGrid(canvas, WordsOf(x), WordsOf(y));
        PlotSheet.PaintWords(canvas, plot.Title, plot.AbscissaName, plot.OrdinateName, plot.Notes);
        float keyY = frame.Top + TextPx;
        foreach (PlotSeries series in plot.Series)
        {
            PaintSeries(canvas, series, x, y);
            keyY = PaintKey(canvas, series, frame.Right + 25, keyY);
        }
    }

    private static IEnumerable<(string Word, float Place)> WordsOf(LogAxis axis) =>
        axis.Ticks.Select(tick => (RoundNumbers.Plain(tick.Value), tick.Place));

    private static void PaintSeries(SKCanvas canvas, PlotSeries series, LogAxis x, LogAxis y)
    {
        using SKPaint paint = PaintOf(series);
        SKPoint[] points = [.. series.Points.Select(point => new SKPoint(x.PlaceOf(point.X), y.PlaceOf(point.Y)))];
        if (series.Style == SeriesStyle.Dots)
        {
            foreach (SKPoint point in points)
            {
                canvas.DrawCircle(point, 6, paint);
            }

            return;
        }

        for (int i = 1; i < points.Length; i++)
        {
            canvas.DrawLine(points[i - 1], points[i], paint);
        }
    }

    private static float PaintKey(SKCanvas canvas, PlotSeries series, float left, float y)
    {
        using SKPaint paint = PaintOf(series);
        if (series.Style == SeriesStyle.Dots)
        {
            canvas.DrawCircle(left + 24, y - (0.35f * TextPx), 6, paint);
        }
        else
        {
            canvas.DrawLine(left, y - (0.35f * TextPx), left + 48, y - (0.35f * TextPx), paint);
        }

        foreach (string line in PictureFonts.Wrap(series.Name, TextPx, false, PlotSheet.KeyWidthPx - 110))
        {
            PlotSheet.Text(canvas, line, left + 62, y, TextPx, isStrong: false, PlotSheet.Palette.Main);
            y += 1.3f * TextPx;
        }

        return y + (0.4f * TextPx);
    }

    private static SKPaint PaintOf(PlotSeries series) => new()
    {
        // The palest end of the map is lost on a light ground.
        Color = ColourMap.Viridis.At(0.85 * series.Shade),
        StrokeWidth = series.Style == SeriesStyle.Line ? 4 : 2.5f,
        IsAntialias = true,
        PathEffect = series.Style == SeriesStyle.DashedLine ? SKPathEffect.CreateDash([10, 7], 0) : null,
    };
}

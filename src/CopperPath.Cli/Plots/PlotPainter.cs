using System.Text;
using CopperPath.Cli.Overlays;
using SkiaSharp;

namespace CopperPath.Cli.Plots;

/// <summary>Draws a <see cref="LogLogPlot"/>; the same plot gives the same bytes.</summary>
public static class PlotPainter
{
    private const int WidthPx = 1600;
    private const int HeightPx = 1150;
    private const float LeftPx = 130;
    private const float TopPx = 110;
    private const float KeyWidthPx = 430;
    private const float FootPx = 190;
    private const float TextPx = 22;

    public static byte[] PaintPng(LogLogPlot plot)
    {
        using SKBitmap bitmap = new(new SKImageInfo(WidthPx, HeightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            Paint(canvas, plot);
        }

        return PngFile.Of(bitmap);
    }

    public static byte[] PaintSvg(LogLogPlot plot)
    {
        using MemoryStream stream = new();
        using (SKCanvas canvas = SKSvgCanvas.Create(SKRect.Create(WidthPx, HeightPx), stream))
        {
            Paint(canvas, plot);
        }

        return Encoding.UTF8.GetBytes(OverlayPainter.Portable(
            Encoding.UTF8.GetString(stream.ToArray()).ReplaceLineEndings("\n"), new SKSizeI(WidthPx, HeightPx)));
    }

    private static void Paint(SKCanvas canvas, LogLogPlot plot)
    {
        OverlayPalette palette = OverlayPalette.Of(OverlayTheme.Light);
        SKRect frame = new(LeftPx, TopPx, WidthPx - KeyWidthPx, HeightPx - FootPx);
        LogAxis x = LogAxis.For(plot.Series.SelectMany(series => series.Points.Select(point => point.X)), frame.Left, frame.Right);
        LogAxis y = LogAxis.For(plot.Series.SelectMany(series => series.Points.Select(point => point.Y)), frame.Bottom, frame.Top);
        canvas.Clear(palette.Page);
        Text(canvas, plot.Title, LeftPx, 60, 1.4f * TextPx, isStrong: true, palette.Main);
        PaintGrid(canvas, frame, x, y, palette);
        Text(canvas, plot.AbscissaName, frame.MidX, frame.Bottom + 70, TextPx, isStrong: true, palette.Main, SKTextAlign.Center);
        canvas.Save();
        canvas.RotateDegrees(-90, 45, frame.MidY);
        Text(canvas, plot.OrdinateName, 45, frame.MidY, TextPx, isStrong: true, palette.Main, SKTextAlign.Center);
        canvas.Restore();
        float keyY = frame.Top + TextPx;
        foreach (PlotSeries series in plot.Series)
        {
            PaintSeries(canvas, series, x, y);
            keyY = PaintKey(canvas, series, frame.Right + 25, keyY, palette);
        }

        float noteY = frame.Bottom + 112;
        foreach (string line in plot.Notes.SelectMany(note => PictureFonts.Wrap(note, 0.85f * TextPx, false, WidthPx - LeftPx - 40)))
        {
            Text(canvas, line, LeftPx, noteY, 0.85f * TextPx, isStrong: false, palette.Muted);
            noteY += 1.2f * TextPx;
        }
    }

    private static void PaintGrid(SKCanvas canvas, SKRect frame, LogAxis x, LogAxis y, OverlayPalette palette)
    {
        using SKPaint rule = new() { Color = palette.Rule, StrokeWidth = 1, IsAntialias = true };
        using SKPaint plate = new() { Color = palette.Plate };
        canvas.DrawRect(frame, plate);
        foreach ((double value, float at) in x.Ticks)
        {
            canvas.DrawLine(at, frame.Top, at, frame.Bottom, rule);
            Text(canvas, RoundNumbers.Plain(value), at, frame.Bottom + 32, TextPx, isStrong: false, palette.Main, SKTextAlign.Center);
        }

        foreach ((double value, float at) in y.Ticks)
        {
            canvas.DrawLine(frame.Left, at, frame.Right, at, rule);
            Text(canvas, RoundNumbers.Plain(value), frame.Left - 12, at + (0.35f * TextPx), TextPx, isStrong: false, palette.Main, SKTextAlign.Right);
        }

        rule.IsStroke = true;
        rule.Color = palette.BoardEdge;
        canvas.DrawRect(frame, rule);
    }

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

    private static float PaintKey(SKCanvas canvas, PlotSeries series, float left, float y, OverlayPalette palette)
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

        foreach (string line in PictureFonts.Wrap(series.Name, TextPx, false, KeyWidthPx - 110))
        {
            Text(canvas, line, left + 62, y, TextPx, isStrong: false, palette.Main);
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

    private static void Text(
        SKCanvas canvas, string text, float x, float y, float sizePx, bool isStrong, SKColor colour, SKTextAlign align = SKTextAlign.Left) =>
        PictureFonts.Draw(canvas, text, new SKPoint(x, y), align, sizePx, isStrong, colour);
}

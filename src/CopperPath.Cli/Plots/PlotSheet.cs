using System.Text;
using CopperPath.Cli.Overlays;
using SkiaSharp;

namespace CopperPath.Cli.Plots;

/// <summary>What every plot has: its sheet, its frame with a grid, its words. The same drawing gives the same bytes.</summary>
internal static class PlotSheet
{
    public const float TextPx = 22;

    /// <summary>Room to the right of the frame, for what says which line is which.</summary>
    public const float KeyWidthPx = 430;

    private const int WidthPx = 1600;
    private const int HeightPx = 1150;
    private const float LeftPx = 130;
    private const float TopPx = 110;
    private const float FootPx = 190;

    public static SKRect Frame => new(LeftPx, TopPx, WidthPx - KeyWidthPx, HeightPx - FootPx);

    public static OverlayPalette Palette => OverlayPalette.Of(OverlayTheme.Light);

    public static byte[] Png(Action<SKCanvas> paint)
    {
        using SKBitmap bitmap = new(new SKImageInfo(WidthPx, HeightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Clear(Palette.Page);
            paint(canvas);
        }

        return PngFile.Of(bitmap);
    }

    public static byte[] Svg(Action<SKCanvas> paint)
    {
        using MemoryStream stream = new();
        using (SKCanvas canvas = SKSvgCanvas.Create(SKRect.Create(WidthPx, HeightPx), stream))
        {
            canvas.Clear(Palette.Page);
            paint(canvas);
        }

        return Encoding.UTF8.GetBytes(OverlayPainter.Portable(
            Encoding.UTF8.GetString(stream.ToArray()).ReplaceLineEndings("\n"), new SKSizeI(WidthPx, HeightPx)));
    }

    /// <summary>Title, names of the axes and the lines under the plot.</summary>
    public static void PaintWords(SKCanvas canvas, string title, string abscissa, string ordinate, IReadOnlyList<string> notes)
    {
        SKRect frame = Frame;
        float titleY = 60;
        foreach (string line in PictureFonts.Wrap(title, 1.4f * TextPx, true, WidthPx - LeftPx - 40).Take(2))
        {
            Text(canvas, line, LeftPx, titleY, 1.4f * TextPx, isStrong: true, Palette.Main);
            titleY += 1.6f * TextPx;
        }

        Text(canvas, abscissa, frame.MidX, frame.Bottom + 70, TextPx, isStrong: true, Palette.Main, SKTextAlign.Center);
        canvas.Save();
        canvas.RotateDegrees(-90, 45, frame.MidY);
        Text(canvas, ordinate, 45, frame.MidY, TextPx, isStrong: true, Palette.Main, SKTextAlign.Center);
        canvas.Restore();
        float noteY = frame.Bottom + 112;
        foreach (string line in notes.SelectMany(note => PictureFonts.Wrap(note, 0.85f * TextPx, false, WidthPx - LeftPx - 40)))
        {
            Text(canvas, line, LeftPx, noteY, 0.85f * TextPx, isStrong: false, Palette.Muted);
            noteY += 1.2f * TextPx;
        }
    }

    /// <param name="canvas">The sheet.</param>
    /// <param name="xTicks">Words along the foot and their places.</param>
    /// <param name="yTicks">Words along the side and theirs.</param>
    public static void PaintGrid(SKCanvas canvas, IEnumerable<(string Word, float Place)> xTicks, IEnumerable<(string Word, float Place)> yTicks)
    {
        SKRect frame = Frame;
        using SKPaint rule = new() { Color = Palette.Rule, StrokeWidth = 1, IsAntialias = true };
        using SKPaint plate = new() { Color = Palette.Plate };
        canvas.DrawRect(frame, plate);
        foreach ((string word, float at) in xTicks)
        {
            canvas.DrawLine(at, frame.Top, at, frame.Bottom, rule);
            Text(canvas, word, at, frame.Bottom + 32, TextPx, isStrong: false, Palette.Main, SKTextAlign.Center);
        }

        foreach ((string word, float at) in yTicks)
        {
            canvas.DrawLine(frame.Left, at, frame.Right, at, rule);
            Text(canvas, word, frame.Left - 12, at + (0.35f * TextPx), TextPx, isStrong: false, Palette.Main, SKTextAlign.Right);
        }

        rule.IsStroke = true;
        rule.Color = Palette.BoardEdge;
        canvas.DrawRect(frame, rule);
    }

    public static void Text(
        SKCanvas canvas, string text, float x, float y, float sizePx, bool isStrong, SKColor colour, SKTextAlign align = SKTextAlign.Left) =>
        PictureFonts.Draw(canvas, text, new SKPoint(x, y), align, sizePx, isStrong, colour);
}

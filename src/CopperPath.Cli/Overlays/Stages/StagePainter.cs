using SkiaSharp;

namespace CopperPath.Cli.Overlays.Stages;

/// <summary>Draws a stage picture as laid out. It decides nothing: all places come from the layout.</summary>
public static class StagePainter
{
    private const byte ReturnAlpha = 34;
    private const byte FillAlpha = 112;

    /// <summary>Where everything will stand, without drawing.</summary>
    public static StageLayout Arrange(StageScene scene) => StageArranger.Arrange(scene);

    /// <summary>The picture in a format.</summary>
    public static byte[] Paint(StageScene scene, PictureFormat format)
    {
        StageLayout layout = Arrange(scene);
        return format switch
        {
            PictureFormat.Svg => OverlayPainter.SvgOf(layout.Size, canvas => Paint(canvas, scene, layout)),
            PictureFormat.Pdf => OverlayPainter.PdfOf(layout.Size, canvas => Paint(canvas, scene, layout)),
            _ => OverlayPainter.PngOf(layout.Size, canvas => Paint(canvas, scene, layout)),
        };
    }

    private static void Paint(SKCanvas canvas, StageScene scene, StageLayout layout)
    {
        OverlayPalette palette = OverlayPalette.Of(scene.Theme);
        float hair = scene.UnitPx;
        canvas.Clear(palette.Page);
        PaintBoard(canvas, scene, layout, palette, hair);
        PaintAxes(canvas, layout, palette, hair);
        PaintRibbon(canvas, scene, layout, palette, hair);
        foreach (TextRun text in layout.Texts)
        {
            PictureFonts.Draw(canvas, text.Text, text.Baseline, SKTextAlign.Left, text.SizePx, text.IsStrong, text.Ink == Ink.Muted ? palette.Muted : palette.Main);
        }
    }

    private static void PaintBoard(SKCanvas canvas, StageScene scene, StageLayout layout, OverlayPalette palette, float hair)
    {
        canvas.Save();
        canvas.ClipRect(layout.View);
        Fill(canvas, layout.View, palette.Panel);
        using (SKPath outline = CopperPaths.Of(scene.Outline, layout.Transform))
        {
            Fill(canvas, outline, palette.Board);
            using SKPath art = CopperPaths.Of(scene.LineArt, layout.Transform);
            Stroke(canvas, art, palette.QuietEdge, 0.8f * hair);
            foreach (int i in StageArranger.DrawingOrder(scene.Fills))
            {
                PaintFill(canvas, scene.Fills[i], scene.Theme, layout, hair);
            }

            Stroke(canvas, outline, palette.BoardEdge, 1.6f * hair);
        }

        foreach (PlacedPart part in layout.Parts)
        {
            using SKPaint line = new() { Color = palette.Main, IsStroke = true, StrokeWidth = hair, IsAntialias = true };
            canvas.DrawRoundRect(part.Box, 2 * hair, 2 * hair, line);
            if (part.TextAt is { } at)
            {
                PictureFonts.Draw(canvas, part.Part.Name, at, SKTextAlign.Left, 12 * hair, true, palette.Main);
            }
        }

        foreach (StageLabel label in layout.Labels.Where(label => label.Anchor is not null))
        {
            SKColor accent = StageAccents.Of(scene.Fills[label.Fill].Kind, scene.Theme);
            using SKPaint line = new() { Color = accent, IsStroke = true, StrokeWidth = 1.6f * hair, IsAntialias = true };
            SKPoint end = new(Math.Clamp(label.Anchor!.Value.X, label.Plate.Left, label.Plate.Right), Math.Clamp(label.Anchor.Value.Y, label.Plate.Top, label.Plate.Bottom));
            canvas.DrawLine(label.Anchor.Value, end, line);
            using SKPaint dot = new() { Color = accent, IsAntialias = true };
            canvas.DrawCircle(label.Anchor.Value, 3.5f * hair, dot);
        }

        foreach (PlacedEnd end in layout.Ends)
        {
            PaintEnd(canvas, end, scene.Theme, palette, hair);
        }

        foreach (StageLabel label in layout.Labels)
        {
            PaintLabel(canvas, label, scene, palette, hair);
        }

        canvas.Restore();
    }

    /// <summary>Layers of one fill are laid down as one, so that copper over copper is no darker.</summary>
    private static void PaintFill(SKCanvas canvas, StageFill fill, OverlayTheme theme, StageLayout layout, float hair)
    {
        SKColor accent = StageAccents.Of(fill.Kind, theme);
        bool isReturn = fill.Kind == StageKind.Return;
        using SKPath path = CopperPaths.Of(fill.Copper, layout.Transform);
        Fill(canvas, path, accent.WithAlpha(isReturn ? ReturnAlpha : FillAlpha));
        Stroke(canvas, path, isReturn ? accent.WithAlpha(110) : accent, isReturn ? 0.8f * hair : 1.5f * hair);
    }

    /// <summary>Current comes out of the board at a dot and goes in at a cross, as vectors are drawn end on.</summary>
    private static void PaintEnd(SKCanvas canvas, PlacedEnd end, OverlayTheme theme, OverlayPalette palette, float hair)
    {
        SKColor accent = StageAccents.Of(end.End.Kind, theme);
        using SKPaint ground = new() { Color = palette.Plate, IsAntialias = true };
        using SKPaint line = new() { Color = accent, IsStroke = true, StrokeWidth = 2 * hair, IsAntialias = true };
        canvas.DrawCircle(end.At, end.RadiusPx, ground);
        canvas.DrawCircle(end.At, end.RadiusPx, line);
        if (end.End.CurrentA > 0)
        {
            float reach = end.RadiusPx * 0.6f;
            canvas.DrawLine(end.At.X - reach, end.At.Y - reach, end.At.X + reach, end.At.Y + reach, line);
            canvas.DrawLine(end.At.X - reach, end.At.Y + reach, end.At.X + reach, end.At.Y - reach, line);
        }
        else
        {
            using SKPaint dot = new() { Color = accent, IsAntialias = true };
            canvas.DrawCircle(end.At, end.RadiusPx * 0.36f, dot);
        }

        if (end.TextAt is { } at)
        {
            using SKPaint halo = new() { Color = palette.Plate, IsStroke = true, StrokeWidth = 4 * hair, StrokeJoin = SKStrokeJoin.Round, IsAntialias = true };
            canvas.DrawText(end.End.Text, at, SKTextAlign.Left, PictureFonts.Of(13 * hair, true), halo);
            PictureFonts.Draw(canvas, end.End.Text, at, SKTextAlign.Left, 13 * hair, true, accent);
        }
    }

    private static void PaintLabel(SKCanvas canvas, StageLabel label, StageScene scene, OverlayPalette palette, float hair)
    {
        SKColor accent = StageAccents.Of(scene.Fills[label.Fill].Kind, scene.Theme);
        using SKPaint ground = new() { Color = palette.Plate, IsAntialias = true };
        using SKPaint edge = new() { Color = accent, IsStroke = true, StrokeWidth = 1.6f * hair, IsAntialias = true };
        canvas.DrawRoundRect(label.Plate, 5 * hair, 5 * hair, ground);
        canvas.DrawRoundRect(label.Plate, 5 * hair, 5 * hair, edge);
        for (int n = 0; n < label.Lines.Count; n++)
        {
            PictureFonts.Draw(canvas, label.Lines[n], new SKPoint(label.Plate.Left + (9 * hair), label.Plate.Top + ((20 + (19 * n)) * hair)), SKTextAlign.Left, 15 * hair, n == 0, n == 0 ? accent : palette.Main);
        }
    }

    private static void PaintAxes(SKCanvas canvas, StageLayout layout, OverlayPalette palette, float hair)
    {
        using SKPaint line = new() { Color = palette.BoardEdge, IsStroke = true, StrokeWidth = hair, IsAntialias = true };
        canvas.DrawRect(layout.View, line);
        foreach (AxisTick tick in layout.Ticks)
        {
            canvas.DrawLine(tick.At, tick.IsAcross ? new SKPoint(tick.At.X, tick.At.Y + (6 * hair)) : new SKPoint(tick.At.X - (6 * hair), tick.At.Y), line);
            PictureFonts.Draw(canvas, tick.Text, tick.IsAcross ? new SKPoint(tick.At.X, tick.At.Y + (23 * hair)) : new SKPoint(tick.At.X - (10 * hair), tick.At.Y + (5 * hair)),
                tick.IsAcross ? SKTextAlign.Center : SKTextAlign.Right, 14 * hair, false, palette.Muted);
        }
    }

    private static void PaintRibbon(SKCanvas canvas, StageScene scene, StageLayout layout, OverlayPalette palette, float hair)
    {
        for (int k = 0; k < layout.Ribbon.Count; k++)
        {
            RibbonChip chip = layout.Ribbon[k];
            SKColor accent = StageAccents.Of(chip.Kind, scene.Theme);
            using SKPaint ground = new() { Color = palette.Plate, IsAntialias = true };
            using SKPaint edge = new() { Color = accent, IsStroke = true, StrokeWidth = 1.6f * hair, IsAntialias = true };
            using SKPaint bar = new() { Color = accent, IsAntialias = true };
            canvas.DrawRoundRect(chip.Box, 5 * hair, 5 * hair, ground);
            canvas.DrawRoundRect(chip.Box, 5 * hair, 5 * hair, edge);
            canvas.DrawRoundRect(SKRect.Create(chip.Box.Left, chip.Box.Top, 9 * hair, chip.Box.Height), 5 * hair, 5 * hair, bar);
            PictureFonts.Draw(canvas, chip.Head, new SKPoint(chip.Box.Left + (20 * hair), chip.Box.Top + (24 * hair)), SKTextAlign.Left, 17 * hair, true, accent);
            for (int n = 0; n < chip.Facts.Count; n++)
            {
                PictureFonts.Draw(canvas, chip.Facts[n], new SKPoint(chip.Box.Left + (20 * hair), chip.Box.Top + ((46 + (20 * n)) * hair)), SKTextAlign.Left, 15 * hair, false, palette.Main);
            }

            if (k + 1 < layout.Ribbon.Count)
            {
                Arrow(canvas, chip.Box.Right + (6 * hair), layout.Ribbon[k + 1].Box.Left - (6 * hair), chip.Box.MidY, palette.Muted, hair);
            }
        }
    }

    private static void Arrow(SKCanvas canvas, float from, float to, float y, SKColor colour, float hair)
    {
        using SKPaint line = new() { Color = colour, IsStroke = true, StrokeWidth = 2 * hair, IsAntialias = true };
        canvas.DrawLine(from, y, to, y, line);
        canvas.DrawLine(to, y, to - (7 * hair), y - (5 * hair), line);
        canvas.DrawLine(to, y, to - (7 * hair), y + (5 * hair), line);
    }

    private static void Fill(SKCanvas canvas, SKPath path, SKColor colour)
    {
        using SKPaint paint = new() { Color = colour, IsAntialias = true };
        canvas.DrawPath(path, paint);
    }

    private static void Fill(SKCanvas canvas, SKRect box, SKColor colour)
    {
        using SKPaint paint = new() { Color = colour };
        canvas.DrawRect(box, paint);
    }

    private static void Stroke(SKCanvas canvas, SKPath path, SKColor colour, float widthPx)
    {
        using SKPaint paint = new() { Color = colour, IsStroke = true, StrokeWidth = widthPx, IsAntialias = true };
        canvas.DrawPath(path, paint);
    }
}

using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>Draws a scene as laid out. It decides nothing: all places come from the layout.</summary>
internal sealed class ScenePainter
{
    /// <summary>Edges of copper. Up to one pixel a line is drawn as such, beyond that as the outline of its outline, at several times the cost.</summary>
    private const float EdgePx = 1;

    private readonly SKCanvas _canvas;
    private readonly OverlayScene _scene;
    private readonly FieldSummary _field;
    private readonly OverlayLayout _layout;
    private readonly OverlayPalette _palette;
    private readonly float _hairPx;

    public ScenePainter(SKCanvas canvas, OverlayScene scene, FieldSummary field, OverlayLayout layout)
    {
        _canvas = canvas;
        _scene = scene;
        _field = field;
        _layout = layout;
        _palette = OverlayPalette.Of(scene.Theme);
        _hairPx = Math.Max(1, scene.WidthPx / 1800f);
    }

    private int StripePx => Math.Max(1, (int)Math.Round(2 * _hairPx));

    private static ColourMap FieldMap => ColourMap.Viridis;

    private static ColourMap ViaMap => ColourMap.InnerInferno;

    public void Paint()
    {
        FillRect(SKRect.Create(_layout.Size.Width, _layout.Size.Height), _palette.Page);
        PaintBoard();
        foreach (PlacedCallOut callOut in _layout.CallOuts)
        {
            PaintLeader(callOut);
        }

        foreach (NumberPlate plate in _layout.CallOuts.Select(c => c.Plate).OfType<NumberPlate>().Concat(_layout.ListedPlates))
        {
            PaintPlate(plate);
        }

        PaintLegend(_layout.FieldLegend, FieldMap);
        PaintLegend(_layout.ViaLegend, ViaMap);
        PaintLengthBar();
        PaintKeyMap();
        foreach (KeySwatch key in _layout.Keys)
        {
            PaintKey(key);
        }

        foreach (SKRect rule in _layout.Rules)
        {
            FillRect(rule, _palette.Rule);
        }

        foreach (TextRun text in _layout.Texts)
        {
            PictureFonts.Draw(_canvas, text.Text, text.Baseline, SKTextAlign.Left, text.SizePx, text.IsStrong, ColourOf(text.Ink));
        }
    }

    private void PaintBoard()
    {
        FillRect(_layout.Frame, _palette.Panel);
        _canvas.Save();
        _canvas.ClipRect(_layout.View);
        using (SKPath outline = CopperPaths.Of(_scene.Outline, _layout.Transform))
        {
            FillPath(outline, _palette.Board);
            PaintQuietCopper();
            PaintNetCopper();
            PaintContours(outline);
            StrokePath(outline, _palette.BoardEdge, 1.4f * _hairPx);
        }

        foreach (PlacedVia via in _layout.Vias)
        {
            PaintVia(via);
        }

        PaintContourLabels();
        _canvas.Restore();
    }

    private void PaintQuietCopper()
    {
        using SKPath path = CopperPaths.Of(_scene.QuietCopper, _layout.Transform);
        FillPath(path, _palette.QuietFill);
        StrokePath(path, _palette.QuietEdge, EdgePx);
    }

    private void PaintNetCopper()
    {
        using SKPath path = CopperPaths.Of(_scene.NetCopper, _layout.Transform);
        FillPath(path, _palette.NetFill);
        SKRectI area = AreaOf(path.Bounds);
        if (_field.HasValues && !area.IsEmpty)
        {
            using SKImage image = FieldRaster.Sample(_scene.Sheets, _layout.Transform, area).Coloured(_field.Scale, FieldMap, StripePx);
            _canvas.Save();
            _canvas.ClipPath(path, SKClipOperation.Intersect, antialias: true);
            _canvas.DrawImage(image, area.Left, area.Top, new SKSamplingOptions(SKFilterMode.Nearest));
            _canvas.Restore();
        }

        StrokePath(path, _palette.NetEdge, EdgePx);
    }

    /// <summary>Whole pixels of the view that some copper may lie in.</summary>
    private SKRectI AreaOf(SKRect copper) =>
        SKRectI.Ceiling(SKRect.Intersect(_layout.View, SKRect.Inflate(copper, 1, 1)), outwards: true);

    // White lines in a dark casing are seen on every shade and on both grounds. They cross islands and the gaps between
    // them: the board is warm there too.
    private void PaintContours(SKPath outline)
    {
        _canvas.Save();
        if (!outline.IsEmpty)
        {
            _canvas.ClipPath(outline, SKClipOperation.Intersect, antialias: true);
        }

        foreach (PlacedContour contour in _layout.Contours)
        {
            using SKPathBuilder builder = new();
            builder.AddPoly(contour.Line, close: false);
            using SKPath line = builder.Detach();
            StrokePath(line, SKColors.Black.WithAlpha(170), 3.4f * _hairPx);
            StrokePath(line, SKColors.White, 1.5f * _hairPx);
        }

        _canvas.Restore();
    }

    private void PaintContourLabels()
    {
        using SKPaint plate = new() { Color = _palette.Plate.WithAlpha(235), IsAntialias = true };
        foreach (SKRect label in _layout.Contours.SelectMany(contour => contour.Labels))
        {
            _canvas.DrawRoundRect(label, label.Height / 2, label.Height / 2, plate);
        }
    }

    // Over the limit is told by shape, a lozenge, and in ink: the accent belongs to the call-outs.
    private void PaintVia(PlacedVia placed)
    {
        if (placed.Via.IsOverLimit)
        {
            SKRect box = placed.Box;
            FillLozenge(SKRect.Inflate(box, 3.5f * _hairPx, 3.5f * _hairPx), _palette.Page);
            FillLozenge(SKRect.Inflate(box, 2 * _hairPx, 2 * _hairPx), _palette.Main);
            FillLozenge(SKRect.Inflate(box, -0.5f * _hairPx, -0.5f * _hairPx), _palette.Page);
        }

        // A pale rim parts the dot from any shade below it; that of holes with little current is fainter.
        double place = _field.ViaScale.PlaceOf(Math.Abs(placed.Via.CurrentA));
        FillCircle(placed.Centre, placed.RadiusPx + (0.5f * _hairPx), _palette.ViaGround.WithAlpha((byte)(120 + (135 * Math.Sqrt(place)))));
        FillCircle(placed.Centre, placed.RadiusPx - (0.5f * _hairPx), ViaMap.At(place));
    }

    private void FillLozenge(SKRect box, SKColor colour) => FillPolygon(
        colour,
        new SKPoint(box.MidX, box.Top),
        new SKPoint(box.Right, box.MidY),
        new SKPoint(box.MidX, box.Bottom),
        new SKPoint(box.Left, box.MidY));

    private void PaintLeader(PlacedCallOut placed)
    {
        float line = Math.Max(1.5f * _hairPx, _scene.WidthPx / 1000f);
        SKColor colour = placed.CallOut.Rank == CallOutRank.Note ? _palette.Main : _palette.Accent;
        if (placed.Extent is { } extent)
        {
            StrokeBox(extent, _palette.Plate, 2.6f * line);
        }
        else
        {
            StrokeCircle(placed.Spot, placed.RingRadiusPx, _palette.Plate, 2.6f * line);
        }

        if (placed.Plate is not null)
        {
            StrokeLine(placed.LeaderStart, placed.LeaderEnd, _palette.Plate, 2.2f * line);
            StrokeLine(placed.LeaderStart, placed.LeaderEnd, colour, line);
        }

        if (placed.Extent is { } box)
        {
            StrokeBox(box, colour, line);
        }
        else
        {
            StrokeCircle(placed.Spot, placed.RingRadiusPx, colour, 1.3f * line);
        }
    }

    private void PaintPlate(NumberPlate plate)
    {
        float edge = 1.5f * _hairPx;
        bool isFail = plate.Rank == CallOutRank.Fail;
        float corner = plate.Rank == CallOutRank.Note ? plate.Box.Height / 2 : isFail ? 0 : plate.Box.Height / 5;
        SKRect inner = SKRect.Inflate(plate.Box, -edge / 2, -edge / 2);
        using SKPaint fill = new() { Color = isFail ? _palette.Accent : _palette.Plate, IsAntialias = true };
        using SKPaint stroke = Stroke(plate.Rank == CallOutRank.Note ? _palette.Main : _palette.Accent, edge);
        _canvas.DrawRoundRect(inner, corner, corner, fill);
        _canvas.DrawRoundRect(inner, corner, corner, stroke);
    }

    private void PaintLegend(LegendBar? legend, ColourMap map)
    {
        if (legend is null)
        {
            return;
        }

        SKRect bar = legend.Bar;
        const int Stops = 65;
        SKColor[] colours = [.. Enumerable.Range(0, Stops).Select(i => map.At(i / (Stops - 1.0)))];
        using (SKShader shader = SKShader.CreateLinearGradient(
            new SKPoint(bar.Left, 0), new SKPoint(bar.Right, 0), colours, SKShaderTileMode.Clamp))
        using (SKPaint paint = new() { Shader = shader, IsAntialias = legend.IsWedge })
        using (SKPathBuilder shape = new())
        {
            float thin = legend.IsWedge ? 0.4f * bar.Height : 0;
            shape.AddPoly(
                [new SKPoint(bar.Left, bar.Top + thin), new SKPoint(bar.Right, bar.Top), new SKPoint(bar.Right, bar.Bottom), new SKPoint(bar.Left, bar.Bottom - thin)],
                close: true);
            using SKPath path = shape.Detach();
            _canvas.DrawPath(path, paint);
        }

        if (legend.RunsOver)
        {
            PaintOverflow(bar, map);
        }

        foreach (float tick in legend.Ticks)
        {
            FillRect(SKRect.Create(tick - (_hairPx / 2), bar.Bottom, _hairPx, 0.3f * bar.Height), _palette.Muted);
        }

        float mark = 0.3f * bar.Height;
        FillPolygon(
            _palette.Main,
            new SKPoint(legend.PeakXPx - mark, bar.Top - (1.3f * mark)),
            new SKPoint(legend.PeakXPx + mark, bar.Top - (1.3f * mark)),
            new SKPoint(legend.PeakXPx, bar.Top));
    }

    /// <summary>A tip at the bar's end, hatched as the copper above the scale is.</summary>
    private void PaintOverflow(SKRect bar, ColourMap map)
    {
        using SKPathBuilder builder = new();
        builder.AddPoly(
            [new SKPoint(bar.Right, bar.Top), new SKPoint(bar.Right + bar.Height, bar.MidY), new SKPoint(bar.Right, bar.Bottom)], close: true);
        using SKPath tip = builder.Detach();
        FillPath(tip, map.At(1));
        _canvas.Save();
        _canvas.ClipPath(tip, SKClipOperation.Intersect, antialias: true);
        for (float x = bar.Right; x < bar.Right + (2 * bar.Height); x += 3 * StripePx * MathF.Sqrt(2))
        {
            StrokeLine(new SKPoint(x, bar.Top), new SKPoint(x - bar.Height, bar.Bottom), map.At(0), StripePx);
        }

        _canvas.Restore();
    }

    private void PaintLengthBar()
    {
        SKRect bar = _layout.ScaleBar.Bar;
        using SKPaint edge = Stroke(_palette.Main, _hairPx);
        FillRect(SKRect.Create(bar.Left, bar.Top, bar.Width / 2, bar.Height), _palette.Main);
        _canvas.DrawRect(SKRect.Inflate(bar, -_hairPx / 2, -_hairPx / 2), edge);
    }

    private void PaintKeyMap()
    {
        if (_layout.KeyMap is not { } map)
        {
            return;
        }

        _canvas.Save();
        _canvas.ClipRect(map.Box);
        FillRect(map.Box, _palette.Panel);
        using (SKPath outline = CopperPaths.Of(_scene.Outline, map.Transform))
        using (SKPath net = CopperPaths.Of(_scene.NetCopper, map.Transform))
        {
            FillPath(outline, _palette.Board);
            FillPath(net, _palette.NetFill);
            StrokePath(outline, _palette.BoardEdge, _hairPx);
        }

        _canvas.Restore();
        using SKPaint frame = Stroke(_palette.Main, 1.6f * _hairPx);
        _canvas.DrawRect(map.Shown, frame);
    }

    private void PaintKey(KeySwatch key)
    {
        SKPoint centre = new(key.Box.MidX, key.Box.MidY);
        switch (key.Kind)
        {
            case KeyKind.OtherCopper:
                PaintSwatch(key.Box, _palette.QuietFill, _palette.QuietEdge);
                break;
            case KeyKind.UnsolvedCopper:
                PaintSwatch(key.Box, _palette.NetFill, _palette.NetEdge);
                break;
            default:
                bool isOverLimit = key.Kind == KeyKind.ViaOverLimit;
                ViaMark sample = new(default, _field.ViaScale.Top / 2, isOverLimit);
                PaintVia(new PlacedVia(sample, centre, (isOverLimit ? 0.28f : 0.38f) * key.Box.Height));
                break;
        }
    }

    private void PaintSwatch(SKRect box, SKColor fill, SKColor edge)
    {
        FillRect(box, fill);
        using SKPaint paint = Stroke(edge, _hairPx);
        _canvas.DrawRect(SKRect.Inflate(box, -_hairPx / 2, -_hairPx / 2), paint);
    }

    private SKColor ColourOf(Ink ink) => ink switch
    {
        Ink.Muted => _palette.Muted,
        Ink.Accent => _palette.Accent,
        Ink.OnAccent => _palette.OnAccent,
        _ => _palette.Main,
    };

    private static SKPaint Stroke(SKColor colour, float width) =>
        new() { Color = colour, IsStroke = true, StrokeWidth = width, IsAntialias = true, StrokeJoin = SKStrokeJoin.Round };

    private void FillRect(SKRect rect, SKColor colour)
    {
        using SKPaint paint = new() { Color = colour, IsAntialias = true };
        _canvas.DrawRect(rect, paint);
    }

    private void FillPath(SKPath path, SKColor colour)
    {
        using SKPaint paint = new() { Color = colour, IsAntialias = true };
        _canvas.DrawPath(path, paint);
    }

    private void StrokePath(SKPath path, SKColor colour, float width)
    {
        using SKPaint paint = Stroke(colour, width);
        _canvas.DrawPath(path, paint);
    }

    private void FillCircle(SKPoint centre, float radius, SKColor colour)
    {
        using SKPaint paint = new() { Color = colour, IsAntialias = true };
        _canvas.DrawCircle(centre, radius, paint);
    }

    private void StrokeCircle(SKPoint centre, float radius, SKColor colour, float width)
    {
        using SKPaint paint = Stroke(colour, width);
        _canvas.DrawCircle(centre, radius, paint);
    }

    private void StrokeBox(SKRect box, SKColor colour, float width)
    {
        using SKPaint paint = Stroke(colour, width);
        float corner = 4 * _hairPx;
        _canvas.DrawRoundRect(box, corner, corner, paint);
    }

    private void StrokeLine(SKPoint from, SKPoint to, SKColor colour, float width)
    {
        using SKPaint paint = Stroke(colour, width);
        _canvas.DrawLine(from, to, paint);
    }

    private void FillPolygon(SKColor colour, params SKPoint[] corners)
    {
        using SKPathBuilder builder = new();
        builder.AddPoly(corners, close: true);
        using SKPath path = builder.Detach();
        FillPath(path, colour);
    }
}

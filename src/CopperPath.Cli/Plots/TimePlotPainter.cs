using CopperPath.Cli.Overlays;
using CopperPath.Cli.Overlays.Stages;
using SkiaSharp;

namespace CopperPath.Cli.Plots;

/// <summary>
/// Draws a <see cref="TimePlot"/>. Colour says the stage alone: neighbouring curves differ by their dashes too, and each has a label
/// with a leader from where it ends, so that no reader needs the colours.
/// </summary>
public static class TimePlotPainter
{
    private const float TextPx = PlotSheet.TextPx;
    private const float SmallPx = 0.82f * TextPx;
    private const float LeaderPx = 26;
    private const float SamplePx = 52;
    private const float GapPx = 12;
    private const int MostNameLines = 2;

    /// <summary>Curves of stages in turn; the first is whole.</summary>
    private static readonly float[][] s_dashes = [[], [18, 7], [4, 6], [18, 6, 4, 6], [9, 6], [26, 6, 4, 6, 4, 6]];

    public static byte[] PaintPng(TimePlot plot) => PlotSheet.Png(canvas => Paint(canvas, plot));

    public static byte[] PaintSvg(TimePlot plot) => PlotSheet.Svg(canvas => Paint(canvas, plot));

    private static void Paint(SKCanvas canvas, TimePlot plot)
    {
        SKRect frame = PlotSheet.Frame;
        double most = plot.Curves.SelectMany(curve => curve.Points.Select(point => point.Value))
            .Concat(plot.Limits.Select(limit => limit.Value)).DefaultIfEmpty(0).Max();
        LinearAxis x = LinearAxis.To(plot.End, frame.Left, frame.Right);
        LinearAxis y = LinearAxis.ToTickAfter(most, frame.Bottom, frame.Top);
        PlotSheet.PaintGrid(canvas, x.Ticks, y.Ticks);
        PlotSheet.PaintWords(canvas, plot.Title, plot.AbscissaName, plot.OrdinateName, plot.Notes);
        List<EndLabel> labels = [];
        foreach (TimeLimit limit in plot.Limits)
        {
            EndLabel label = new(limit.Name, limit.Facts, PlotSheet.Palette.Accent, 2.5f, [12, 8], y.PlaceOf(limit.Value));
            using SKPaint stroke = label.Stroke();
            canvas.DrawLine(frame.Left, label.EndPx, frame.Right, label.EndPx, stroke);
            labels.Add(label);
        }

        int turn = 0;
        foreach (TimeCurve curve in plot.Curves)
        {
            EndLabel label = curve.Stage is { } stage
                ? new(curve.Name, curve.Facts, StageAccents.Of(stage, OverlayTheme.Light), 3.5f, s_dashes[turn++ % s_dashes.Length], y.PlaceOf(curve.Points[^1].Value))
                : new(curve.Name, curve.Facts, PlotSheet.Palette.Main, 5, [], y.PlaceOf(curve.Points[^1].Value));
            PaintCurve(canvas, label, [.. curve.Points.Select(point => new SKPoint(x.PlaceOf(point.Time), y.PlaceOf(point.Value)))]);
            labels.Add(label);
        }

        PaintLabels(canvas, frame, labels);
    }

    private static void PaintCurve(SKCanvas canvas, EndLabel label, SKPoint[] points)
    {
        using SKPaint stroke = label.Stroke();
        using SKPathBuilder way = new();
        way.AddPoly(points, close: false);
        using SKPath path = way.Detach();
        canvas.DrawPath(path, stroke);

        // The peak, as a dot with a rim of the ground: what is judged.
        SKPoint peak = points.MinBy(point => point.Y);
        using SKPaint dot = new() { Color = label.Colour, IsAntialias = true };
        using SKPaint rim = new() { Color = PlotSheet.Palette.Plate, IsAntialias = true };
        canvas.DrawCircle(peak, 9, rim);
        canvas.DrawCircle(peak, 6.5f, dot);
    }

    private static void PaintLabels(SKCanvas canvas, SKRect frame, List<EndLabel> labels)
    {
        // Those that end alike stand as they were drawn: a stable order.
        EndLabel[] inOrder = [.. labels.OrderBy(label => label.EndPx)];
        float[] tops = Apart([.. inOrder.Select(label => label.EndPx - (TextPx / 2))], [.. inOrder.Select(label => label.HeightPx)], frame.Bottom);
        for (int i = 0; i < inOrder.Length; i++)
        {
            EndLabel label = inOrder[i];
            float y = tops[i] + (TextPx / 2);
            using SKPaint leader = new() { Color = label.Colour, StrokeWidth = 1, IsAntialias = true };
            using SKPaint sample = label.Stroke();
            canvas.DrawLine(frame.Right, label.EndPx, frame.Right + LeaderPx, y, leader);
            canvas.DrawLine(frame.Right + LeaderPx, y, frame.Right + LeaderPx + SamplePx, y, sample);
            float baseline = y + (0.35f * TextPx);
            float left = frame.Right + LeaderPx + SamplePx + GapPx;
            foreach (string line in label.NameLines)
            {
                PlotSheet.Text(canvas, line, left, baseline, TextPx, isStrong: true, PlotSheet.Palette.Main);
                baseline += 1.2f * TextPx;
            }

            foreach (string line in label.FactLines)
            {
                PlotSheet.Text(canvas, line, left, baseline, SmallPx, isStrong: false, PlotSheet.Palette.Muted);
                baseline += 1.2f * SmallPx;
            }
        }
    }

    /// <summary>Tops of boxes as near to where they are wanted as they go without overlap, none below the foot.</summary>
    /// <param name="wanted">Wanted tops, in order.</param>
    /// <param name="heights">Heights, gap included.</param>
    /// <param name="foot">Lowest place of a bottom.</param>
    internal static float[] Apart(float[] wanted, float[] heights, float foot)
    {
        float[] tops = [.. wanted];
        for (int i = 1; i < tops.Length; i++)
        {
            tops[i] = Math.Max(tops[i], tops[i - 1] + heights[i - 1]);
        }

        for (int i = tops.Length - 1; i >= 0; i--)
        {
            tops[i] = Math.Min(tops[i], foot - heights[i]);
            foot = tops[i];
        }

        return tops;
    }

    /// <summary>What stands right of a line's end.</summary>
    private sealed record EndLabel(string Name, string Facts, SKColor Colour, float WidthPx, float[] Dashes, float EndPx)
    {
        private const float RoomPx = PlotSheet.KeyWidthPx - LeaderPx - SamplePx - GapPx - 20;

        public IReadOnlyList<string> NameLines { get; } = Shortened(PictureFonts.Wrap(Name, TextPx, true, RoomPx));

        public IReadOnlyList<string> FactLines { get; } = PictureFonts.Wrap(Facts, SmallPx, false, RoomPx);

        public float HeightPx => (1.2f * TextPx * NameLines.Count) + (1.2f * SmallPx * FactLines.Count) + (0.45f * TextPx);

        public SKPaint Stroke() => new()
        {
            Color = Colour,
            StrokeWidth = WidthPx,
            Style = SKPaintStyle.Stroke,
            StrokeJoin = SKStrokeJoin.Round,
            IsAntialias = true,
            PathEffect = Dashes.Length == 0 ? null : SKPathEffect.CreateDash(Dashes, 0),
        };

        private static IReadOnlyList<string> Shortened(IReadOnlyList<string> lines) =>
            lines.Count <= MostNameLines ? lines : [.. lines.Take(MostNameLines - 1), lines[MostNameLines - 1] + "\u2026"];
    }
}

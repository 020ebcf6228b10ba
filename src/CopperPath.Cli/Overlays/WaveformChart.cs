using CopperPath.Converter;
using CopperPath.Quantities;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>Waveforms of a converter over one period: one panel for each quantity above a common axis of time.</summary>
public static class WaveformChart
{
    private const int WidthPx = 1600;
    private const int PanelPx = 240;
    private const int HeadPx = 110;
    private const int FootPx = 90;
    private const int LeftPx = 130;
    private const int RightPx = 60;
    private const int GapPx = 56;
    private const float TextPx = 22;
    private const float TitlePx = 32;
    private const int MostTicks = 5;

    /// <summary>Line colours of the phases in turn, far apart in lightness so that they also differ in grey.</summary>
    private static readonly SKColor[] s_phaseColours =
        [new(0xFF1D3B53), new(0xFFC2330B), new(0xFF3E8E7E), new(0xFFB98A1D), new(0xFF7A4E9C), new(0xFF6A655C)];

    /// <param name="facts">The converter; its name heads the chart.</param>
    /// <returns>The picture as PNG; the same bytes for the same facts.</returns>
    public static byte[] PaintPng(ConverterFacts facts)
    {
        ConverterWaveforms waves = ConverterWaveforms.Of(facts.Stage);
        (string Title, IReadOnlyList<Waveform> Lines)[] panels =
        [
            ("Switch nodes", waves.SwitchNodesV),
            ("Inductors", waves.InductorsA),
            ("All inductors together", [waves.OutputA]),
            ("Input capacitors", [waves.InputCapacitorsA]),
        ];
        int heightPx = HeadPx + (panels.Length * (PanelPx + GapPx)) + FootPx - GapPx;
        using SKBitmap bitmap = new(new SKImageInfo(WidthPx, heightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            OverlayPalette palette = OverlayPalette.Of(OverlayTheme.Light);
            canvas.Clear(palette.Page);
            Text(canvas, $"{facts.Name}: waveforms over one period", LeftPx, 48, TitlePx, palette.Main, isStrong: true);
            Text(canvas, FormattableString.Invariant($"{facts.Stage.Phases} {(facts.Stage.Phases == 1 ? "phase" : "phases")}, ") + $"{QuantityText.Voltage(facts.Stage.InputV)} to {QuantityText.Voltage(facts.OutputV)}, "
                + $"{QuantityText.Current(facts.Stage.OutputA)}, duty {QuantityText.Percent(facts.Stage.Duty)}, {QuantityText.Frequency(facts.Stage.SwitchingHz)}; ideal parts",
                LeftPx, 82, TextPx, palette.Muted, isStrong: false);
            for (int p = 0; p < panels.Length; p++)
            {
                SKRect frame = SKRect.Create(LeftPx, HeadPx + 20 + (p * (PanelPx + GapPx)), WidthPx - LeftPx - RightPx, PanelPx);
                PaintPanel(canvas, palette, panels[p].Title, panels[p].Lines, frame, facts.Stage.PeriodS, withTimes: p == panels.Length - 1);
            }
        }

        return PngFile.Of(bitmap);
    }

    private static void PaintPanel(
        SKCanvas canvas, OverlayPalette palette, string title, IReadOnlyList<Waveform> lines, SKRect frame, double periodS, bool withTimes)
    {
        double low = Math.Min(0, lines.Min(line => line.Corners.Min(corner => corner.Value)));
        double high = Math.Max(0, lines.Max(line => line.Corners.Max(corner => corner.Value)));

        // Ripple on a large mean is what the reader looks for, so such a panel does not start at zero.
        double least = lines.Min(line => line.Corners.Min(corner => corner.Value));
        low = least > (high - least) ? least - (0.2 * (high - least)) : low;
        high = high > low ? high : low + 1;
        double step = RoundNumbers.Step(high - low, MostTicks);
        using SKPaint rule = new() { Color = palette.Rule, StrokeWidth = 1.5f, IsAntialias = true };
        foreach (double tick in RoundNumbers.Multiples(low, high, step))
        {
            float y = Y(tick);
            canvas.DrawLine(frame.Left, y, frame.Right, y, rule);
            string text = RoundNumbers.Text(tick, step);
            Text(canvas, text, frame.Left - 12 - PictureFonts.WidthPx(text, TextPx, false), y + 8, TextPx, palette.Muted, isStrong: false);
        }

        Text(canvas, $"{title}, {lines[0].Unit}", frame.Left, frame.Top - 10, TextPx, palette.Main, isStrong: true);
        if (lines.Count > 1)
        {
            PaintPhaseKey(canvas, palette, lines.Count, frame.Right, frame.Top - 10);
        }

        for (int i = 0; i < lines.Count; i++)
        {
            using SKPaint stroke = LineOfPhase(i);
            using SKPathBuilder way = new();
            way.MoveTo(X(lines[i].Corners[0].TimeS), Y(lines[i].Corners[0].Value));
            foreach ((double timeS, double value) in lines[i].Corners.Skip(1))
            {
                way.LineTo(X(timeS), Y(value));
            }

            using SKPath path = way.Detach();
            canvas.DrawPath(path, stroke);
        }

        double timeStepUs = RoundNumbers.Step(periodS * 1e6, 8);
        foreach (double timeUs in RoundNumbers.Multiples(0, periodS * 1e6, timeStepUs))
        {
            float x = X(timeUs * 1e-6);
            canvas.DrawLine(x, frame.Bottom, x, frame.Bottom + 8, rule);
            if (withTimes)
            {
                string text = RoundNumbers.Text(timeUs, timeStepUs);
                Text(canvas, text, x - (PictureFonts.WidthPx(text, TextPx, false) / 2), frame.Bottom + 34, TextPx, palette.Muted, isStrong: false);
            }
        }

        if (withTimes)
        {
            Text(canvas, "Time from the turn-on of phase 1, us", frame.Left, frame.Bottom + 66, TextPx, palette.Main, isStrong: true);
        }

        float X(double timeS) => frame.Left + (float)(timeS / periodS * frame.Width);
        float Y(double value) => frame.Bottom - (float)((value - low) / (high - low) * frame.Height);
    }

    private static SKPaint LineOfPhase(int index) =>
        new() { Color = s_phaseColours[index % s_phaseColours.Length], StrokeWidth = 3, Style = SKPaintStyle.Stroke, IsAntialias = true };

    /// <summary>Which line is which phase, ending at the right edge of the panel.</summary>
    private static void PaintPhaseKey(SKCanvas canvas, OverlayPalette palette, int phases, float rightPx, float baselinePx)
    {
        const float DashPx = 30;
        const float NearPx = 8;
        const float FarPx = 22;
        const string Word = "phase";
        string[] numbers = [.. Enumerable.Range(1, phases).Select(number => RoundNumbers.Text(number, 1))];
        float x = rightPx - numbers.Sum(number => FarPx + DashPx + NearPx + PictureFonts.WidthPx(number, TextPx, false))
            - PictureFonts.WidthPx(Word, TextPx, false);
        Text(canvas, Word, x, baselinePx, TextPx, palette.Muted, isStrong: false);
        x += PictureFonts.WidthPx(Word, TextPx, false);
        for (int i = 0; i < phases; i++)
        {
            using SKPaint stroke = LineOfPhase(i);
            x += FarPx;
            canvas.DrawLine(x, baselinePx - 8, x + DashPx, baselinePx - 8, stroke);
            x += DashPx + NearPx;
            Text(canvas, numbers[i], x, baselinePx, TextPx, palette.Muted, isStrong: false);
            x += PictureFonts.WidthPx(numbers[i], TextPx, false);
        }
    }

    private static void Text(SKCanvas canvas, string text, float x, float y, float sizePx, SKColor colour, bool isStrong)
    {
        using SKPaint paint = new() { Color = colour, IsAntialias = true };
        canvas.DrawText(text, x, y, SKTextAlign.Left, PictureFonts.Of(sizePx, isStrong), paint);
    }
}

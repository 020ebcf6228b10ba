using CopperPath.Converter;
using CopperPath.Quantities;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>Waveforms of a converter over one period: one panel for each quantity above a common axis of time.</summary>
public static class WaveformChart
{
    private const int WidthPx = 1600;
    private const int PanelPx = 240;
    private const int LanePx = 64;
    private const int LaneGapPx = 26;
    private const int HeadPx = 172;
    private const int FootPx = 100;
    private const int LeftPx = 130;
    private const int RightPx = 60;
    private const int GapPx = 64;
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
        bool isOne = facts.Stage.Phases == 1;
        List<(string Title, IReadOnlyList<Waveform> Lines)> panels = [(isOne ? "Inductor" : "Inductors", waves.InductorsA)];
        if (!isOne)
        {
            panels.Add(("All inductors together", [waves.OutputA]));
        }

        panels.Add(("Input capacitors", [waves.InputCapacitorsA]));
        int lanes = waves.SwitchNodesV.Count;
        int lanesPx = (lanes * LanePx) + ((lanes - 1) * LaneGapPx);
        int heightPx = HeadPx + lanesPx + (panels.Count * (GapPx + PanelPx)) + FootPx;
        using SKBitmap bitmap = new(new SKImageInfo(WidthPx, heightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            OverlayPalette palette = OverlayPalette.Of(OverlayTheme.Light);
            canvas.Clear(palette.Page);
            Text(canvas, $"{facts.Name}: waveforms over one period", LeftPx, 48, TitlePx, palette.Main, isStrong: true);
            Text(canvas, ConditionsOf(facts), LeftPx, 84, TextPx, palette.Muted, isStrong: false);
            Text(canvas, BasisOf(facts), LeftPx, 114, TextPx, palette.Muted, isStrong: false);
            SKRect frame = SKRect.Create(LeftPx, HeadPx, WidthPx - LeftPx - RightPx, lanesPx);
            PaintLanes(canvas, palette, waves.SwitchNodesV, frame, facts.Stage);
            foreach ((string title, IReadOnlyList<Waveform> lines) in panels)
            {
                frame = SKRect.Create(frame.Left, frame.Bottom + GapPx, frame.Width, PanelPx);
                PaintPanel(canvas, palette, title, lines, frame, facts.Stage.PeriodS);
            }

            PaintTimes(canvas, palette, frame, facts.Stage.PeriodS);
        }

        return PngFile.Of(bitmap);
    }

    /// <summary>The operating point; a duty that carries losses says so.</summary>
    internal static string ConditionsOf(ConverterFacts facts)
    {
        BuckStage stage = facts.Stage;
        string why = facts.Efficiency < 1
            ? $" ({QuantityText.Percent(facts.OutputV / stage.InputV)} by the voltages, over the efficiency of {QuantityText.Percent(facts.Efficiency)})" : "";
        return $"{Counted.Of(stage.Phases, "phase")}, {QuantityText.Voltage(stage.InputV)} to {QuantityText.Voltage(facts.OutputV)}, {QuantityText.Current(stage.OutputA)}, "
            + $"{QuantityText.Frequency(stage.SwitchingHz)}, duty {QuantityText.Percent(stage.Duty)}{why}";
    }

    /// <summary>What the lines take for granted.</summary>
    internal static string BasisOf(ConverterFacts facts) =>
        (facts.Efficiency < 1 ? "Losses as a constant voltage in series with the inductors" : "No losses")
        + (facts.Stage.Phases > 1 ? "; phases alike" : "") + "; straight edges, no dead time, continuous conduction";

    /// <summary>A lane for each phase: on one axis the lines would lie on each other for most of the period.</summary>
    private static void PaintLanes(
        SKCanvas canvas, OverlayPalette palette, IReadOnlyList<Waveform> lines, SKRect frame, BuckStage stage)
    {
        Text(canvas, lines.Count > 1 ? "Switch nodes, V" : "Switch node, V", frame.Left, frame.Top - 16, TextPx, palette.Main, isStrong: true);
        if (lines.Count > 1)
        {
            PaintPhaseKey(canvas, palette, lines.Count, frame.Right, frame.Top - 16);
        }

        for (int i = 0; i < lines.Count; i++)
        {
            SKRect lane = SKRect.Create(frame.Left, frame.Top + (i * (LanePx + LaneGapPx)), frame.Width, LanePx);
            PaintTicks(canvas, palette, lane, 0, stage.InputV, [(0, "0"), (stage.InputV, RoundNumbers.ThreeDigits(stage.InputV))]);
            PaintLine(canvas, lines[i], i, lane, 0, stage.InputV, stage.PeriodS);
            PaintTimeTicks(canvas, palette, lane, stage.PeriodS);
        }
    }

    private static void PaintPanel(
        SKCanvas canvas, OverlayPalette palette, string title, IReadOnlyList<Waveform> lines, SKRect frame, double periodS)
    {
        Text(canvas, $"{title}, {lines[0].Unit}", frame.Left, frame.Top - 16, TextPx, palette.Main, isStrong: true);
        if (lines.Count > 1)
        {
            PaintPhaseKey(canvas, palette, lines.Count, frame.Right, frame.Top - 16);
        }

        // Ripple on a large mean is what the reader looks for, so such a panel does not start at zero. Both ends are
        // ticks: no part of a line lies beyond the last value written.
        double least = lines.Min(line => line.Corners.Min(corner => corner.Value));
        double most = lines.Max(line => line.Corners.Max(corner => corner.Value));
        bool isRipple = least > most - least;
        double low = isRipple ? least : Math.Min(0, least);
        double high = Math.Max(most, low + Math.Max(1e-9, 1e-9 * Math.Abs(low)));
        double step = RoundNumbers.Step(high - low, MostTicks);
        low = Math.Floor((low / step) + 1e-9) * step;
        high = Math.Ceiling((high / step) - 1e-9) * step;
        PaintTicks(canvas, palette, frame, low, high,
            [.. RoundNumbers.Multiples(low, high, step).Select(tick => (tick, RoundNumbers.Text(tick, step)))]);
        for (int i = 0; i < lines.Count; i++)
        {
            PaintLine(canvas, lines[i], i, frame, low, high, periodS);
        }

        PaintTimeTicks(canvas, palette, frame, periodS);
    }

    private static void PaintTicks(
        SKCanvas canvas, OverlayPalette palette, SKRect frame, double low, double high, IReadOnlyList<(double Value, string Label)> ticks)
    {
        using SKPaint rule = new() { Color = palette.Rule, StrokeWidth = 1.5f, IsAntialias = true };
        foreach ((double value, string label) in ticks)
        {
            float y = Height(frame, low, high, value);
            canvas.DrawLine(frame.Left, y, frame.Right, y, rule);
            Text(canvas, label, frame.Left - 12 - PictureFonts.WidthPx(label, TextPx, false), y + 8, TextPx, palette.Muted, isStrong: false);
        }
    }

    private static void PaintLine(SKCanvas canvas, Waveform line, int phase, SKRect frame, double low, double high, double periodS)
    {
        using SKPaint stroke = LineOfPhase(phase);
        using SKPathBuilder way = new();
        way.AddPoly(
            [.. line.Corners.Select(corner => new SKPoint(Abscissa(frame, periodS, corner.TimeS), Height(frame, low, high, corner.Value)))], close: false);
        using SKPath path = way.Detach();
        canvas.DrawPath(path, stroke);
    }

    private static void PaintTimeTicks(SKCanvas canvas, OverlayPalette palette, SKRect frame, double periodS)
    {
        using SKPaint rule = new() { Color = palette.Rule, StrokeWidth = 1.5f, IsAntialias = true };
        foreach ((double timeS, _) in Times(periodS))
        {
            float x = Abscissa(frame, periodS, timeS);
            canvas.DrawLine(x, frame.Bottom, x, frame.Bottom + 8, rule);
        }
    }

    private static void PaintTimes(SKCanvas canvas, OverlayPalette palette, SKRect frame, double periodS)
    {
        foreach ((double timeS, string label) in Times(periodS))
        {
            float x = Abscissa(frame, periodS, timeS) - (PictureFonts.WidthPx(label, TextPx, false) / 2);
            Text(canvas, label, x, frame.Bottom + 34, TextPx, palette.Muted, isStrong: false);
        }

        Text(canvas, "Time from the turn-on of phase 1, µs", frame.Left, frame.Bottom + 68, TextPx, palette.Main, isStrong: true);
    }

    private static IEnumerable<(double TimeS, string Label)> Times(double periodS)
    {
        double stepUs = RoundNumbers.Step(periodS * 1e6, 8);
        return RoundNumbers.Multiples(0, periodS * 1e6, stepUs).Select(timeUs => (timeUs * 1e-6, RoundNumbers.Text(timeUs, stepUs)));
    }

    private static float Abscissa(SKRect frame, double periodS, double timeS) => frame.Left + (float)(timeS / periodS * frame.Width);

    private static float Height(SKRect frame, double low, double high, double value) =>
        frame.Bottom - (float)((value - low) / (high - low) * frame.Height);

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

    private static void Text(SKCanvas canvas, string text, float x, float y, float sizePx, SKColor colour, bool isStrong) =>
        PictureFonts.Draw(canvas, text, new SKPoint(x, y), SKTextAlign.Left, sizePx, isStrong, colour);
}

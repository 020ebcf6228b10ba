using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// Finds places for the values of contour lines: on the line, near its middle (or a quarter from both ends of a long
/// one), clear of everything that already has its place. A line without room for its value is left out: it would say nothing.
/// </summary>
internal sealed class ContourPlacement
{
    private const float ShortestEms = 7;
    private const float LongEms = 70;
    private const float StepEms = 0.5f;
    private const float ApartEms = 2;
    private const double ViaCost = 3;

    private readonly float _em;
    private readonly Func<SKRect, bool> _isFree;
    private readonly CoverMap _cover;
    private readonly List<SKRect> _taken = [];

    /// <param name="emPx">Height of the running text.</param>
    /// <param name="isFree">Whether a plate may lie in a box, other contours' plates apart.</param>
    /// <param name="cover">Where vias lie.</param>
    public ContourPlacement(float emPx, Func<SKRect, bool> isFree, CoverMap cover) => (_em, _isFree, _cover) = (emPx, isFree, cover);

    /// <summary>The line with its plates, or null.</summary>
    /// <param name="level">Its value.</param>
    /// <param name="line">Its way.</param>
    /// <param name="plate">Size of a plate with the value.</param>
    public PlacedContour? Place(double level, SKPoint[] line, SKSize plate)
    {
        float[] along = new float[line.Length];
        for (int i = 1; i < line.Length; i++)
        {
            along[i] = along[i - 1] + SKPoint.Distance(line[i - 1], line[i]);
        }

        float length = along[^1];
        if (length < ShortestEms * _em)
        {
            return null;
        }

        List<SKRect> labels = [];
        foreach (float part in length > LongEms * _em ? [0.25f, 0.75f] : new[] { 0.5f })
        {
            if (Best(line, along, part * length, plate) is { } box)
            {
                labels.Add(box);
                _taken.Add(SKRect.Inflate(box, ApartEms * _em, ApartEms * _em));
            }
        }

        return labels.Count > 0 ? new PlacedContour(level, line, labels) : null;
    }

    private SKRect? Best(SKPoint[] line, float[] along, float wanted, SKSize plate)
    {
        SKRect? best = null;
        double bestCost = double.PositiveInfinity;
        float nextAt = 0;
        for (int i = 0; i < line.Length; i++)
        {
            if (along[i] < nextAt)
            {
                continue;
            }

            nextAt = along[i] + (StepEms * _em);
            double cost = Math.Abs(along[i] - wanted) / along[^1];
            SKRect box = CallOutPlacement.BoxAround(line[i], plate);
            if (cost >= bestCost || _taken.Exists(taken => taken.IntersectsWith(box)) || !_isFree(box))
            {
                continue;
            }

            cost += ViaCost * _cover.Shares(box).Vias;
            if (cost < bestCost)
            {
                (best, bestCost) = (box, cost);
            }
        }

        return best;
    }
}

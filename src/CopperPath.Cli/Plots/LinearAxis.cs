using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Plots;

/// <summary>A linear axis from zero: round ticks, and where each value stands between two pixels.</summary>
internal sealed class LinearAxis
{
    private const int MostSteps = 10;

    private readonly double _end;
    private readonly double _step;
    private readonly float _fromPx;
    private readonly float _toPx;

    private LinearAxis(double end, double step, float fromPx, float toPx) => (_end, _step, _fromPx, _toPx) = (end, step, fromPx, toPx);

    /// <summary>Round values in words and their places.</summary>
    public IEnumerable<(string Word, float Place)> Ticks =>
        RoundNumbers.Multiples(0, _end, _step).Select(value => (RoundNumbers.Text(value, _step), PlaceOf(value)));

    /// <summary>An axis that ends where the data do.</summary>
    /// <param name="end">Largest value, positive.</param>
    /// <param name="fromPx">Place of zero.</param>
    /// <param name="toPx">Place of the end.</param>
    public static LinearAxis To(double end, float fromPx, float toPx) => new(end, RoundNumbers.Step(end, MostSteps), fromPx, toPx);

    /// <summary>An axis that ends at the tick after the data.</summary>
    /// <param name="most">Largest value; an axis to 1 where it is not positive.</param>
    /// <param name="fromPx">Place of zero.</param>
    /// <param name="toPx">Place of the end.</param>
    public static LinearAxis ToTickAfter(double most, float fromPx, float toPx)
    {
        double step = RoundNumbers.Step(most > 0 ? most : 1, MostSteps);
        return new LinearAxis(RoundNumbers.Multiple((long)Math.Floor((most > 0 ? most : 1) / step) + 1, step), step, fromPx, toPx);
    }

    public float PlaceOf(double value) => (float)(_fromPx + ((_toPx - _fromPx) * value / _end));
}

using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Plots;

/// <summary>A logarithmic axis: round ends around the data, and where each value stands between two pixels.</summary>
internal sealed class LogAxis
{
    private const double WidestRatioWithFineTicks = 1000;

    private readonly double _low;
    private readonly double _high;
    private readonly float _fromPx;
    private readonly float _toPx;

    private LogAxis(double low, double high, float fromPx, float toPx) => (_low, _high, _fromPx, _toPx) = (low, high, fromPx, toPx);

    /// <summary>Round values and their places.</summary>
    public IEnumerable<(double Value, float Place)> Ticks =>
        RoundNumbers.Between(_low, _high, decadesOnly: _high / _low > WidestRatioWithFineTicks).Select(value => (value, PlaceOf(value)));

    /// <param name="values">Positive values; may be empty.</param>
    /// <param name="fromPx">Place of the lowest.</param>
    /// <param name="toPx">Place of the highest.</param>
    public static LogAxis For(IEnumerable<double> values, float fromPx, float toPx)
    {
        double[] all = [.. values];
        double low = RoundNumbers.AtMost(all.DefaultIfEmpty(1).Min());
        double high = RoundNumbers.AtLeast(all.DefaultIfEmpty(1).Max());
        return new LogAxis(low, high > low ? high : 10 * low, fromPx, toPx);
    }

    public float PlaceOf(double value) => (float)(_fromPx + ((_toPx - _fromPx) * Math.Log(value / _low) / Math.Log(_high / _low)));
}

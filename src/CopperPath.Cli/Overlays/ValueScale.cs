namespace CopperPath.Cli.Overlays;

/// <summary>A settled scale: where each value stands between the first shade (0) and the last (1), and its round ticks.</summary>
public sealed class ValueScale
{
    private const int MostSteps = 6;
    private const double WidestRatio = 1000;

    private ValueScale(ScaleKind kind, double bottom, double top, IReadOnlyList<ScaleTick> ticks)
    {
        Kind = kind;
        Bottom = bottom;
        Top = top;
        Ticks = ticks;
    }

    public ScaleKind Kind { get; }

    /// <summary>Value of the first shade.</summary>
    public double Bottom { get; }

    /// <summary>Value of the last shade.</summary>
    public double Top { get; }

    /// <summary>Round values to be written along the legend, rising.</summary>
    public IReadOnlyList<ScaleTick> Ticks { get; }

    /// <summary>Settles the ends of a scale from what is asked for and the values to be shown.</summary>
    /// <param name="spec">What is asked for; an end that can not be used (a logarithm of zero) is taken from the data.</param>
    /// <param name="values">Finite values to be shown; may be empty.</param>
    public static ValueScale For(ScaleSpec spec, IEnumerable<double> values)
    {
        double least = double.PositiveInfinity;
        double leastPositive = double.PositiveInfinity;
        double most = double.NegativeInfinity;
        foreach (double value in values)
        {
            least = Math.Min(least, value);
            most = Math.Max(most, value);
            leastPositive = value > 0 ? Math.Min(leastPositive, value) : leastPositive;
        }

        if (least > most)
        {
            (least, most) = (0, 1);
        }

        return spec.Kind == ScaleKind.Logarithmic
            ? Logarithmic(spec, leastPositive, most)
            : Linear(spec, least, most);
    }

    /// <summary>Place of a value on the colour map, 0..1; values beyond the ends take the end.</summary>
    public double PlaceOf(double value)
    {
        double place = Kind == ScaleKind.Linear
            ? (value - Bottom) / (Top - Bottom)
            : value <= 0 ? 0 : Math.Log(value / Bottom) / Math.Log(Top / Bottom);
        return Math.Clamp(place, 0, 1);
    }

    private static ValueScale Linear(ScaleSpec spec, double least, double most)
    {
        // A range that starts near zero is easier to judge when it starts at zero.
        double low = spec.Bottom ?? (least >= 0 && least < 0.4 * most ? 0 : least);
        double high = spec.Top ?? most;
        if (high <= low)
        {
            high = low + (low == 0 ? 1 : Math.Abs(low) * 0.1);
        }

        double step = RoundNumbers.Step(high - low, MostSteps);
        double bottom = spec.Bottom ?? Math.Floor((low / step) + 1e-9) * step;
        double top = spec.Top is not null && spec.Top > bottom ? spec.Top.Value : Math.Ceiling((high / step) - 1e-9) * step;
        IReadOnlyList<double> values = RoundNumbers.Multiples(bottom, top, step);
        return new(ScaleKind.Linear, bottom, top, [.. values.Select(v => new ScaleTick(v, RoundNumbers.Text(v, step)))]);
    }

    private static ValueScale Logarithmic(ScaleSpec spec, double leastPositive, double most)
    {
        double top = spec.Top is > 0 ? spec.Top.Value : RoundNumbers.AtLeast(most > 0 ? most : 1);
        double bottom = spec.Bottom is > 0 && spec.Bottom < top
            ? spec.Bottom.Value
            : RoundNumbers.AtMost(Math.Clamp(leastPositive, top / WidestRatio, top / 2));
        IReadOnlyList<double> values = RoundNumbers.Between(bottom, top, decadesOnly: top / bottom > 2 * WidestRatio);
        return new(ScaleKind.Logarithmic, bottom, top, [.. values.Select(v => new ScaleTick(v, RoundNumbers.Plain(v)))]);
    }
}

/// <summary>A round value on a scale and how it is written.</summary>
public sealed record ScaleTick(double Value, string Label);

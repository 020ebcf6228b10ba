using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>How warm the board is when a load profile begins.</summary>
public enum LoadStart
{
    /// <summary>As warm as the air: it has just been switched on.</summary>
    Ambient,

    /// <summary>As warm as the currents at the beginning have made it in the long run.</summary>
    Steady,
}

/// <summary>A current at a moment, as a factor on what is stated for the stretch.</summary>
/// <param name="TimeS">Seconds from the beginning, not negative.</param>
/// <param name="Factor">Not negative.</param>
public readonly record struct LoadPoint(double TimeS, double Factor);

/// <summary>Current against time: straight between points; two points at one time are a step. Before the first and after the last it stays.</summary>
/// <param name="Points">At least one, in the order of time, no more than two at one time.</param>
public sealed record LoadCurve(IReadOnlyList<LoadPoint> Points)
{
    /// <summary>The factor at a time, as it goes on from where it is at another.</summary>
    /// <param name="timeS">The time, seconds.</param>
    /// <param name="withinS">A time between the same two points, at neither: tells the sides of a step apart.</param>
    public double At(double timeS, double withinS)
    {
        int next = 0;
        while (next < Points.Count && Points[next].TimeS <= withinS)
        {
            next++;
        }

        if (next == 0 || next == Points.Count)
        {
            return Points[Math.Max(0, next - 1)].Factor;
        }

        (LoadPoint from, LoadPoint to) = (Points[next - 1], Points[next]);
        return from.Factor + ((timeS - from.TimeS) / (to.TimeS - from.TimeS) * (to.Factor - from.Factor));
    }
}

/// <summary>The load of the board against time.</summary>
/// <param name="Whole">Factor on all currents that have no curve of their own; null where those stay as stated.</param>
/// <param name="OfStretches">Curves by the name of an entry of <c>nets</c>.</param>
/// <param name="DurationS">Its length, of one period where it repeats, seconds, positive.</param>
/// <param name="IsPeriodic">True where it repeats for ever.</param>
/// <param name="Start">How warm the board is at the beginning; of no meaning where it repeats.</param>
/// <param name="PartsExponent">
/// The heat of parts goes with this power of the factor on all currents; null for the larger of the first and the second.
/// </param>
/// <param name="Position">Where the brief says so.</param>
public sealed record LoadProfile(
    LoadCurve? Whole,
    IReadOnlyDictionary<string, LoadCurve> OfStretches,
    double DurationS,
    bool IsPeriodic,
    LoadStart Start,
    double? PartsExponent,
    SourcePosition Position)
{
    /// <summary>The curve of a stretch, by the name of its entry; null where its current stays as stated.</summary>
    public LoadCurve? CurveOf(string stretch) => OfStretches.GetValueOrDefault(stretch) ?? Whole;
}

namespace CopperPath.Thermal;

/// <summary>A board's temperatures through a load profile; in its last period where the load repeats for ever.</summary>
/// <param name="Failure">Why there are none; null when there are.</param>
/// <param name="TimesS">Ends of the steps taken, seconds from the beginning of the profile or of a period, the beginning first.</param>
/// <param name="HottestK">Hottest place of the board then, rise above ambient with all heat, kelvin.</param>
/// <param name="Most">Largest rise of every place over time, with all heat.</param>
/// <param name="MostOwn">The same of what the copper's own current adds.</param>
/// <param name="Stretches">The stretches that were solved, in the order of the brief.</param>
/// <param name="NodeCount">Nodes of the solution.</param>
/// <param name="Steps">Steps it took.</param>
public sealed record LoadedHeat(
    string? Failure, IReadOnlyList<double> TimesS, IReadOnlyList<double> HottestK, TemperatureField Most, OwnRise MostOwn,
    IReadOnlyList<StretchInTime> Stretches, int NodeCount, int Steps)
{
    /// <summary>When the board was hottest, seconds.</summary>
    public double HottestTimeS => TimesS[IndexOfMost(HottestK)];

    /// <summary>Mean of the hottest place over time, kelvin.</summary>
    public double HottestMeanK => MeanOf(TimesS, HottestK);

    internal static LoadedHeat Of(HeatScene scene, LoadRun run, WhatCellsLeave left)
    {
        return new LoadedHeat(
            run.Failure, run.TimesS, run.HottestK, left.OfAll(run.Most()), new OwnRise(left.OfOwn(run.MostOwn()), null),
            run.Failure is null ? [.. scene.Stretches.Select((stretch, s) => InTime(stretch, s, run, left))] : [], run.NodeCount, run.Steps);
    }

    private static StretchInTime InTime(HeatingStretch stretch, int number, LoadRun run, WhatCellsLeave left)
    {
        OwnRise atPeak = new(left.OfOwn(run.AtPeakOf(number)), null);
        HottestPlace peak = HottestCopper.Of(stretch.Conduction, stretch.Net, atPeak);

        // Cells are read at their centres in time and between centres at the peak: the course follows the peak.
        IReadOnlyList<double> cellsK = run.OwnK[number];
        double cellK = cellsK.Max();
        double scale = cellK > 0 ? peak.RiseK / cellK : 1;
        return new StretchInTime(stretch, peak, run.TimesS[IndexOfMost(cellsK)], run.TimesS, [.. cellsK.Select(riseK => scale * riseK)]);
    }

    /// <summary>Mean of what runs straight between its values.</summary>
    internal static double MeanOf(IReadOnlyList<double> timesS, IReadOnlyList<double> values) =>
        Enumerable.Range(1, values.Count - 1).Sum(k => (timesS[k] - timesS[k - 1]) * (values[k] + values[k - 1]) / 2) / (timesS[^1] - timesS[0]);

    private static int IndexOfMost(IReadOnlyList<double> values) => Enumerable.Range(0, values.Count).MaxBy(k => values[k]);
}

/// <summary>What its own current adds to the hottest copper of a stretch through a load profile.</summary>
/// <param name="Stretch">The stretch.</param>
/// <param name="Peak">Where and how much at most.</param>
/// <param name="PeakTimeS">When, seconds.</param>
/// <param name="TimesS">Times, seconds.</param>
/// <param name="RiseK">Rise of its hottest copper then, kelvin.</param>
public sealed record StretchInTime(
    HeatingStretch Stretch, HottestPlace Peak, double PeakTimeS, IReadOnlyList<double> TimesS, IReadOnlyList<double> RiseK)
{
    /// <summary>At the end, kelvin.</summary>
    public double FinalK => RiseK[^1];

    /// <summary>Mean over time, kelvin.</summary>
    public double MeanK => LoadedHeat.MeanOf(TimesS, RiseK);

    /// <summary>Most less least, kelvin.</summary>
    public double RippleK => RiseK.Max() - RiseK.Min();
}

namespace CopperPath.Converter;

/// <summary>A quantity over one period as the corners of straight pieces; a jump has two corners at one moment.</summary>
/// <param name="Name">What it is, e.g. <c>inductor 2</c>.</param>
/// <param name="Unit">SI unit symbol.</param>
/// <param name="Corners">Moments (seconds, from 0 to the period, not descending) and values.</param>
public sealed record Waveform(string Name, string Unit, IReadOnlyList<(double TimeS, double Value)> Corners)
{
    /// <summary>Mean over the period: exact for straight pieces.</summary>
    public double Mean => Integrate((a, b) => (a + b) / 2);

    /// <summary>Root of the mean square over the period: exact for straight pieces.</summary>
    public double Rms => Math.Sqrt(Integrate((a, b) => ((a * a) + (a * b) + (b * b)) / 3));

    /// <summary>Largest less least value.</summary>
    public double PeakToPeak => Corners.Max(corner => corner.Value) - Corners.Min(corner => corner.Value);

    private double Integrate(Func<double, double, double> pieceMean)
    {
        double sum = 0;
        for (int i = 1; i < Corners.Count; i++)
        {
            sum += (Corners[i].TimeS - Corners[i - 1].TimeS) * pieceMean(Corners[i - 1].Value, Corners[i].Value);
        }

        return sum / (Corners[^1].TimeS - Corners[0].TimeS);
    }
}

/// <summary>The waveforms of an ideal multiphase buck converter over one period, from the turn-on of phase 1.</summary>
/// <param name="SwitchNodesV">Voltage of each switch node.</param>
/// <param name="InductorsA">Current of each inductor.</param>
/// <param name="OutputA">Sum of the inductor currents.</param>
/// <param name="InputA">Current all high-side switches draw.</param>
/// <param name="InputCapacitorsA">Current the input capacitors give: what the switches draw less its mean.</param>
public sealed record ConverterWaveforms(
    IReadOnlyList<Waveform> SwitchNodesV,
    IReadOnlyList<Waveform> InductorsA,
    Waveform OutputA,
    Waveform InputA,
    Waveform InputCapacitorsA)
{
    public static ConverterWaveforms Of(BuckStage stage)
    {
        // Between two moments at which any switch turns, every quantity is a straight line.
        double[] momentsS = [.. Enumerable.Range(0, stage.Phases)
            .SelectMany(phase => new[] { stage.TurnOnS(phase), (stage.TurnOnS(phase) + (stage.Duty * stage.PeriodS)) % stage.PeriodS })
            .Append(0).Append(stage.PeriodS).Distinct().Order()];
        int[] phases = [.. Enumerable.Range(0, stage.Phases)];
        Waveform Pieces(string name, string unit, Func<double, double, double> at) => new(name, unit, [.. momentsS.Zip(momentsS.Skip(1))
            .SelectMany(piece => new[]
            {
                (piece.First, at(piece.First, (piece.First + piece.Second) / 2)),
                (piece.Second, at(piece.Second, (piece.First + piece.Second) / 2)),
            })]);

        double inputMeanA = stage.FeedA;
        double InputAt(double timeS, double withinS) => phases.Sum(phase => Conducts(stage, phase, withinS) ? InductorA(stage, phase, timeS, withinS) : 0);
        return new ConverterWaveforms(
            [.. phases.Select(phase => Pieces($"switch node {phase + 1}", "V", (_, withinS) => Conducts(stage, phase, withinS) ? stage.InputV : 0))],
            [.. phases.Select(phase => Pieces($"inductor {phase + 1}", "A", (timeS, withinS) => InductorA(stage, phase, timeS, withinS)))],
            Pieces("all inductors", "A", (timeS, withinS) => phases.Sum(phase => InductorA(stage, phase, timeS, withinS))),
            Pieces("high-side switches", "A", InputAt),
            Pieces("input capacitors", "A", (timeS, withinS) => InputAt(timeS, withinS) - inputMeanA));
    }

    /// <summary>Time since the phase's own turn-on, as a share of the period.</summary>
    private static double ShareSinceTurnOn(BuckStage stage, int phase, double timeS)
    {
        double share = (timeS - stage.TurnOnS(phase)) / stage.PeriodS;
        return share - Math.Floor(share);
    }

    private static bool Conducts(BuckStage stage, int phase, double timeS) => ShareSinceTurnOn(stage, phase, timeS) < stage.Duty;

    /// <remarks><paramref name="withinS"/> lies inside the straight piece that <paramref name="timeS"/> ends or begins: it decides which line holds.</remarks>
    private static double InductorA(BuckStage stage, int phase, double timeS, double withinS)
    {
        double share = ShareSinceTurnOn(stage, phase, withinS) + ((timeS - withinS) / stage.PeriodS);
        double rise = Conducts(stage, phase, withinS) ? share / stage.Duty : (1 - share) / (1 - stage.Duty);
        return stage.PhaseA + (stage.PhaseRippleA * (rise - 0.5));
    }
}

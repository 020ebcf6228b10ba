using CopperPath.Quantities;

namespace CopperPath.Converter;

/// <summary>
/// A multiphase buck converter at one operating point: phases alike, evenly interleaved, in continuous conduction, no
/// losses. From it follow the currents its copper carries.
/// </summary>
/// <remarks>
/// The formulas follow from the piecewise linear waveforms. The input-capacitor form with ripple is the one of Texas
/// Instruments SLUU195 (2004), eq. 3, established again here against waveforms summed point by point.
/// </remarks>
public sealed record BuckStage
{
    /// <summary>
    /// Least distance of N D from a whole number that is told from zero: at whole N D the ripple cancels exactly, and a
    /// rounding error there must not open a new interval.
    /// </summary>
    private const double CancellationTolerance = 1e-9;

    /// <param name="phases">Number of phases, at least 1.</param>
    /// <param name="inputV">Input voltage, volts, positive.</param>
    /// <param name="outputV">Output voltage, volts, positive and below the input.</param>
    /// <param name="outputA">Output current of all phases, amperes, not negative.</param>
    /// <param name="inductanceH">Inductance of each phase, henries, positive.</param>
    /// <param name="switchingHz">Switching frequency of each phase, hertz, positive.</param>
    public BuckStage(int phases, double inputV, double outputV, double outputA, double inductanceH, double switchingHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(phases, 1);
        Phases = phases;
        InputV = Checked.Positive(inputV);
        OutputV = Checked.Positive(outputV);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(outputV, inputV);
        OutputA = Checked.NotNegative(outputA);
        InductanceH = Checked.Positive(inductanceH);
        SwitchingHz = Checked.Positive(switchingHz);

        Duty = outputV / inputV;
        double overlapped = Math.Floor((phases * Duty) + CancellationTolerance);
        Overlap = (int)overlapped;
        AboveOverlap = Math.Max(0, Duty - (overlapped / phases));
        BelowNextOverlap = ((overlapped + 1) / phases) - Duty;
    }

    public int Phases { get; }

    public double InputV { get; }

    public double OutputV { get; }

    public double OutputA { get; }

    public double InductanceH { get; }

    public double SwitchingHz { get; }

    /// <summary>Part of the period a high-side switch conducts, 0 to 1.</summary>
    public double Duty { get; }

    /// <summary>Duration of one switching period, seconds.</summary>
    public double PeriodS => 1 / SwitchingHz;

    /// <summary>Frequency of the summed ripple, at the input and at the output: phases times switching frequency, hertz.</summary>
    public double RippleHz => Phases * SwitchingHz;

    /// <summary>Moment within the period at which a phase's high side turns on, counted from that of phase 0, seconds.</summary>
    public double TurnOnS(int phase) => PeriodS * phase / Phases;

    /// <summary>The same moment as an angle of the period, degrees.</summary>
    public double TurnOnDegrees(int phase) => 360.0 * phase / Phases;

    /// <summary>Average current drawn from the supply, amperes.</summary>
    public double FeedA => Duty * OutputA;

    /// <summary>Average current of one phase, amperes.</summary>
    public double PhaseA => OutputA / Phases;

    /// <summary>Peak-to-peak ripple of one inductor, amperes.</summary>
    public double PhaseRippleA => OutputV * (1 - Duty) / (InductanceH * SwitchingHz);

    /// <summary>Peak-to-peak ripple of the summed inductor currents, amperes.</summary>
    public double OutputRippleA => PhaseRippleA * Phases * AboveOverlap * BelowNextOverlap / (Duty * (1 - Duty));

    /// <summary>RMS current of the input capacitors with inductors so large that their ripple vanishes, amperes.</summary>
    public double InputCapacitorRmsWithoutRippleA => OutputA * Math.Sqrt(AboveOverlap * BelowNextOverlap);

    /// <summary>RMS current of the input capacitors, amperes; the supply is taken to deliver the average only.</summary>
    public double InputCapacitorRmsA
    {
        get
        {
            double ripple = Phases * Square(PhaseRippleA)
                * ((Square(Overlap + 1) * Cube(AboveOverlap)) + (Square(Overlap) * Cube(BelowNextOverlap)))
                / (12 * Square(Duty));
            return Math.Sqrt(Square(InputCapacitorRmsWithoutRippleA) + ripple);
        }
    }

    /// <summary>RMS current of one inductor, amperes.</summary>
    public double InductorRmsA => Math.Sqrt(Square(PhaseA) + (Square(PhaseRippleA) / 12));

    /// <summary>RMS current of one high-side switch, amperes: what heats the copper in series with it.</summary>
    public double HighSideRmsA => Math.Sqrt(Duty) * InductorRmsA;

    /// <summary>RMS current of one low-side switch, amperes.</summary>
    public double LowSideRmsA => Math.Sqrt(1 - Duty) * InductorRmsA;

    /// <summary>RMS current of the summed inductors, amperes.</summary>
    public double OutputRmsA => Math.Sqrt(Square(OutputA) + Square(OutputCapacitorRmsA));

    /// <summary>RMS current of the output capacitors, amperes: all of the summed ripple, taken as a triangle.</summary>
    public double OutputCapacitorRmsA => OutputRippleA / Math.Sqrt(12);

    /// <summary>What every number of the stage takes for granted.</summary>
    public static EstimateBasis Basis { get; } = new(
        "piecewise linear waveforms; input capacitors in the form of TI SLUU195 (2004), eq. 3",
        "phases alike and evenly interleaved, continuous conduction, no losses, no dead time, supply delivers the average current");

    /// <summary>High-side switches that conduct at once at every moment of the period.</summary>
    private int Overlap { get; }

    /// <summary>Part of the period by which the duty exceeds what that many overlapping phases fill.</summary>
    private double AboveOverlap { get; }

    /// <summary>Part of the period missing until one more phase overlaps throughout.</summary>
    private double BelowNextOverlap { get; }

    private static double Square(double value) => value * value;

    private static double Cube(double value) => value * value * value;
}

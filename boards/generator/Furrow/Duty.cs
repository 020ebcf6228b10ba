namespace CopperPath.DemoBoards.Furrow;

/// <summary>
/// The currents of the card, in amperes. They are those of ideal bookkeeping: averages, which obey Kirchhoff's law at
/// every net. The share of time of the high-side switches is set so that losses are covered: four phases of 22.5 A draw
/// 7.5 A from 12 V, the 5 V converter draws 1.5 A for its 3.3 A.
/// </summary>
public static class Duty
{
    public const double Load = 90;
    public const double Phase = Load / 4;
    public const double Share = 1.0 / 12;
    public const double HighSide = Phase * Share;
    public const double LowSide = Phase - HighSide;
    public const double FiveVolt = 3.3;
    public const double FiveVoltInput = 1.5;
    public const double Feed = 4 * HighSide + FiveVoltInput;

    /// <summary>RMS of what a phase's input capacitors supply to its high-side switch: a rectangular pulse train less its mean.</summary>
    public static readonly double CapacitorRms = Math.Round(Phase * Math.Sqrt(Share * (1 - Share)), 2);
}

using CopperPath.Quantities;

namespace CopperPath.Converter;

/// <summary>The connector the converter is fed through.</summary>
/// <param name="Pins">Pins that share the supply current, at least 1; as many again carry it back.</param>
/// <param name="RatingA">Current a pin may carry with its neighbours loaded, amperes, positive.</param>
public sealed record SupplyConnector(int Pins, double RatingA);

/// <summary>What a person knows about a converter, and the currents that follow from it.</summary>
/// <param name="Name">The reader's name of it.</param>
/// <param name="OutputV">Voltage at the load, volts.</param>
/// <param name="Efficiency">Power out over power in, above 0 and at most 1.</param>
/// <param name="Stage">The power stage. Losses are taken as a voltage in series with the inductors, so its output voltage is <c>OutputV / Efficiency</c>.</param>
/// <param name="InputCapacitors">All input capacitors, or null where not stated.</param>
/// <param name="OutputCapacitors">All output capacitors, or null where not stated.</param>
/// <param name="HighSideSwitches">High-side switches in parallel in each phase, at least 1.</param>
/// <param name="LowSideSwitches">Low-side switches in parallel in each phase, at least 1.</param>
/// <param name="Connector">Connector of the feed, or null where not stated.</param>
/// <param name="EdgeS">Duration of an edge of the switch node, seconds, positive.</param>
public sealed record ConverterFacts(
    string Name,
    double OutputV,
    double Efficiency,
    BuckStage Stage,
    CapacitorBank? InputCapacitors,
    CapacitorBank? OutputCapacitors,
    int HighSideSwitches,
    int LowSideSwitches,
    SupplyConnector? Connector,
    double EdgeS)
{
    /// <summary>How the heat of its parts divides among them.</summary>
    public LossShares LossShares { get; init; } = LossShares.Common;

    /// <summary>Heat of all its parts at this load, watts: <c>Pout (1 / efficiency - 1)</c>; 0 where no efficiency was stated.</summary>
    public double PartsLossW => OutputV * Stage.OutputA * ((1 / Efficiency) - 1);

    /// <summary>Average and RMS current of a stage; high side, low side, inductor and phase input capacitors are those of one phase.</summary>
    public StageCurrent CurrentOf(PathStage stage) => stage switch
    {
        PathStage.Feed => new(Stage.FeedA, Stage.FeedA),
        PathStage.InputCapacitors => new(0, Stage.InputCapacitorRmsA),
        PathStage.PhaseInputCapacitors => new(0, Math.Sqrt(Math.Max(0, Square(Stage.HighSideRmsA) - Square(Stage.Duty * Stage.PhaseA)))),
        PathStage.HighSide => new(Stage.Duty * Stage.PhaseA, Stage.HighSideRmsA),
        PathStage.LowSide => new((1 - Stage.Duty) * Stage.PhaseA, Stage.LowSideRmsA),
        PathStage.Inductor => new(Stage.PhaseA, Stage.InductorRmsA),
        PathStage.Output => new(Stage.OutputA, Stage.OutputRmsA),
        PathStage.OutputCapacitors => new(0, Stage.OutputCapacitorRmsA),
        _ => throw new ArgumentOutOfRangeException(nameof(stage)),
    };

    /// <summary>Current of one connector pin when all share alike, amperes; null without a connector.</summary>
    public double? EqualPinCurrentA => Connector is { } connector ? Stage.FeedA / connector.Pins : null;

    /// <summary>Ripple on the stated output capacitors; null where none are stated.</summary>
    public OutputRippleVoltage? OutputRipple => OutputCapacitors is { } bank
        ? OutputRippleVoltage.Of(Stage, bank.CapacitanceF, bank.SeriesResistanceOhm) : null;

    /// <summary>What the currents take for granted.</summary>
    public static EstimateBasis Basis { get; } = new(
        BuckStage.Basis.Source, BuckStage.Basis.Assumptions + "; where an efficiency is stated, losses act as a voltage in series with the inductors");

    private static double Square(double value) => value * value;
}

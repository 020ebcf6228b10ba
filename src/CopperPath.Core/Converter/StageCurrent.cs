namespace CopperPath.Converter;

/// <summary>Stretches of the power path whose current follows from the facts of a converter.</summary>
public enum PathStage
{
    /// <summary>From the supply to the input capacitors: the average, the same at every moment.</summary>
    Feed,

    /// <summary>All input capacitors together.</summary>
    InputCapacitors,

    /// <summary>The input capacitors of one phase, where each phase has its own beside its switches.</summary>
    PhaseInputCapacitors,

    /// <summary>High-side switches of one phase.</summary>
    HighSide,

    /// <summary>Low-side switches of one phase.</summary>
    LowSide,

    /// <summary>Inductor of one phase.</summary>
    Inductor,

    /// <summary>All inductors together.</summary>
    Output,

    /// <summary>All output capacitors together.</summary>
    OutputCapacitors,
}

/// <summary>
/// Current of a stretch of copper over one period. Drop follows the average; heat follows the RMS, and in switched
/// stretches the average understates it several times.
/// </summary>
/// <param name="AverageA">Mean over the period, amperes.</param>
/// <param name="RmsA">Root of the mean square over the period, amperes, not below the average.</param>
public sealed record StageCurrent(double AverageA, double RmsA);

namespace CopperPath.Brief;

/// <summary>
/// A limit for which no published value exists. The value filled in when the brief says nothing is common practice, so
/// it only gives remarks; a value the brief states is the reader's own rule and is judged.
/// </summary>
/// <param name="Value">The limit, SI unit or a plain ratio.</param>
/// <param name="IsStated">True when the brief states it.</param>
public sealed record PracticeLimit(double Value, bool IsStated);

/// <summary>Limits without a published source.</summary>
/// <param name="SharingRatio">Most loaded of parallel ways over the equal share, plain ratio.</param>
/// <param name="LeastAreaRatio">Switch node area over the least area that carries its current, plain ratio.</param>
/// <param name="SensitiveDistanceM">Least distance from a switch node to a sensitive net, metres.</param>
/// <param name="CapacitorVias">Least number of plated holes beside each return terminal of a power capacitor.</param>
/// <param name="CapacitorDistanceRatio">Farthest over nearest capacitor of a bank, plain ratio.</param>
/// <param name="BankDropV">Largest drop between output capacitors and load, volts.</param>
/// <param name="HotLoopRatio">Inductance of a phase's hot loop over that of the best phase, plain ratio.</param>
public sealed record PracticeLimits(
    PracticeLimit SharingRatio,
    PracticeLimit LeastAreaRatio,
    PracticeLimit SensitiveDistanceM,
    PracticeLimit CapacitorVias,
    PracticeLimit CapacitorDistanceRatio,
    PracticeLimit BankDropV,
    PracticeLimit HotLoopRatio)
{
    /// <summary>What holds where the brief says nothing: common practice, no source.</summary>
    public static PracticeLimits Common { get; } = new(new(2, false), new(4, false), new(2e-3, false), new(2, false), new(4, false), new(10e-3, false), new(2, false));
}

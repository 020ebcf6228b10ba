namespace CopperPath.Converter;

/// <summary>How the heat of a converter's parts divides among them; the shares add to 1.</summary>
/// <param name="HighSide">High-side switches of all phases, 0 to 1.</param>
/// <param name="LowSide">Low-side switches of all phases.</param>
/// <param name="Inductor">Inductors of all phases.</param>
/// <param name="Rest">Drivers, controller and capacitors; their heat is laid on the parts above in proportion.</param>
public sealed record LossShares(double HighSide, double LowSide, double Inductor, double Rest)
{
    /// <summary>Sums this near to 1 count as 1: shares are rounded.</summary>
    public const double SumTolerance = 0.01;

    /// <summary>
    /// Of a step-down converter from 12 V to about 1 V near full load: the high side mostly switches, the low side
    /// mostly conducts. Common practice, no source; a maker's loss break-down is better.
    /// </summary>
    public static LossShares Common { get; } = new(0.35, 0.35, 0.2, 0.1);

    /// <summary>What all shares add to.</summary>
    public double Sum => HighSide + LowSide + Inductor + Rest;
}

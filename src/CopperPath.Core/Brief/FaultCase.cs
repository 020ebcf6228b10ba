using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>A short overload of one stretch of copper.</summary>
/// <param name="Name">How reports call it.</param>
/// <param name="Stretch">Name of the stretch it runs through.</param>
/// <param name="CurrentA">Current, amperes; of a capacitor bank C dV/dt.</param>
/// <param name="TimeS">How long it flows, seconds.</param>
/// <param name="LimitK">Temperature not to be passed, kelvin.</param>
/// <param name="Position">Where the brief says so.</param>
public sealed record FaultCase(string Name, string Stretch, double CurrentA, double TimeS, double LimitK, SourcePosition Position)
{
    /// <summary>Integral of the squared current, ampere squared seconds.</summary>
    public double SquaredCurrentSeconds => CurrentA * CurrentA * TimeS;
}

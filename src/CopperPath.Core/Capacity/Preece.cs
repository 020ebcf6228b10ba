using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>
/// Steady current that melts a free round copper wire in air: <c>I = 80 d^1.5</c> with d in millimetres, after Preece;
/// from memory. It does not hold for traces; it serves for wire links and fuses of wire.
/// </summary>
public static class Preece
{
    private const double ConstantA = 80;
    private const double MmPerM = 1e3;

    private static readonly EstimateBasis s_basis = new(
        "Preece's law for copper, from memory", "free round wire in still air, steady state; not valid for traces");

    /// <summary>Current that melts a wire.</summary>
    /// <param name="diameterM">Diameter of the wire, metres, positive.</param>
    public static CurrentEstimate Current(double diameterM) =>
        new(ConstantA * Math.Pow(Checked.Positive(diameterM) * MmPerM, 1.5), s_basis);
}

using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// What the drawn shape may have less and more of a power or drop than the meshed one, in its unit, by the derivative of the power with the shape:
/// copper added along an edge takes off current squared over sheet conductance for each unit of its area (J. Hadamard, 1908;
/// from memory). What is known of the outlines' displacement to either side is summed with its sign, what roughness costs
/// without.
/// </summary>
/// <param name="Less">The drawn shape's value may be smaller by this, positive.</param>
/// <param name="More">It may be larger by this, positive.</param>
public readonly record struct OutlineAllowance(double Less, double More)
{
    /// <param name="fits">Edges of each sheet beside which the drawn outline runs elsewhere.</param>
    /// <param name="flows">Currents in the sheets.</param>
    /// <param name="others">Those the power is made with; the same for a loss.</param>
    internal static OutlineAllowance Of(IReadOnlyList<IReadOnlyList<EdgeFit>> fits, IReadOnlyList<SheetFlow> flows, IReadOnlyList<SheetFlow> others)
    {
        double gainedW = 0, roughW = 0;
        for (int s = 0; s < fits.Count; s++)
        {
            foreach (EdgeFit fit in fits[s])
            {
                (double productWPerM2, double magnitudeWPerM2) = flows[s].ProductsAlong(others[s], fit.Edge);
                gainedW += fit.GainM2 * productWPerM2;
                roughW += fit.RoughM2 * magnitudeWPerM2;
            }
        }

        return new OutlineAllowance(Math.Max(0, gainedW) + roughW, Math.Max(0, -gainedW) + roughW);
    }

    /// <summary>How far it sets the bounds apart.</summary>
    public double Width => Less + More;

    /// <summary>Bounds of the drawn shape from those of the meshed one.</summary>
    public Bracket Around(Bracket meshed) => new(meshed.Least - Less, meshed.Greatest + More);

    public static OutlineAllowance operator *(OutlineAllowance allowance, double positive) =>
        new(allowance.Less * positive, allowance.More * positive);
}

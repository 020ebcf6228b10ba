namespace CopperPath.Quantities;

/// <summary>Where a value may lie, both ends allowed.</summary>
/// <param name="Least">The lower end.</param>
/// <param name="Most">The upper end.</param>
public readonly record struct ValueRange(double Least, double Most)
{
    public bool Contains(double value) => Least <= value && value <= Most;
}

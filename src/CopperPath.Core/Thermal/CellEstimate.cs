namespace CopperPath.Thermal;

/// <summary>How far a value may be off for the width of cells.</summary>
internal static class CellEstimate
{
    /// <summary>No estimate is smaller than this share of the value: what iteration and reading between cells leave.</summary>
    private const double Least = 2e-3;

    /// <summary>A change as large as this many times the one before has no row before it.</summary>
    private const double MostGrowth = 3;

    /// <summary>How changes are taken to fall where only one is known: to two thirds.</summary>
    private const double Unknown = 2.0 / 3;

    /// <summary>What differences that do not fall from cells to cells are taken to add up to: no more than this many times the last.</summary>
    private const double MostLeft = 3;

    /// <summary>
    /// What a value changed by with the last halving, times what is left of a row of changes that go on falling as the last two did.
    /// </summary>
    /// <param name="value">On the narrowest cells.</param>
    /// <param name="coarse">On cells twice as wide.</param>
    /// <param name="coarsest">On those before; null where there were none.</param>
    public static double Of(double value, double coarse, double? coarsest)
    {
        double change = Math.Abs(value - coarse);
        double before = coarsest is { } first ? Math.Abs(coarse - first) : 0;

        // A change much larger than the one before says that the earlier solutions had the same cells there.
        double falling = before < change / MostGrowth ? Unknown : change / before;
        double left = falling < 1 ? Math.Clamp(falling / (1 - falling), 1, MostLeft) : MostLeft;
        return (change * left) + (Least * Math.Abs(value));
    }
}

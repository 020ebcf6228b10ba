namespace CopperPath.DemoBoards.Kit;

/// <summary>The distances a board is drawn by, in millimetres.</summary>
public static class CopperRules
{
    /// <summary>Least distance between copper of different nets.</summary>
    public const double ClearanceMm = 0.15;

    /// <summary>Distance of copper from the wall of a hole it does not belong to.</summary>
    public const double HoleClearanceMm = 0.22;

    /// <summary>Distance of copper from the board's edge.</summary>
    public const double EdgeMm = 0.5;

    /// <summary>No poured copper is left narrower than this.</summary>
    public const double NarrowestPourMm = 0.18;

    /// <summary>Gap and spoke width of a thermal relief.</summary>
    public const double ReliefGapMm = 0.3;

    public const double ReliefSpokeMm = 0.6;
}

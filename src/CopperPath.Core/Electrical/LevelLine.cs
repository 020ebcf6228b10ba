namespace CopperPath.Electrical;

/// <summary>One piece of a line of one potential in a sheet, or the wall of a hole whose ends lie on both sides of it.</summary>
/// <param name="Layer">Layer number, 1 = top; 0 for a hole.</param>
/// <param name="WidthM">Its length through copper, metres; the middle line of the wall for a hole.</param>
/// <param name="ConductingM">The same, counted more where solder carries a part, metres.</param>
/// <param name="CurrentA">Current through it towards the lower potential, amperes.</param>
/// <param name="SectionM2">Conducting section, square metres.</param>
/// <param name="IsClosed">True where it ends in itself.</param>
/// <param name="PeakAPerM2">Densest current along it, amperes per square metre.</param>
/// <param name="PeakXM">Where that is, metres.</param>
/// <param name="PeakYM">Where that is, metres.</param>
/// <param name="LeftM">Box, metres.</param>
/// <param name="BottomM">Box, metres.</param>
/// <param name="RightM">Box, metres.</param>
/// <param name="TopM">Box, metres.</param>
/// <param name="Squares">Squares of <see cref="SquareM"/> it passes, each once.</param>
/// <param name="Hole">The hole, or null.</param>
internal sealed record LevelLine(
    int Layer, double WidthM, double ConductingM, double CurrentA, double SectionM2, bool IsClosed,
    double PeakAPerM2, double PeakXM, double PeakYM, double LeftM, double BottomM, double RightM, double TopM,
    IReadOnlyList<(int Column, int Row)> Squares, BarrelCurrent? Hole)
{
    /// <summary>
    /// Lines in squares of this side that touch, even by a corner, warm each other, metres. Beside a long trace on bare laminate the
    /// rise falls with sqrt(k H / h): 8 mm for 1.5 mm of FR-4 (0.8 W/(m K) along it) between films of 10 W/(m2 K); half of
    /// it is left at 5 mm, the farthest two lines in a row can lie apart and touch.
    /// </summary>
    public const double SquareM = 2.5e-3;

    public static (int Column, int Row) SquareOf(double xM, double yM) => ((int)Math.Floor(xM / SquareM), (int)Math.Floor(yM / SquareM));
}

using CopperPath.DemoBoards.Kit;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>
/// Where a phase lies. Inside a cell u runs from the board's edge to the load and v across; the cells of the right-hand
/// side are those of the left turned by half a turn about the load.
/// </summary>
/// <param name="Number">Phase number, 1 to 4.</param>
/// <param name="CentreY">The cell's axis, v = 0.</param>
/// <param name="IsTurned">On the right-hand side.</param>
public sealed record PhaseCell(int Number, double CentreY, bool IsTurned)
{
    public static readonly IReadOnlyList<PhaseCell> All =
        [new(1, 57.6, false), new(2, 30.4, false), new(3, 57.6, true), new(4, 30.4, true)];

    public int QuarterTurns => IsTurned ? 2 : 0;

    public PointMm At(double u, double v) => IsTurned ? new(FurrowCard.WidthMm - u, CentreY - v) : new(u, CentreY + v);

    public Geometry Box(double u1, double v1, double u2, double v2, double cornerMm = 0)
    {
        var (a, b) = (At(u1, v1), At(u2, v2));
        return Shapes.Box(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), cornerMm);
    }

    /// <summary>A block of vias at equal pitch.</summary>
    public IEnumerable<Via> ViaBlock(string net, double u, double v, int columns, int rows, double pitchMm) =>
        from column in Enumerable.Range(0, columns)
        from row in Enumerable.Range(0, rows)
        select new Via(net, At(u + column * pitchMm, v + row * pitchMm), 0.3, 0.6);
}

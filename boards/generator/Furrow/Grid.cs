using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>Blocks of vias in board coordinates.</summary>
public static class Grid
{
    /// <summary>Vias of 0.3 mm in columns and rows, from the lower left.</summary>
    public static IEnumerable<Via> Of(string net, double x, double y, int columns, int rows, double pitchMm) =>
        from column in Enumerable.Range(0, columns)
        from row in Enumerable.Range(0, rows)
        select new Via(net, new(x + column * pitchMm, y + row * pitchMm), 0.3, 0.6);
}

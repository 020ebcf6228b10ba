using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>
/// The Furrow compute card: an accelerator's card of a harvesting robot that exists only here. 12 V at 9 A come in;
/// four phases, two on each side of the accelerator, make 0.9 V at 90 A; a small converter makes 5 V at 3.3 A.
/// </summary>
public static class FurrowCard
{
    public const double WidthMm = 150;
    public const double HeightMm = 90;
    public const int Layers = 4;

    /// <summary>Draws the card and fills its pours.</summary>
    /// <param name="hasFaults">True for revision A, which carries the planted faults; false for revision B, which mends them.</param>
    public static FilledBoard Draw(bool hasFaults) =>
        Stitching.Add(FilledBoard.Fill(Lay(hasFaults)), Nets.Ground, 3.75, 0.3, 0.6);

    /// <summary>Draws the card without filling its pours: parts, tracks, vias.</summary>
    /// <inheritdoc cref="Draw" path="/param"/>
    public static Board Lay(bool hasFaults)
    {
        var board = new Board(WidthMm, HeightMm, 3, Layers);
        Mechanics.Draw(board);
        Feed.Draw(board, hasFaults);
        foreach (var cell in PhaseCell.All)
        {
            Phase.Draw(board, cell, hasFaults);
        }

        Load.Draw(board);
        FiveVoltConverter.Draw(board);
        Controller.Draw(board);
        Planes.Draw(board, hasFaults);
        return board;
    }
}

using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>Mounting holes, fiducials and the card's name.</summary>
public static class Mechanics
{
    public static void Draw(Board board)
    {
        foreach (var x in new[] { 4.0, FurrowCard.WidthMm - 4 })
        {
            foreach (var y in new[] { 4.0, FurrowCard.HeightMm - 4 })
            {
                board.Bores.Add(new(new(x, y), 3.2));
            }
        }

        PointMm[] fiducials = [new(5, 11), new(8, 80), new(136, 4)];
        for (var i = 0; i < fiducials.Length; i++)
        {
            board.Place($"FID{i + 1}", Footprints.Fiducial, fiducials[i], 0, _ => "");
        }

        PartLegend.Text(board, 1, "", "FURROW COMPUTE CARD", new(31, 2.2), 1.6, upright: true);
        PartLegend.Text(board, board.LayerCount, "", "FURROW COMPUTE CARD", new(75, 86), 1.8, upright: false);
    }
}

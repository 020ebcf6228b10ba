using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>The core supply's pours on the first and third layer, and ground on what is left of every layer.</summary>
public static class Planes
{
    public static void Draw(Board board, bool hasFaults)
    {
        var core = Shapes.Box(36, 17.3, 114, 70.8, 1.5);
        // Kept out of the signal balls' rows and of their way to the controller.
        var signals = Shapes.Union(
        [
            Shapes.Box(67, 16, 83, 28), Shapes.Box(58.2, 27.4, 91.8, 30.4), Shapes.Box(58.2, 57.6, 91.8, 60.6),
        ]);
        board.Pours.Add(new(Nets.Core, 1, Shapes.Rounded(core.Difference(signals), 0.4), 0.18));
        board.Pours.Add(new(Nets.Core, 3, core, 0.25));

        var whole = Shapes.Box(0, 0, FurrowCard.WidthMm, FurrowCard.HeightMm);
        for (var layer = 1; layer <= board.LayerCount; layer++)
        {
            // Close enough on the bottom that the ground runs on between the core vias under the package.
            board.Pours.Add(new(Nets.Ground, layer, whole, layer == board.LayerCount ? CopperRules.ClearanceMm : 0.2));
        }

        if (hasFaults)
        {
            board.Cutouts.Add(new(2, PlantedFaults.PlaneSlot));
            board.Cutouts.Add(new(4, PlantedFaults.PlaneSlot));
        }
    }
}

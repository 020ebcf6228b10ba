using CopperPath.DemoBoards.Kit;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>12 V from the connector through fuse and common choke to the bulk capacitors, and the bars that carry it to the phases.</summary>
public static class Feed
{
    /// <summary>The pour around the connector in revision A, which should have reached the fuse.</summary>
    public static readonly Geometry ForgottenPour = Shapes.Box(12.4, 82.9, 25, 87.8, 0.8);

    private const double ClearanceMm = 0.25;

    public static void Draw(Board board, bool hasFaults)
    {
        board.Place("J1", Footprints.FeedConnector, new(19.2, 82.6), 0, pin => pin is "1" or "2" or "3" ? Nets.SupplyIn : Nets.ReturnIn);
        board.Place("F1", Footprints.Fuse, new(35.2, 85.2), 0, Nets.SupplyIn, Nets.SupplyFused);
        board.Place("L6", Footprints.CommonChoke, new(53, 82.5), 0, pin => pin switch
        {
            "1" => Nets.SupplyFused,
            "2" => Nets.ReturnIn,
            "3" => Nets.Ground,
            _ => Nets.Supply,
        });

        DrawEntry(board, hasFaults);
        DrawBars(board);
        DrawBulk(board);
        foreach (var via in Grid.Of(Nets.Ground, 59.8, 76.9, 3, 4, 1.2))
        {
            board.Vias.Add(via);
        }

        board.Place("TP1", Footprints.TestPoint, new(75, 73.5), 0, _ => Nets.Supply);
    }

    private static void DrawEntry(Board board, bool hasFaults)
    {
        board.Pours.Add(new(Nets.SupplyIn, 1, hasFaults ? ForgottenPour : Shapes.Box(12.4, 82.9, 34, 87.8, 0.8), ClearanceMm));
        if (hasFaults)
        {
            board.Tracks.Add(PlantedFaults.FeedTrack);
        }

        board.Pours.Add(new(Nets.SupplyFused, 1, Shapes.Box(36.4, 82.9, 50.4, 87.8, 0.8), ClearanceMm));
        board.Pours.Add(new(Nets.ReturnIn, 1, Shapes.Box(12.4, 77.2, 50.4, 82.3, 0.8), ClearanceMm));
    }

    private static void DrawBars(Board board)
    {
        var bars = Shapes.Union(
        [
            Shapes.Box(55.6, 82, 134, 88),
            Shapes.Box(63.6, 71.2, 69.4, 88),
            Shapes.Box(126, 71.2, 134, 88),
            Shapes.Box(3, 71.2, 147, 75.8),
            Shapes.Box(3, 32, 9.4, 75.8),
            Shapes.Box(140.6, 9, 147, 75.8),
            Shapes.Box(127.4, 9, 147, 15),
            .. PhaseCell.All.Select(cell => cell.Box(3, 3.2, 20.6, 8.4)),
            .. PhaseCell.All.Select(cell => cell.Box(3, -9.2, 9.4, 8.4)),
        ]);
        board.Pours.Add(new(Nets.Supply, 1, Shapes.Rounded(bars, 0.8), ClearanceMm));
    }

    private static void DrawBulk(Board board)
    {
        for (var i = 0; i < 5; i++)
        {
            var x = 76.0 + 9 * i;
            board.Place($"C{i + 1}", Footprints.Polymer, new(x, 81.6), 3, Nets.Supply, Nets.Ground);
            foreach (var via in Grid.Of(Nets.Ground, x - 1.2, 76.8 - 0.4, 3, 1, 1.2))
            {
                board.Vias.Add(via);
            }
        }
    }
}

using CopperPath.DemoBoards.Kit;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>One phase of the core converter, drawn in its cell: input bank, three switches, switch node, inductor, output bank.</summary>
public static class Phase
{
    /// <summary>Ceramics across a phase's input, on the top side.</summary>
    public const int InputCapacitors = 5;

    private const double ClearanceMm = 0.2;

    public static void Draw(Board board, PhaseCell cell, bool hasFaults)
    {
        DrawSwitches(board, cell);
        DrawLowSideLand(board, cell, hasFaults);
        DrawSwitchNode(board, cell, hasFaults);
        DrawInputBank(board, cell);
        DrawOutput(board, cell);
    }

    private static void DrawSwitches(Board board, PhaseCell cell)
    {
        var n = cell.Number;
        string High(string pin) => pin switch { "1" => Nets.Switch(n), "4" => Nets.HighGate(n), _ => Nets.Supply };
        string Low(string pin) => pin switch { "1" => Nets.Ground, "4" => Nets.LowGate(n), _ => Nets.Switch(n) };
        board.Place($"Q{n}1", Footprints.PowerSwitch, cell.At(19, 5.8), cell.QuarterTurns + 2, High);
        board.Place($"Q{n}2", Footprints.PowerSwitch, cell.At(19, 0), cell.QuarterTurns, Low);
        board.Place($"Q{n}3", Footprints.PowerSwitch, cell.At(19, -5.8), cell.QuarterTurns, Low);

        // Gate pads go down to the tracks on the third layer, on the side away from the source's land or fill: a via
        // beside the pad there would narrow the path of the phase's current.
        void GateVia(string net, PointMm pad, PointMm via)
        {
            board.Vias.Add(new(net, via, 0.3, 0.5));
            board.Track(net, 1, 0.4, pad, via);
        }

        GateVia(Nets.HighGate(n), cell.At(21.85, 7.705), cell.At(21.85, 8.9));
        GateVia(Nets.LowGate(n), cell.At(16.15, -1.905), cell.At(17.175, -1.905));
        GateVia(Nets.LowGate(n), cell.At(16.15, -7.705), cell.At(17.175, -7.705));
    }

    // The low-side sources stand on a land of their own, so that their pulsed current goes straight down into the
    // plane instead of through the ground fill that the signals refer to.
    private static void DrawLowSideLand(Board board, PhaseCell cell, bool hasFaults)
    {
        var land = cell.Box(9.9, -10.2, 17.0, 2.7, 0.5);
        board.Pours.Add(new(Nets.Ground, 1, land, ClearanceMm, Isolated: true));
        if (hasFaults && cell.Number == PlantedFaults.StarvedPhase)
        {
            board.Vias.Add(PlantedFaults.LoneVia(cell));
            board.Cutouts.AddRange(PlantedFaults.MoatLayers.Select(layer => new Cutout(layer, land)));
            return;
        }

        board.Vias.AddRange(cell.ViaBlock(Nets.Ground, 12.4, -9.4, 3, 10, 1.2));
        // Filled vias in the source pads themselves.
        board.Vias.AddRange(cell.ViaBlock(Nets.Ground, 16.15, -0.46, 1, 3, 1.1));
        board.Vias.AddRange(cell.ViaBlock(Nets.Ground, 16.15, -6.26, 1, 3, 1.1));
    }

    private static void DrawSwitchNode(Board board, PhaseCell cell, bool hasFaults)
    {
        var net = Nets.Switch(cell.Number);
        var top = Shapes.Polygon(
            0.4,
            cell.At(17.4, -8.2), cell.At(30, -8.2), cell.At(32.2, -6), cell.At(32.2, 5.4), cell.At(30.3, 7.3),
            cell.At(20.9, 7.3), cell.At(20.9, 2.6), cell.At(17.4, 2.6));
        Geometry bottom = cell.Box(22.8, -7.6, 32, 6.7, 1);
        if (hasFaults && cell.Number == PlantedFaults.OvergrownPhase)
        {
            top = Shapes.Rounded(top.Union(PlantedFaults.SwitchNodeExcess), 0.4);
            bottom = Shapes.Rounded(bottom.Union(PlantedFaults.SwitchNodeExcess), 0.4);
        }

        board.Pours.Add(new(net, 1, top, ClearanceMm));
        board.Pours.Add(new(net, board.LayerCount, bottom, 0.3));
        board.Vias.AddRange(cell.ViaBlock(net, 23.9, -6.6, 4, 11, 1.2));
        board.Place($"L{cell.Number}", Footprints.CoreInductor, cell.At(34.3, 0), cell.QuarterTurns, net, Nets.Core);
    }

    private static void DrawInputBank(Board board, PhaseCell cell)
    {
        for (var i = 0; i < InputCapacitors; i++)
        {
            board.Place(
                $"C{cell.Number}{i + 1:00}", Footprints.Ceramic1206, cell.At(9.65, 1.4 - 2.3 * i), cell.QuarterTurns, Nets.Supply, Nets.Ground);
        }
    }

    private static void DrawOutput(Board board, PhaseCell cell)
    {
        board.Vias.AddRange(cell.ViaBlock(Nets.Core, 40.9, -6.6, 3, 12, 1.2));
        double[] ceramics = [4.8, 1.6, -1.6, -4.8];
        for (var i = 0; i < ceramics.Length; i++)
        {
            var v = ceramics[i];
            board.Place($"C{cell.Number}{i + 11:00}", Footprints.Ceramic0805, cell.At(46.6, v), cell.QuarterTurns, Nets.Core, Nets.Ground);
            board.Pours.Add(new(Nets.Ground, 1, cell.Box(46.7, v - 0.85, 50.0, v + 0.85, 0.3), ClearanceMm));
            board.Vias.AddRange(cell.ViaBlock(Nets.Ground, 48.5, v, 2, 1, 1.0));
        }

        double[] polymers = [9.4, -9.4];
        for (var i = 0; i < polymers.Length; i++)
        {
            var v = polymers[i];
            board.Place($"C{cell.Number}{i + 21:00}", Footprints.Polymer, cell.At(49, v), cell.QuarterTurns, Nets.Core, Nets.Ground);
            board.Pours.Add(new(Nets.Ground, 1, cell.Box(50.8, v - 1.5, 55.2, v + 1.5, 0.4), ClearanceMm));
            board.Vias.AddRange(cell.ViaBlock(Nets.Ground, 54.4, v - 1.0, 1, 3, 1.0));
        }
    }
}

using System.Globalization;
using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>The four-phase controller with its gate tracks, sense track, signals to the accelerator and service header.</summary>
public static class Controller
{
    private const int TrackLayer = 3;
    private static readonly PointMm _at = new(75, 10);

    // Balls of the lowest row, each with the controller lead it is wired to.
    private static readonly (int Column, int Lead, string Net)[] _signals =
        [(-2, 37, "PG"), (-1, 36, "EN"), (0, 35, "VID_CLK"), (1, 34, "VID_DATA"), (2, 33, "HOT")];

    // From the lead highest up: its track runs innermost and reaches the lowest gate first.
    private static readonly (int LeftLead, int RightLead, double LaneY, double LaneU)[] _lanes =
        [(2, 29, 16.5, 9), (4, 27, 15.8, 8), (6, 25, 15.1, 7), (8, 23, 14.4, 6)];

    public static string? SignalOfBall(string ball) => _signals
        .Where(signal => Load.BallName(-Load.Rows / 2, signal.Column) == ball)
        .Select(signal => signal.Net)
        .FirstOrDefault();

    public static void Draw(Board board)
    {
        board.Place("U2", Footprints.Controller, _at, 0, NetOfLead);
        board.Vias.AddRange(Grid.Of(Nets.Ground, _at.X - 1.2, _at.Y - 1.2, 3, 3, 1.2));
        DrawGateTracks(board);
        DrawSignals(board);
        DrawService(board);
        board.Place("TP3", Footprints.TestPoint, new(86, 3), 0, _ => Nets.Ground);
    }

    private static string NetOfLead(string lead)
    {
        var number = int.Parse(lead, CultureInfo.InvariantCulture);
        var lane = Array.FindIndex(_lanes, lane => lane.LeftLead == number || lane.RightLead == number);
        if (lane >= 0)
        {
            return GateNet(lane, _lanes[lane].RightLead == number);
        }

        return number switch
        {
            41 => Nets.Ground,
            40 => Nets.Core,
            20 => Nets.FiveVolt,
            11 => "SDA",
            12 => "SCL",
            13 => "ALERT",
            _ => _signals.Where(signal => signal.Lead == number).Select(signal => signal.Net).FirstOrDefault() ?? Pad.NotConnected,
        };
    }

    // The cells on the right are turned, so there the high-side gate is the lower of the two.
    private static string GateNet(int lane, bool right)
    {
        var phase = (lane < 2 ? 2 : 1) + (right ? 2 : 0);
        return lane % 2 == 0 != right ? Nets.LowGate(phase) : Nets.HighGate(phase);
    }

    private static void DrawGateTracks(Board board)
    {
        for (var lane = 0; lane < _lanes.Length; lane++)
        {
            foreach (var right in new[] { false, true })
            {
                DrawGateTrack(board, lane, right);
            }
        }
    }

    private static void DrawGateTrack(Board board, int lane, bool right)
    {
        var net = GateNet(lane, right);
        var side = right ? 1 : -1;
        var leadY = _at.Y + 1.75 - lane;
        var (_, _, laneY, laneU) = _lanes[lane];
        var via = new PointMm(_at.X + side * 6, leadY);
        board.Track(net, 1, 0.25, new(_at.X + side * 2.95, leadY), via);
        board.Vias.Add(new(net, via, 0.3, 0.5));

        var cell = PhaseCell.All.First(cell => cell.IsTurned == right && GateNet(lane, right).EndsWith((char)('0' + cell.Number)));
        var high = net.StartsWith("GH", StringComparison.Ordinal);
        PointMm[] gates = high
            ? [cell.At(20.9, 9.85), cell.At(21.85, 8.9)]
            : [cell.At(16.325, -10.9), cell.At(17.175, -10.05), cell.At(17.175, -7.705), cell.At(17.175, -1.905)];
        var column = cell.At(laneU, 0).X;
        var turn = 0.8;
        var toLane = laneY - leadY;
        board.Track(
            net,
            TrackLayer,
            0.4,
            [
                via,
                new(via.X + side * toLane, laneY),
                new(column - side * turn, laneY),
                new(column, laneY + turn),
                new(column, gates[0].Y - turn),
                new(column - side * turn, gates[0].Y),
                .. gates,
            ]);
    }

    private static void DrawSignals(Board board)
    {
        foreach (var (column, lead, net) in _signals)
        {
            var ballX = Load.Centre.X + column;
            var leadX = _at.X + 2.25 - 0.5 * (lead - 31);
            board.Track(
                net, 1, 0.15, new(ballX, Load.Centre.Y - Load.Rows / 2), new(ballX, 20), new(leadX, 15), new(leadX, _at.Y + 2.95));
        }

        // The sense lead measures the core supply where its pour ends beside the package.
        board.Track(Nets.Core, 1, 0.2, new(72.75, 12.95), new(72.75, 15), new(68.6, 19.15), new(66, 19.15));
    }

    private static void DrawService(Board board)
    {
        string[] nets = ["SDA", "SCL", "ALERT", Nets.FiveVolt, Nets.Ground];
        board.Place("J3", Footprints.ServiceHeader, new(59.08, 4.2), 0, pin => nets[pin[0] - '1']);
        board.Track("SDA", 1, 0.2, new(72.75, 7.05), new(72.75, 5.9), new(71.05, 4.2), new(64.16, 4.2));
        board.Track("SCL", 1, 0.2, new(73.25, 7.05), new(73.25, 3.5), new(72, 2.25), new(63.57, 2.25), new(61.62, 4.2));
        board.Track("ALERT", 1, 0.2, new(73.75, 7.05), new(73.75, 2.8), new(72.6, 1.65), new(61.63, 1.65), new(59.08, 4.2));
        board.Track(Nets.FiveVolt, 1, 0.4, new(77.25, 7.05), new(77.25, 5.4), new(94, 5.4));
        board.Track(Nets.FiveVolt, 1, 0.3, new(77.25, 5.4), new(77.25, 2), new(76.3, 1.05), new(59.69, 1.05), new(56.54, 4.2));
    }
}

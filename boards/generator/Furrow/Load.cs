using System.Globalization;
using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>
/// The accelerator: 33 by 33 balls at 1 mm. Its middle rows alternate, three of core supply and two of ground, so that
/// core current can run along the rows on the top layer from both sides; the outer rows carry signals.
/// </summary>
public static class Load
{
    public const int Rows = 33;

    private const int Reach = Rows / 2;
    private const double BallMm = 0.5;
    private const double ViaLandMm = 0.5;
    private const string RowLetters = "ABCDEFGHJKLMNPRTUVWY";

    public static readonly PointMm Centre = new(75, 44);

    /// <summary>First rows of the pairs that carry ground, counted from the middle row upward.</summary>
    public static readonly IReadOnlyList<int> GroundPairs = [-13, -8, -3, 2, 7, 12];

    /// <summary>First rows of the triples that carry core supply.</summary>
    public static readonly IReadOnlyList<int> CoreTriples = [-11, -6, -1, 4, 9];

    public static void Draw(Board board)
    {
        board.Place("U1", Package(), Centre, 0, NetOfBall);
        foreach (var row in GroundPairs)
        {
            board.Pours.Add(new(
                Nets.Ground, 1, Shapes.Box(Centre.X - 16.6, Centre.Y + row - 0.41, Centre.X + 16.6, Centre.Y + row + 1.41, 0.3), 0.18));
            ViaRow(board, Nets.Ground, row + 0.5);
        }

        foreach (var row in CoreTriples)
        {
            ViaRow(board, Nets.Core, row + 0.5);
            ViaRow(board, Nets.Core, row + 1.5);
        }

        DrawCapacitors(board);
        board.Place("TP2", Footprints.TestPoint, new(40, 44), 0, _ => Nets.Core);
    }

    /// <summary>Name of the ball in a row and column counted from the middle.</summary>
    public static string BallName(int row, int column)
    {
        var fromTop = Reach - row;
        var letters = fromTop < RowLetters.Length
            ? RowLetters[fromTop].ToString()
            : "A" + RowLetters[fromTop - RowLetters.Length];
        return letters + (column + Reach + 1).ToString(CultureInfo.InvariantCulture);
    }

    private static Footprint Package() => new(
        35,
        35,
        [
            .. from row in Enumerable.Range(0, Rows).Select(i => Reach - i)
               from column in Enumerable.Range(-Reach, Rows)
               select new FootprintPad(BallName(row, column), column, row, PadShape.Disc(BallMm), PadUse.Ball),
        ]);

    private static string NetOfBall(string ball)
    {
        var digits = ball.IndexOfAny(['1', '2', '3', '4', '5', '6', '7', '8', '9']);
        var letters = ball[..digits];
        var index = letters.Length == 1 ? RowLetters.IndexOf(letters[0]) : RowLetters.Length + RowLetters.IndexOf(letters[1]);
        var row = Reach - index;
        if (GroundPairs.Any(first => row == first || row == first + 1))
        {
            return Nets.Ground;
        }

        if (CoreTriples.Any(first => row >= first && row <= first + 2))
        {
            return Nets.Core;
        }

        return Controller.SignalOfBall(ball) ?? Pad.NotConnected;
    }

    private static void ViaRow(Board board, string net, double row)
    {
        for (var column = -Reach; column < Reach; column++)
        {
            board.Vias.Add(new(net, Centre + new PointMm(column + 0.5, row), 0.3, ViaLandMm));
        }
    }

    // Ceramics above and below the package, their ground ends away from it.
    private static void DrawCapacitors(Board board)
    {
        double[] above = [.. Enumerable.Range(0, 11).Select(i => 60.0 + 3 * i)];
        double[] below = [57.5, 60.5, 63.5, 86.5, 89.5, 92.5];
        var number = 501;
        foreach (var x in above)
        {
            Capacitor(board, number++, new(x, 64.6), 1, 1);
        }

        foreach (var x in below)
        {
            Capacitor(board, number++, new(x, 23.4), 3, -1);
        }
    }

    private static void Capacitor(Board board, int number, PointMm at, int quarterTurns, int outward)
    {
        var part = "C" + number.ToString(CultureInfo.InvariantCulture);
        board.Place(part, Footprints.Ceramic0805, at, quarterTurns, Nets.Core, Nets.Ground);
        var (near, far) = (at.Y + outward * 0.3, at.Y + outward * 3.2);
        board.Pours.Add(new(Nets.Ground, 1, Shapes.Box(at.X - 0.9, Math.Min(near, far), at.X + 0.9, Math.Max(near, far), 0.3), 0.2));
        board.Vias.Add(new(Nets.Ground, new(at.X - 0.5, at.Y + outward * 2.4), 0.3, 0.6));
        board.Vias.Add(new(Nets.Ground, new(at.X + 0.5, at.Y + outward * 2.4), 0.3, 0.6));
    }
}

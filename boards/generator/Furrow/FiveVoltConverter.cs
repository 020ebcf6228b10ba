using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>The single-phase converter from 12 V to 5 V at 3.3 A, and the connector it feeds.</summary>
public static class FiveVoltConverter
{
    private const double ClearanceMm = 0.2;

    public static void Draw(Board board)
    {
        board.Place("U3", Footprints.SmallConverter, new(124, 11.5), 0, pin => pin switch
        {
            "1" or "2" => Nets.FiveVoltSwitch,
            "3" => Nets.FiveVolt,
            "4" or "5" or "9" => Nets.Ground,
            _ => Nets.Supply,
        });
        board.Place("L5", Footprints.SmallInductor, new(111, 12), 2, Nets.FiveVoltSwitch, Nets.FiveVolt);
        board.Place("J2", Footprints.FiveVoltConnector, new(97.5, 5.4), 0, Nets.FiveVolt, Nets.Ground);
        board.Place("C601", Footprints.Ceramic1206, new(130, 8.6), 3, Nets.Supply, Nets.Ground);
        board.Place("C602", Footprints.Ceramic1206, new(133, 8.6), 3, Nets.Supply, Nets.Ground);
        board.Place("C603", Footprints.Ceramic1206, new(103.6, 8.6), 3, Nets.FiveVolt, Nets.Ground);
        board.Place("C604", Footprints.Ceramic1206, new(106.6, 8.6), 3, Nets.FiveVolt, Nets.Ground);
        board.Place("TP4", Footprints.TestPoint, new(99, 12.4), 0, _ => Nets.FiveVolt);

        board.Pours.Add(new(
            Nets.FiveVoltSwitch, 1, Shapes.Rounded(Shapes.Box(112.2, 9.2, 115, 14.8).Union(Shapes.Box(112.2, 11.45, 122.3, 14.8)), 0.3), ClearanceMm));
        board.Pours.Add(new(
            Nets.FiveVolt, 1, Shapes.Rounded(Shapes.Box(93, 9.2, 109.8, 14.8).Union(Shapes.Box(93, 3.4, 97, 14.8)), 0.5), ClearanceMm));
        // The feedback pin senses at the output pour.
        board.Track(Nets.FiveVolt, 1, 0.25, new(121.3, 10.865), new(119.2, 10.865), new(116.4, 8.065), new(110.4, 8.065), new(109, 9.465));

        board.Vias.AddRange(Grid.Of(Nets.Ground, 123.4, 10.4, 2, 3, 1.2));
        foreach (var x in new[] { 103.6, 106.6, 130, 133 })
        {
            board.Vias.AddRange(Grid.Of(Nets.Ground, x - 0.6, 5.4, 2, 1, 1.2));
        }
    }
}

using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>The land patterns of the Furrow compute card, all of its own drawing.</summary>
public static class Footprints
{
    public static readonly Footprint Ceramic1206 = Footprint.TwoPads(1.45, 1.1, 1.75, 4.2, 1.95, LabelPlace.LeftEnd);

    public static readonly Footprint Ceramic0805 = Footprint.TwoPads(0.95, 1.0, 1.35, 3.1, 1.5, LabelPlace.LeftEnd);

    public static readonly Footprint Polymer = Footprint.TwoPads(3.1, 2.4, 2.7, 8.8, 3.0);

    public static readonly Footprint CoreInductor = Footprint.TwoPads(4.1, 2.8, 9.0, 11.4, 10.4);

    public static readonly Footprint SmallInductor = Footprint.TwoPads(2.4, 2.0, 5.4, 7.2, 6.2);

    public static readonly Footprint Fuse = Footprint.TwoPads(3.7, 3.2, 3.8, 11, 4.4);

    /// <summary>Two windings side by side: 1 to 4 in the supply, 2 to 3 in the return.</summary>
    public static readonly Footprint CommonChoke = new(
        13,
        10,
        [
            new("1", -4.5, 2.5, PadShape.Surface(3.2, 3.4)),
            new("2", -4.5, -2.5, PadShape.Surface(3.2, 3.4)),
            new("3", 4.5, -2.5, PadShape.Surface(3.2, 3.4)),
            new("4", 4.5, 2.5, PadShape.Surface(3.2, 3.4)),
        ]);

    /// <summary>Power switch of 5 by 6 mm: source bar 1 and gate 4 on the left, drain tab 5 on the right.</summary>
    public static readonly Footprint PowerSwitch = new(
        7.4,
        5.2,
        [
            new("1", -2.85, 0.64, PadShape.Surface(1.2, 3.3)),
            new("4", -2.85, -1.905, PadShape.Surface(1.2, 0.75)),
            new("5", 0.85, 0, PadShape.Surface(4.5, 4.4)),
        ],
        LabelPlace.RightEnd);

    public static readonly Footprint FeedConnector = new(
        15,
        10.8,
        [
            .. from row in new[] { 0, 1 }
               from column in new[] { 0, 1, 2 }
               select new FootprintPad(
                   (row * 3 + column + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
                   4.2 * (column - 1), row == 0 ? 2.6 : -2.6, PadShape.Disc(2.8), PadUse.ThroughHole, 1.4),
        ]);

    public static readonly Footprint FiveVoltConnector = new(
        10.4,
        5.4,
        [
            new("1", -2.55, 0, PadShape.Disc(2.4), PadUse.ThroughHole, 1.3),
            new("2", 2.55, 0, PadShape.Disc(2.4), PadUse.ThroughHole, 1.3),
        ]);

    /// <summary>Service header, pin 1 to the right.</summary>
    public static readonly Footprint ServiceHeader = new(
        13.2,
        2.8,
        [
            .. Enumerable.Range(0, 5).Select(i => new FootprintPad(
                (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
                5.08 - 2.54 * i, 0, i == 0 ? new PadShape(1.7, 1.7, 0.2) : PadShape.Disc(1.7), PadUse.ThroughHole, 1.0, Relieved: true)),
        ],
        LabelPlace.LeftEnd);

    /// <summary>Converter in an eight-lead package with a ground tab, pin 9.</summary>
    public static readonly Footprint SmallConverter = new(
        4.2,
        5,
        [
            .. Enumerable.Range(0, 8).Select(i => new FootprintPad(
                (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
                i < 4 ? -2.7 : 2.7, 1.905 - 1.27 * (i < 4 ? i : 7 - i), PadShape.Surface(1.5, 0.6))),
            new("9", 0, 0, PadShape.Surface(2.4, 3.2)),
        ]);

    /// <summary>Controller: ten leads a side at 0.5 mm and a ground tab, pin 41.</summary>
    public static readonly Footprint Controller = new(
        6.2,
        6.2,
        [
            .. Enumerable.Range(0, 40).Select(ControllerLead),
            new("41", 0, 0, PadShape.Surface(4.2, 4.2)),
        ]);

    public static readonly Footprint TestPoint = new(0, 0, [new("1", 0, 0, PadShape.Disc(1.5), PadUse.Test)], LabelPlace.RightEnd);

    public static readonly Footprint Fiducial = new(0, 0, [new("1", 0, 0, PadShape.Disc(1.0), PadUse.Fiducial)]);

    private static FootprintPad ControllerLead(int index)
    {
        var along = 2.25 - 0.5 * (index % 10);
        var place = new PointMm(-2.95, along).Turned(index / 10);
        var shape = PadShape.Surface(0.8, 0.28).Turned(index / 10);
        return new((index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), place.X, place.Y, shape);
    }
}

using CopperPath.DemoBoards.Kit;
using CopperPath.DemoBoards.Writing;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>The faults of revision A, in one place: the shapes the drawing uses, and the list of them.</summary>
public static class PlantedFaults
{
    public const int OvergrownPhase = 2;

    public const int StarvedPhase = 3;

    /// <summary>The copper that the lone via's current crowds into: a disc of this diameter.</summary>
    private const double LoneViaReachMm = 2;

    /// <summary>What alone joins connector and fuse where the pour of the feed was forgotten: the track that first connected them.</summary>
    public static readonly Track FeedTrack = new(Nets.SupplyIn, 1, 0.4, [new(23.4, 85.2), new(31.5, 85.2)]);

    /// <summary>The part of it between the pour around the connector and the fuse's pad.</summary>
    public static readonly Geometry FeedNeck = Shapes.Box(25, 85, 29.9, 85.4);

    /// <summary>What phase 2's switch node has too much, on both outer layers.</summary>
    public static readonly Geometry SwitchNodeExcess =
        Shapes.Box(20.4, 14, 31.6, 24).Union(Shapes.Box(11, 2.8, 52, 16.6, 1));

    /// <summary>A slot across the return current of phase 4, in the inner plane and the ground below it.</summary>
    public static readonly Geometry PlaneSlot = Shapes.Box(111.2, 20.4, 112.8, 40.4, 0.79);

    /// <summary>The one via that is left of phase 3's block and carries its low-side current to the ground on the bottom.</summary>
    public static Via LoneVia(PhaseCell cell) => new(Nets.Ground, cell.At(12.4, -8.2), 0.25, 0.55);

    /// <summary>Layers whose ground keeps clear of the land of phase 3's low-side sources.</summary>
    public static readonly IReadOnlyList<int> MoatLayers = [2, 3];

    public static IReadOnlyList<PlantedFault> List()
    {
        var starved = PhaseCell.All.Single(cell => cell.Number == StarvedPhase);
        return
        [
            new("feed-neck", "neck", Nets.SupplyIn, [1], FeedNeck,
                "The feed of 9 A passes a track of 0.4 mm between connector and fuse, where a pour was meant."),
            new("lone-via", "overloaded vias", Nets.Ground, [1, 4], Shapes.Disc(LoneVia(starved).At, LoneViaReachMm),
                "The sources of phase 3's low-side switches go down by one via of 0.25 mm, to the bottom alone, where the other phases have 36 of 0.3 mm into all planes."),
            new("large-switch-node", "switch node area", Nets.Switch(OvergrownPhase), [1, 4], SwitchNodeExcess,
                "The switch node of phase 2 has more than three times the area of its siblings."),
            new("plane-slot", "plane slot", Nets.Ground, [2, 4], PlaneSlot,
                "A slot of 20 by 1.6 mm cuts the plane and the ground under it across the return current of phase 4."),
        ];
    }
}

using CopperPath.DemoBoards.Kit;
using CopperPath.DemoBoards.Writing;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>The faults of revision A, in one place: the shapes the drawing uses, and the list of them.</summary>
public static class PlantedFaults
{
    public const int OvergrownPhase = 2;

    public const int StarvedPhase = 3;

    /// <summary>A strip of 1 mm in the feed between connector and fuse; its ends lie within the wide copper.</summary>
    public static readonly Geometry FeedNeck = Shapes.Box(25, 84.7, 29.4, 85.7);

    /// <summary>What phase 2's switch node has too much, on both outer layers.</summary>
    public static readonly Geometry SwitchNodeExcess =
        Shapes.Box(20.4, 14, 31.6, 24).Union(Shapes.Box(11, 2.8, 52, 16.6, 1));

    /// <summary>A slot across the return current of phase 4, in the inner plane and the ground below it.</summary>
    public static readonly Geometry PlaneSlot = Shapes.Box(111.2, 20.4, 112.8, 40.4, 0.79);

    /// <summary>The four vias that alone carry phase 3's low-side current into the plane.</summary>
    public static IReadOnlyList<Via> FewVias(PhaseCell cell) => [.. cell.ViaBlock(Nets.Ground, 13.1, -4.6, 2, 2, 1.2)];

    public static IReadOnlyList<PlantedFault> List()
    {
        var starved = PhaseCell.All.Single(cell => cell.Number == StarvedPhase);
        return
        [
            new("feed-neck", "neck", Nets.SupplyIn, [1], Shapes.Box(25.6, 84.7, 28.8, 85.7),
                "The feed of 9 A narrows to 1 mm between connector and fuse."),
            new("few-vias", "overloaded vias", Nets.Ground, [1, 2, 3, 4], Shapes.Union(FewVias(starved).Select(via => Shapes.Disc(via.At, via.LandMm))),
                "The sources of phase 3's low-side switches go down by 4 vias where the other phases have 36."),
            new("large-switch-node", "switch node area", Nets.Switch(OvergrownPhase), [1, 4], SwitchNodeExcess,
                "The switch node of phase 2 has more than three times the area of its siblings."),
            new("plane-slot", "plane slot", Nets.Ground, [2, 4], PlaneSlot,
                "A slot of 20 by 1.6 mm cuts the plane and the ground under it across the return current of phase 4."),
        ];
    }
}

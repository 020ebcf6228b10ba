using CopperPath.DemoBoards.Kit;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>The faults of revision A, in one place: shapes the drawing uses.</summary>
public static class PlantedFaults
{
    public const int OvergrownPhase = 2;

    public const int StarvedPhase = 3;

    /// <summary>A strip of 1 mm in the feed between connector and fuse.</summary>
    public static readonly Geometry FeedNeck = Shapes.Box(25, 84.7, 29.4, 85.7);

    /// <summary>What phase 2's switch node has too much, on both outer layers.</summary>
    public static readonly Geometry SwitchNodeExcess =
        Shapes.Box(20.4, 14, 31.6, 24).Union(Shapes.Box(11, 2.8, 52, 16.6, 1));

    /// <summary>A slot across the return current of phase 4, in the inner plane and the ground below it.</summary>
    public static readonly Geometry PlaneSlot = Shapes.Box(115.7, 21.4, 117.3, 39.4, 0.8 - 1e-3);
}

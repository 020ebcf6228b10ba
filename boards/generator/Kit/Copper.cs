using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Kit;

/// <summary>What a pad is for, as the aperture attribute of a copper file says it.</summary>
public enum PadUse
{
    Surface,
    Ball,
    ThroughHole,
    Test,
    Fiducial,
}

/// <summary>A part's pad.</summary>
/// <param name="Part">Reference designator.</param>
/// <param name="Pin">Pin number or ball name.</param>
/// <param name="Net">Net name; empty for copper of no net.</param>
/// <param name="Layer">1 (top) or the last layer (bottom); a plated hole's pad is on all layers.</param>
/// <param name="At">Centre.</param>
/// <param name="Shape">Outline.</param>
/// <param name="Use">Purpose.</param>
/// <param name="DrillMm">Finished diameter of the plated hole; 0 for a surface pad.</param>
/// <param name="Relieved">Joined to pours of its net by four spokes rather than all round, for hand soldering.</param>
public sealed record Pad(
    string Part, string Pin, string Net, int Layer, PointMm At, PadShape Shape, PadUse Use, double DrillMm = 0, bool Relieved = false)
{
    /// <summary>Net name of pads that are wired to nothing, as the net attribute spells it.</summary>
    public const string NotConnected = "N/C";

    public bool IsDrilled => DrillMm > 0;

    public bool IsOn(int layer) => IsDrilled || Layer == layer;
}

/// <summary>A through via: finished hole and outer land, in millimetres.</summary>
public sealed record Via(string Net, PointMm At, double DrillMm, double LandMm);

/// <summary>A track of one width with round ends.</summary>
public sealed record Track(string Net, int Layer, double WidthMm, IReadOnlyList<PointMm> Path);

/// <summary>An area of copper to be poured; where outlines overlap the earlier pour wins.</summary>
/// <param name="Net">Net name.</param>
/// <param name="Layer">Copper layer, 1 at the top.</param>
/// <param name="Outline">Area wanted, before clearances.</param>
/// <param name="ClearanceMm">Distance kept from copper of other nets.</param>
/// <param name="Isolated">Kept apart from other pours of the same net too, so that only vias join it to them.</param>
public sealed record Pour(string Net, int Layer, Geometry Outline, double ClearanceMm, bool Isolated = false);

/// <summary>An area kept free of poured copper on one layer.</summary>
public sealed record Cutout(int Layer, Geometry Area);

/// <summary>A hole without plating.</summary>
public sealed record Bore(PointMm At, double DiameterMm);

/// <summary>A line of the legend.</summary>
/// <param name="Layer">1 for the top side, the last copper layer for the bottom side.</param>
/// <param name="Part">Reference designator it belongs to; empty for free text.</param>
/// <param name="WidthMm">Pen width.</param>
/// <param name="Path">Points of the line.</param>
public sealed record LegendLine(int Layer, string Part, double WidthMm, IReadOnlyList<PointMm> Path);

namespace CopperPath.CrossCheck;

/// <summary>The stable codes of remarks on files that do not fit each other; docs/cross-check.md explains each.</summary>
public static class SetCode
{
    /// <summary>A drill file lies off the lands of the copper layers.</summary>
    public const string DrillsOff = "SET001";

    /// <summary>A copper layer lies off the drilled holes that other layers fit.</summary>
    public const string LayerOff = "SET002";

    /// <summary>Holes break out of the copper around them on a layer.</summary>
    public const string BrokenRings = "SET003";

    /// <summary>Plated holes without copper on an outer face.</summary>
    public const string HolesWithoutLand = "SET004";

    /// <summary>Plated holes that meet no copper at all.</summary>
    public const string HolesInTheBare = "SET005";

    /// <summary>Lands made for holes, and no hole there.</summary>
    public const string LandsWithoutHole = "SET006";

    /// <summary>Vias that lead from one piece of copper to nothing.</summary>
    public const string DeadEnds = "SET007";

    /// <summary>Several copper layers and not one hole.</summary>
    public const string NoHoles = "SET008";

    /// <summary>Two copper layers with one image.</summary>
    public const string EqualLayers = "SET010";

    /// <summary>A copper layer without copper.</summary>
    public const string EmptyLayer = "SET011";

    /// <summary>An odd number of copper layers that nothing states, or a face that other files speak of and no copper file.</summary>
    public const string LayersMissing = "SET012";

    /// <summary>No board outline.</summary>
    public const string NoOutline = "SET020";

    /// <summary>A board outline that does not close.</summary>
    public const string OpenOutline = "SET021";

    /// <summary>Copper or holes outside the board outline.</summary>
    public const string OutsideOutline = "SET022";

    /// <summary>A board outline far larger than all that lies in it.</summary>
    public const string LargeOutline = "SET023";

    /// <summary>Openings of a solder mask do not lie over the pads of its face.</summary>
    public const string MaskOff = "SET030";

    /// <summary>A solder mask fits the other face.</summary>
    public const string MaskOfOtherFace = "SET031";

    /// <summary>The job file states another number of copper layers.</summary>
    public const string JobLayers = "SET041";

    /// <summary>The job file states another board size.</summary>
    public const string JobSize = "SET042";

    /// <summary>Points of the netlist without copper.</summary>
    public const string NetlistOffCopper = "SET050";

    /// <summary>Holes of the netlist that are not drilled.</summary>
    public const string NetlistHoles = "SET051";
}

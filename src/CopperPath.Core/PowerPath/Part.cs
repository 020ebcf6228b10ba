using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.PowerPath;

/// <summary>A pad of a part, on the side the part stands on.</summary>
/// <param name="Name">Pin name of the files, or null.</param>
/// <param name="Net">The net it lies on.</param>
/// <param name="Pad">Its copper.</param>
/// <param name="Box">Bounds of the pad.</param>
/// <param name="HoleDiameterNm">Diameter of the plated hole in it, nanometres; 0 for a surface pad.</param>
public sealed record PartPad(string? Name, Net Net, Pad Pad, BoxNm Box, long HoleDiameterNm)
{
    public PointNm At => Pad.At;

    public double AreaM2 { get; } = Pad.Outlines.Sum(Ring.SignedAreaNm2) * 1e-18;

    /// <summary>Distance between the boxes of two pads, nanometres; 0 where they touch.</summary>
    public double GapNmTo(PartPad other)
    {
        double dx = Math.Max(0, Math.Max(other.Box.MinX - Box.MaxX, Box.MinX - other.Box.MaxX));
        double dy = Math.Max(0, Math.Max(other.Box.MinY - Box.MaxY, Box.MinY - other.Box.MaxY));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>True when the other pad has the same width and height, to 3 % and 5 um.</summary>
    public bool IsCongruentTo(PartPad other) => IsNear(Box.WidthNm, other.Box.WidthNm) && IsNear(Box.HeightNm, other.Box.HeightNm);

    private static bool IsNear(long a, long b) => Math.Abs(a - b) <= Math.Max(5_000, 0.03 * Math.Max(a, b));
}

/// <summary>What a set of pads looks like.</summary>
public enum PartShape
{
    /// <summary>Two like pads facing each other: capacitor, resistor, inductor, fuse.</summary>
    TwoTerminal,

    /// <summary>Four like pads at the corners of a rectangle, on four nets: two windings or a shunt.</summary>
    FourTerminal,

    /// <summary>Pins in plated holes: connector, terminal.</summary>
    ThroughHole,

    /// <summary>A grid of like pads: a ball array.</summary>
    Array,

    /// <summary>Anything else with several pads.</summary>
    Package,

    /// <summary>One pad: test point, fiducial.</summary>
    SinglePad,
}

/// <summary>Pads that belong to one part: named by the files, or put together from the pattern of the pads.</summary>
/// <param name="Name">Designator of the files, or a name that says where its pads are.</param>
/// <param name="IsNamed">True when the files name it; otherwise the part is itself a guess.</param>
/// <param name="Shape">What the pads look like.</param>
/// <param name="Pads">Its pads.</param>
public sealed record Part(string Name, bool IsNamed, PartShape Shape, IReadOnlyList<PartPad> Pads)
{
    /// <summary>Nets it touches, in the order of its pads.</summary>
    public IReadOnlyList<Net> Nets { get; } = [.. Pads.Select(pad => pad.Net).Distinct(NetIdentity.Comparer)];

    public PointNm Centre { get; } = BoxNm.Around(Pads.Select(pad => pad.Box)).Centre;

    /// <summary>
    /// False where the files name the part and the class letter of its designator is that of another two-terminal part
    /// (IEEE 315, from memory: D diode, F fuse, L inductor, R resistor; FB, a bead, is common practice).
    /// </summary>
    public bool MayBeCapacitor { get; } = !IsNamed || Name.Length == 0 || !"DFLR".Contains(char.ToUpperInvariant(Name[0]));

    public bool Touches(Net net) => Nets.Any(own => ReferenceEquals(own, net));

    public IEnumerable<PartPad> PadsOn(Net net) => Pads.Where(pad => ReferenceEquals(pad.Net, net));

    /// <summary>Area of its pads on a net, square metres.</summary>
    public double PadAreaM2(Net net) => PadsOn(net).Sum(pad => pad.AreaM2);

    /// <summary>True when it joins exactly these two nets.</summary>
    public bool Bridges(Net a, Net b) => Nets.Count == 2 && Touches(a) && Touches(b);

    /// <summary>The other net of a part on two nets.</summary>
    public Net Across(Net net) => ReferenceEquals(Nets[0], net) ? Nets[1] : Nets[0];
}

/// <summary>Nets are compared as the objects they are: comparing their copper point by point would say the same, slowly.</summary>
public static class NetIdentity
{
    public static IEqualityComparer<Net> Comparer { get; } = ReferenceEqualityComparer.Instance;
}

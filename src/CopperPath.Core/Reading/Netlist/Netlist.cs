using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Netlist;

/// <summary>What kind of feature a netlist point stands for.</summary>
public enum NetlistPointKind
{
    /// <summary>Plated through hole (record 317).</summary>
    ThroughHole,

    /// <summary>Surface pad (record 327).</summary>
    Surface,

    /// <summary>Tooling or other unplated hole (record 367).</summary>
    Tooling,

    /// <summary>Blind or buried hole (record 307).</summary>
    BlindOrBuried,
}

/// <summary>One test point: a claim that the copper there belongs to a net.</summary>
/// <param name="Kind">Kind of feature.</param>
/// <param name="Net">Net name with aliases resolved; null where the file says it is not connected.</param>
/// <param name="Component">Reference designator, <c>VIA</c> for vias, or null.</param>
/// <param name="Pin">Pin, or null.</param>
/// <param name="IsMidNet">True for a point in the middle of a net.</param>
/// <param name="HoleDiameterNm">Drill diameter in nanometres, or null.</param>
/// <param name="IsPlated">Whether the hole is plated, or null.</param>
/// <param name="AccessLayer">Copper layer it can be reached on, 1 = top; 0 = both sides.</param>
/// <param name="Location">Place in nanometres.</param>
/// <param name="Position">Where in the file it stands.</param>
public sealed record NetlistPoint(
    NetlistPointKind Kind,
    string? Net,
    string? Component,
    string? Pin,
    bool IsMidNet,
    long? HoleDiameterNm,
    bool? IsPlated,
    int AccessLayer,
    PointNm Location,
    SourcePosition Position);

/// <summary>The netlist of a board. Its names are claims: copper alone decides what is joined.</summary>
/// <param name="File">File name as given to the reader.</param>
/// <param name="Points">Points in file order.</param>
/// <param name="ResolutionNm">Length of one count of its coordinates, nanometres: half of it is their rounding.</param>
public sealed record BoardNetlist(string File, IReadOnlyList<NetlistPoint> Points, long ResolutionNm);

/// <summary>What came out of a netlist file.</summary>
/// <param name="Netlist">The points, or null when the file can not be used.</param>
/// <param name="Diagnostics">Remarks in file order.</param>
public sealed record NetlistReading(BoardNetlist? Netlist, IReadOnlyList<Diagnostic> Diagnostics);

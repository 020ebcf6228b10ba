using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Placement;

/// <summary>Side of the board a part stands on.</summary>
public enum BoardSide
{
    /// <summary>The table has no column for it.</summary>
    Unknown,
    Top,
    Bottom,
}

/// <summary>Where one part of the board is placed.</summary>
/// <param name="Designator">Its reference designator.</param>
/// <param name="At">Its centre, nanometres from the origin of the table; see <see cref="PlacementTable.IsUnitStated"/>.</param>
/// <param name="RotationDeg">Its rotation as written, degrees; null where the table does not give it.</param>
/// <param name="Side">Side it stands on.</param>
/// <param name="Value">Its value, or null.</param>
/// <param name="Package">Its package, or null.</param>
/// <param name="Position">Where in the file it stands.</param>
public sealed record PlacedPart(
    string Designator,
    PointNm At,
    double? RotationDeg,
    BoardSide Side,
    string? Value,
    string? Package,
    SourcePosition Position);

/// <summary>A table of part placements. Its places are claims, used only to guess which pads belong to which part.</summary>
/// <param name="File">File name as given to the reader.</param>
/// <param name="Parts">Parts in file order, designators unique.</param>
/// <param name="IsUnitStated">False when no unit is stated anywhere; the places are then read as millimetres.</param>
public sealed record PlacementTable(string File, IReadOnlyList<PlacedPart> Parts, bool IsUnitStated);

/// <summary>What came out of a placement file.</summary>
/// <param name="Table">The parts, or null when the file is no table of placements: it is optional, so that is a warning.</param>
/// <param name="Diagnostics">Remarks in file order.</param>
public sealed record PlacementReading(PlacementTable? Table, IReadOnlyList<Diagnostic> Diagnostics);

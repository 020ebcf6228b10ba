using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>Whether the barrel of a hole is plated, and how that is known.</summary>
public enum Plating
{
    Unknown,
    Plated,
    NonPlated,
}

/// <summary>
/// One drilled hole, slot or routed cut: the path of the tool centre widened by the tool diameter.
/// </summary>
/// <param name="Path">One point for a round hole; two for a slot; more for a routed path (arcs flattened).</param>
/// <param name="ToolDiameterNm">Tool diameter in nanometres, positive.</param>
/// <param name="Plating">Plated or not, as far as the file says.</param>
/// <param name="Function">Drill function attribute such as <c>ViaDrill</c> or <c>ComponentDrill</c>, or null.</param>
/// <param name="Position">Where in the file the feature was made.</param>
public sealed record DrilledFeature(
    PointNm[] Path,
    long ToolDiameterNm,
    Plating Plating,
    string? Function,
    SourcePosition Position)
{
    public bool IsRoundHole => Path.Length == 1;
}

/// <summary>All features of one drill file.</summary>
/// <param name="File">File name as given to the reader.</param>
/// <param name="Features">Features in file order.</param>
/// <param name="FirstLayer">Uppermost copper layer (1 = top) the holes reach, or 0 when the file does not say.</param>
/// <param name="LastLayer">Lowest copper layer the holes reach, or 0 when the file does not say.</param>
public sealed record DrillArtwork(
    string File,
    IReadOnlyList<DrilledFeature> Features,
    int FirstLayer,
    int LastLayer);

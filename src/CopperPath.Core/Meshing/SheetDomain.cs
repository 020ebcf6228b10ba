using CopperPath.Geometry;

namespace CopperPath.Meshing;

/// <summary>A ring drawn inside (or across) the copper whose interior is a part of its own: a terminal, a pad.</summary>
/// <param name="Ring">Counter-clockwise ring in nanometres.</param>
/// <param name="Marker">Positive identity, carried to the triangles inside the ring and copper.</param>
public sealed record MarkedRing(PointNm[] Ring, int Marker)
{
    /// <summary>What lies inside is one potential, so that nothing depends on how regular its triangles are.</summary>
    public bool IsHeld { get; init; }
}

/// <summary>
/// What is to be meshed on one layer: the copper of one net with drilled holes already cut out, and marked rings
/// whose outlines become mesh edges.
/// </summary>
/// <param name="Copper">Pieces of copper; they do not overlap.</param>
/// <param name="MarkedRings">Rings that may cross the copper's edges and each other; where they overlap the lowest marker wins.</param>
public sealed record SheetDomain(IReadOnlyList<PolygonNm> Copper, IReadOnlyList<MarkedRing> MarkedRings)
{
    /// <summary>For each marker, whether its rings are held.</summary>
    public bool[] HeldMarkers()
    {
        bool[] isHeld = new bool[MarkedRings.Select(ring => ring.Marker).DefaultIfEmpty().Max() + 1];
        foreach (MarkedRing ring in MarkedRings)
        {
            isHeld[ring.Marker] |= ring.IsHeld;
        }

        return isHeld;
    }
}

/// <summary>How fine and how regular a mesh is to be.</summary>
/// <param name="MaximumEdgeM">Longest edge anywhere, in metres.</param>
/// <param name="MinimumAngleDegrees">Least angle asked of every triangle not forced by the artwork; 20 to 30 is safe.</param>
/// <param name="EdgesAcrossNeck">
/// Least number of elements across a local feature width; short boundary edges grade the mesh around them.
/// </param>
public sealed record MeshQuality(double MaximumEdgeM, double MinimumAngleDegrees = 25, int EdgesAcrossNeck = 3)
{
    /// <summary>
    /// Farthest an outline may move when its vertices are thinned out before meshing, metres; 0 keeps every vertex
    /// the welding grid keeps. The area beside every stretch of outline is kept. The default is a sixth of the
    /// finest etching tolerance (common practice, no source).
    /// </summary>
    public double SimplificationToleranceM { get; init; } = 5e-6;

    /// <summary>
    /// Pitch of the grid the artwork is rounded to, metres, a whole number of nanometres: outlines closer than this
    /// are one outline.
    /// </summary>
    public double WeldingGridM { get; init; } = 0.25e-6;

    /// <summary>Refinement never makes an edge shorter than this, metres; the artwork's own edges may be shorter.</summary>
    public double MinimumEdgeM { get; init; } = 1e-6;

    /// <summary>Growth of the target edge per unit of distance from a fine place, 0.1 (slow) to 1 (abrupt).</summary>
    public double Grading { get; init; } = 0.3;

    /// <summary>
    /// Target edge at a re-entrant corner of the copper as a fraction of the target there otherwise: the current
    /// density is singular at such corners.
    /// </summary>
    public double ReentrantCornerFraction { get; init; } = 0.35;

    /// <summary>Least number of edges around a marked ring.</summary>
    public int EdgesAroundRing { get; init; } = 12;

    /// <summary>Most vertices a mesh may have.</summary>
    public int VertexLimit { get; init; } = 4_000_000;
}

using CopperPath.Geometry;

namespace CopperPath.Meshing;

/// <summary>A ring drawn inside (or across) the copper whose interior is a part of its own: a terminal, a pad.</summary>
/// <param name="Ring">Counter-clockwise ring in nanometres.</param>
/// <param name="Marker">Positive identity, carried to the triangles inside the ring and copper.</param>
public sealed record MarkedRing(PointNm[] Ring, int Marker);

/// <summary>
/// What is to be meshed on one layer: the copper of one net with drilled holes already cut out, and marked rings
/// whose outlines become mesh edges.
/// </summary>
/// <param name="Copper">Pieces of copper; they do not overlap.</param>
/// <param name="MarkedRings">Rings that may cross the copper's edges and each other; where they overlap the lowest marker wins.</param>
public sealed record SheetDomain(IReadOnlyList<PolygonNm> Copper, IReadOnlyList<MarkedRing> MarkedRings);

/// <summary>How fine and how regular a mesh is to be.</summary>
/// <param name="MaximumEdgeM">Longest edge anywhere, in metres.</param>
/// <param name="MinimumAngleDegrees">Least angle asked of every triangle not forced by the artwork; 20 to 30 is safe.</param>
/// <param name="EdgesAcrossNeck">
/// Least number of elements across a local feature width; short boundary edges grade the mesh around them.
/// </param>
public sealed record MeshQuality(double MaximumEdgeM, double MinimumAngleDegrees = 25, int EdgesAcrossNeck = 3);

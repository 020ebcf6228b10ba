using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>An edge of an arrangement, running from A to B.</summary>
/// <param name="A">Lexicographically smaller end, nanometres.</param>
/// <param name="B">Lexicographically larger end, nanometres.</param>
/// <param name="LeftInputs">Bit k is set when input k covers the places just left of the edge, seen from A to B.</param>
/// <param name="RightInputs">The same for the places just right of the edge.</param>
public readonly record struct ArrangedEdge(PointNm A, PointNm B, ulong LeftInputs, ulong RightInputs);

/// <summary>
/// Several inputs laid over each other: edges that meet at their ends only, never cross and never overlap, sorted by
/// A and then B. Edges across which no input begins or ends are left out.
/// </summary>
public sealed record PlanarArrangement(IReadOnlyList<ArrangedEdge> Edges);

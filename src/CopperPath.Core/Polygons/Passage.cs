namespace CopperPath.Polygons;

/// <summary>A hot pixel on the way of a segment.</summary>
/// <param name="Segment">Number of the segment.</param>
/// <param name="Vertex">Number of the pixel.</param>
/// <param name="Change">
/// What changes across the segment between this pixel and the next one it meets: 1 when only its left side is covered,
/// -1 when only its right side is, else 0.
/// </param>
internal readonly record struct Passage(int Segment, int Vertex, int Change);

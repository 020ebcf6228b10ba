namespace CopperPath.Artwork;

/// <summary>How finely curves are flattened and how much one layer may hold.</summary>
/// <param name="ChordToleranceNm">Largest distance between a curve and its chords, nanometres, positive.</param>
/// <param name="MaximumObjects">Most objects after blocks and step-and-repeat are expanded.</param>
/// <param name="MaximumVertices">Most vertices of all objects, shared rings counted at each use.</param>
internal sealed record PaintLimits(double ChordToleranceNm, long MaximumObjects, long MaximumVertices);

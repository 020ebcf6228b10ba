namespace CopperPath.Reading.Drill;

/// <summary>Outcome of <see cref="DrillFormatInference.Infer"/>.</summary>
/// <param name="Chosen">The format that explains the holes, or null when none does clearly.</param>
/// <param name="Evidence">All distinct decodings, best first.</param>
public sealed record DrillInference(DrillFormat? Chosen, IReadOnlyList<CandidateScore> Evidence);

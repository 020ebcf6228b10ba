using CopperPath.Circuit;
using CopperPath.Electrical;

namespace CopperPath.Judging;

/// <summary>A reviewed net with its solution and the cuts made across its current.</summary>
/// <param name="Bound">Brief and copper.</param>
/// <param name="Conduction">The solution.</param>
/// <param name="Sections">Cuts across the current on all its layers; empty when not solved.</param>
public sealed record SolvedNet(BoundNet Bound, ConductionResult Conduction, IReadOnlyList<Section> Sections);

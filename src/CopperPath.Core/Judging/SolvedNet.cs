using CopperPath.Circuit;
using CopperPath.Electrical;

namespace CopperPath.Judging;

/// <summary>A reviewed net with its solution and the cuts made across its current.</summary>
/// <param name="Bound">Brief and copper.</param>
/// <param name="Conduction">The solution.</param>
/// <param name="Sections">Cuts across the current on all its layers; empty when not solved.</param>
public sealed record SolvedNet(BoundNet Bound, ConductionResult Conduction, IReadOnlyList<Section> Sections)
{
    /// <summary>Cuts through all copper that carries the current together, over layers and plated holes.</summary>
    public JointSections Joint { get; init; } = JointSections.None;

    /// <summary>How long the neck of a section is, metres.</summary>
    public double NeckLengthM(Section section) =>
        NeckLength.Of(Conduction.Sheets.First(sheet => sheet.Layer == section.Layer), section);
}

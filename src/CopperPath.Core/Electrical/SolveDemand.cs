using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>How well a net is to be solved.</summary>
/// <param name="StartingMesh">The mesh refinement starts from; coarse is well, the error bounds say where it is too coarse.</param>
public sealed record SolveDemand(MeshQuality StartingMesh)
{
    /// <summary>Refinement ends when the bounds of loss and drop of the drawn shape lie this close, as a share of them; 0 to 1.</summary>
    public double Accuracy { get; init; } = 0.01;

    /// <summary>How far outlines may be thinned out per unit of accuracy, metres: 5 um at 1 %.</summary>
    private const double StrayPerAccuracyM = 5e-4;

    /// <summary>The starting mesh, whose outlines follow the drawn ones the closer the more accuracy is asked for.</summary>
    public MeshQuality FittingMesh => StartingMesh with
    {
        SimplificationToleranceM = Math.Min(StartingMesh.SimplificationToleranceM, StrayPerAccuracyM * Accuracy),
    };

    /// <summary>No mesh is refined beyond about this many unknowns; what was reached is then reported as it is.</summary>
    public int UnknownLimit { get; init; } = 4_000_000;

    /// <summary>Most meshes tried, the first one counted.</summary>
    public int RoundLimit { get; init; } = 12;

    /// <summary>A starting mesh as coarse as the outlines allow.</summary>
    public static SolveDemand Default { get; } = new(new MeshQuality(MaximumEdgeM: 5e-3, MinimumAngleDegrees: 20, EdgesAcrossNeck: 1)
    {
        EdgesAroundRing = 5,
        Grading = 1,
        ReentrantCornerFraction = 1,
    });
}

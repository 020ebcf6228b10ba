using CopperPath.Electrical;

namespace CopperPath.Judging;

/// <summary>A chart relation with copper and plating at their least and currents at their most.</summary>
/// <param name="Rating">The relation on that build.</param>
/// <param name="CurrentScale">Factor on all currents.</param>
internal sealed record ChartAtWorst(ConductorRating Rating, double CurrentScale)
{
    public Section Of(Section section) => section with { CurrentA = section.CurrentA * CurrentScale };

    public BarrelCurrent Of(BarrelCurrent barrel) => barrel with { CurrentA = barrel.CurrentA * CurrentScale };

    public JointSection Of(JointSection section) => section.Scaled(CurrentScale);

    /// <summary>A section of <see cref="Of(Section)"/> with the current that is stated.</summary>
    public Section AsStated(Section section) => section with { CurrentA = section.CurrentA / CurrentScale };

    /// <summary>Likewise.</summary>
    public JointSection AsStated(JointSection section) => section.Scaled(1 / CurrentScale);
}

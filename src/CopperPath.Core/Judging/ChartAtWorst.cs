using CopperPath.Electrical;

namespace CopperPath.Judging;

/// <summary>A chart relation with copper and plating at their least and currents at their most.</summary>
/// <param name="Rating">The relation on that build.</param>
/// <param name="CurrentScale">Factor on all currents.</param>
internal sealed record ChartAtWorst(ConductorRating Rating, double CurrentScale)
{
    public Section Of(Section section) => section with { CurrentA = section.CurrentA * CurrentScale };

    public BarrelCurrent Of(BarrelCurrent barrel) => barrel with { CurrentA = barrel.CurrentA * CurrentScale };
}

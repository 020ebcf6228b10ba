using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.PowerPath;
using CopperPath.Thermal;

namespace CopperPath;

/// <summary>Everything a review found: what the report and the pictures are made from.</summary>
/// <param name="Brief">What was asked; null when the brief could not be read.</param>
/// <param name="Board">The rebuilt board; null when it could not be opened.</param>
/// <param name="Stack">Thicknesses and resistivity used; null when nothing was solved.</param>
/// <param name="Nets">Reviewed nets with their fields.</param>
/// <param name="Findings">Findings, in report order.</param>
/// <param name="Verdict">Answer to the review as a whole.</param>
/// <param name="Diagnostics">Remarks of all stages about the input.</param>
/// <param name="StatedDefaults">Values that were not given and had to be assumed, one line each.</param>
/// <param name="Timings">Stages and the seconds they took; for the person at the terminal only, never in a written file.</param>
public sealed record Review(
    ReviewBrief? Brief,
    Board? Board,
    Stackup? Stack,
    IReadOnlyList<SolvedNet> Nets,
    IReadOnlyList<Finding> Findings,
    Verdict Verdict,
    IReadOnlyList<Diagnostic> Diagnostics,
    IReadOnlyList<string> StatedDefaults,
    IReadOnlyList<StageTiming> Timings)
{
    /// <summary>The brief as it stood on disk; empty when it could not be read.</summary>
    public ReadOnlyMemory<byte> BriefBytes { get; init; }

    /// <summary>The board's temperatures with all heat; null when nothing was solved.</summary>
    public TemperatureField? Heat => Own?.All;

    /// <summary>What the copper's own current adds to them; null when nothing was solved.</summary>
    public OwnRise? Own { get; init; }

    /// <summary>The board through the load profile of the brief; null without one.</summary>
    public LoadedHeat? InTime { get; init; }

    /// <summary>Heat of parts that was counted; null when nothing was solved.</summary>
    public PartsHeat? PartsHeat { get; init; }

    /// <summary>The results over the range of what is not known; null when nothing was solved.</summary>
    public ToleranceStudy? Tolerance { get; init; }

    /// <summary>Sizes of the reviewed switch nodes and what they cost.</summary>
    public IReadOnlyList<SwitchNodeFacts> SwitchNodes { get; init; } = [];

    /// <summary>Hot loops of the phases the copper shows, best first within each converter.</summary>
    public IReadOnlyList<HotLoopFacts> HotLoops { get; init; } = [];
}

/// <summary>Time a stage took, seconds.</summary>
public sealed record StageTiming(string Stage, double Seconds);

/// <summary>What a folder of fabrication files holds.</summary>
/// <param name="Board">The rebuilt board.</param>
/// <param name="Path">The power path its copper suggests; null without copper.</param>
/// <param name="Timings">Stages and the seconds they took.</param>
public sealed record Survey(Board Board, PathProposal? Path, IReadOnlyList<StageTiming> Timings);

using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>Solved nets and limits -> findings, worst first within each rule, rules in catalogue order.</summary>
public static class Judge
{
    /// <param name="brief">Limits.</param>
    /// <param name="nets">All reviewed nets.</param>
    /// <param name="stack">Thicknesses.</param>
    /// <param name="heat">What the copper's own current adds to the board's temperatures.</param>
    /// <param name="partsHeat">Heat of parts, and whether it is known.</param>
    /// <param name="study">The range of what is not known.</param>
    /// <param name="ofSlots">What <see cref="Slots"/> found, which needs no temperatures.</param>
    /// <param name="board">The board, to be taken through faults; null to take those as if no heat left the copper.</param>
    /// <param name="inTime">The board through the load profile, which is then judged by its peaks; null without one.</param>
    /// <param name="faulted">Entries that faults name, each solved alone; null where none is part of a sum.</param>
    public static IReadOnlyList<Finding> Findings(
        ReviewBrief brief, IReadOnlyList<SolvedNet> nets, Stackup stack, OwnRise heat, PartsHeat partsHeat, ToleranceStudy study,
        IReadOnlyList<Finding> ofSlots, BoardHeat? board = null, LoadedHeat? inTime = null, IReadOnlyList<SolvedNet>? faulted = null)
    {
        IReadOnlyList<ConductorRating> charts = ConductorRating.Judging(brief.Limits.JudgeBy, stack);
        List<Finding> findings = [];
        List<SolvedNet> solved = [.. nets.Where(net => net.Conduction.HasFields)];
        findings.AddRange(nets.Where(net => !net.Conduction.HasFields).Select(Unsolved));
        if (solved.Count > 0)
        {
            string during = inTime is null ? "" : " in the course of the load profile";
            findings.AddRange((HeatRule.Unsettled(heat) ?? inTime?.Failure) is { } reason ? [HeatRule.Unsolved(solved[0], heat.Result, reason)]
                : [.. TemperatureRule.Judge(brief, inTime?.Most ?? heat.All, partsHeat, study, during), .. HeatRule.Judge(solved, inTime?.MostOwn ?? heat, stack, study, during)]);
        }

        findings = [.. SamePlace.Fold(
            findings, [.. solved.SelectMany(net => NeckRule.Judge(net, charts, heat, study)), .. solved.SelectMany(net => BarrelRule.Judge(net, charts, heat, study))])];
        findings.AddRange(FaultRule.Judge(brief, [.. (faulted ?? solved).Where(net => net.Conduction.HasFields)], stack, study, board));
        findings.AddRange(solved.SelectMany(net => DropRule.Judge(net, study)));
        findings.AddRange(SwingAreaRule.Judge(nets, brief.Limits.SwitchNodeAreaRatio));
        findings.AddRange(ofSlots);
        findings.AddRange(solved.SelectMany(net => AccuracyRule.Judge(net, charts, heat)));
        findings.AddRange(OneConductorRule.Judge(nets));
        findings.AddRange(nets.SelectMany(TwoNamesRule.Judge));
        return findings;
    }

    /// <summary>Slots in the return planes.</summary>
    public static IReadOnlyList<Finding> Slots(ReviewBrief brief, IReadOnlyList<SolvedNet> nets, NetList board) =>
        brief.Limits.PlaneSlotLengthM is { } slotM ? [.. ReturnSlotRule.Judge(nets, board, slotM)] : [];

    /// <summary>The verdict; input that was not understood and may touch copper, or that nobody confirmed, can never end in a pass.</summary>
    public static Verdict VerdictOf(IReadOnlyList<Finding> findings, bool inputIsUncertain) =>
        inputIsUncertain || findings.Any(finding => finding.Level == FindingLevel.Undecided && finding.Waiver is null) ? Verdict.CouldNotJudge
        : findings.Any(finding => finding.Counts) ? Verdict.BeyondLimits
        : findings.Any(finding => finding.IsOnlyAsStated) ? Verdict.WithinAsStated
        : Verdict.WithinLimits;

    private static Finding Unsolved(SolvedNet net)
    {
        (int layer, PointNm at) = DropRule.PlaceOf(net.Bound.Terminals[0]);
        bool isOpen = net.Conduction.Status is ConductionStatus.NotConnected or ConductionStatus.ContactOffCopper;
        return new Finding(
            RuleCatalogue.Open.Id, isOpen ? FindingLevel.BeyondLimit : FindingLevel.Undecided, net.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y), null,
            isOpen ? $"No current can flow: {net.Conduction.Explanation}." : $"This net was not solved: {net.Conduction.Explanation}.",
            isOpen ? "Check the terminals in the brief and the copper between them."
                : net.Conduction.Status == ConductionStatus.ContactsTouch ? "Make the contacts of the terminals smaller in the brief, or place them apart."
                : "Please report this board; the answer for this net is unknown.",
            "connectivity of the drawn copper and its plated holes");
    }
}

namespace CopperPath.Judging;

/// <summary>What the rules about the power path say, and the facts about it that a report lists.</summary>
public sealed record PathJudgement(
    IReadOnlyList<Finding> Findings, IReadOnlyList<SwitchNodeFacts> SwitchNodes, IReadOnlyList<HotLoopFacts> HotLoops)
{
    public static PathJudgement Of(PathContext path) =>
        new(PathRules.Judge(path), SwitchNodeFacts.Of(path), HotLoopFacts.Of(path));
}

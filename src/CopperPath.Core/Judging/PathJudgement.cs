namespace CopperPath.Judging;

/// <summary>What the rules about the power path say, and the facts about it that they and a report rest on.</summary>
public sealed record PathJudgement(
    IReadOnlyList<Finding> Findings, IReadOnlyList<SwitchNodeFacts> SwitchNodes, IReadOnlyList<HotLoopFacts> HotLoops)
{
    /// <param name="path">The path with all reviewed nets; those that could not be solved are left out.</param>
    public static PathJudgement Of(PathContext path)
    {
        PathContext context = path with { Nets = [.. path.Nets.Where(net => net.Conduction.HasFields)] };
        IReadOnlyList<SwitchNodeFacts> switchNodes = SwitchNodeFacts.Of(context);
        IReadOnlyList<HotLoopFacts> hotLoops = HotLoopFacts.Of(context);
        return new PathJudgement(PathRules.Judge(context, switchNodes, hotLoops), switchNodes, hotLoops);
    }
}

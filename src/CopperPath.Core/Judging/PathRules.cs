namespace CopperPath.Judging;

/// <summary>The rules that speak of the power path as a whole, in catalogue order.</summary>
internal static class PathRules
{
    public static IReadOnlyList<Finding> Judge(
        PathContext path, IReadOnlyList<SwitchNodeFacts> switchNodes, IReadOnlyList<HotLoopFacts> hotLoops) =>
    [
        .. PhaseCountRule.Judge(path),
        .. PinRatingRule.Judge(path),
        .. SharingRule.JudgeContacts(path),
        .. SharingRule.JudgePhases(path),
        .. SharingRule.JudgeVias(path),
        .. SwitchNodeRule.Judge(path, switchNodes),
        .. SensitiveDistanceRule.Judge(path),
        .. HotLoopRule.Judge(path, hotLoops),
        .. CapacitorRule.Judge(path),
        .. BankDropRule.Judge(path),
    ];
}

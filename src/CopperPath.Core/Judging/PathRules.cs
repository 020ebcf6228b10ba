using CopperPath.Electrical;

namespace CopperPath.Judging;

/// <summary>The rules that speak of the power path as a whole, in catalogue order.</summary>
public static class PathRules
{
    public static IReadOnlyList<Finding> Judge(PathContext path)
    {
        List<SolvedNet> solved = [.. path.Nets.Where(net => net.Conduction.Status == ConductionStatus.Solved)];
        PathContext context = path with { Nets = solved };
        return
        [
            .. PhaseCountRule.Judge(context),
            .. PinRatingRule.Judge(context),
            .. SharingRule.JudgeContacts(context),
            .. SharingRule.JudgePhases(context),
            .. SharingRule.JudgeVias(context),
            .. SwitchNodeRule.Judge(context),
            .. SensitiveDistanceRule.Judge(context),
            .. HotLoopRule.Judge(context),
            .. CapacitorRule.Judge(context),
            .. BankDropRule.Judge(context),
        ];
    }
}

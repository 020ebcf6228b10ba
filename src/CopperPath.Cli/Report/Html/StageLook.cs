using CopperPath.Brief;

namespace CopperPath.Cli.Report.Html;

/// <summary>How the report calls a stage of the power path and the class of style that gives it its accent.</summary>
internal static class StageLook
{
    /// <summary>Stages in the order of the current, connector to load and back.</summary>
    public static IReadOnlyList<NetRole> Order { get; } =
        [NetRole.Feed, NetRole.Input, NetRole.SwitchNode, NetRole.Output, NetRole.Return, NetRole.Other];

    public static string NameOf(NetRole role) => role switch
    {
        NetRole.Feed => "Feed",
        NetRole.Input => "Input",
        NetRole.SwitchNode => "Switch node",
        NetRole.Output => "Output",
        NetRole.Return => "Return",
        _ => "Other",
    };

    public static string ClassOf(NetRole role) => role switch
    {
        NetRole.Feed => "stage-feed",
        NetRole.Input => "stage-input",
        NetRole.SwitchNode => "stage-switch",
        NetRole.Output => "stage-output",
        NetRole.Return => "stage-return",
        _ => "stage-other",
    };
}

namespace CopperPath.Cli.Overlays.Stages;

/// <summary>What people call the kinds of stages.</summary>
internal static class StageWords
{
    public static string Of(StageKind kind) => kind switch
    {
        StageKind.Feed => "feed",
        StageKind.Input => "input",
        StageKind.SwitchNode => "switch node",
        StageKind.Output => "output",
        StageKind.Return => "return",
        _ => "other",
    };
}

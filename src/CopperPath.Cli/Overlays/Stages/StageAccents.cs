using SkiaSharp;

namespace CopperPath.Cli.Overlays.Stages;

/// <summary>One accent for each kind of stage, the same as the page's style names <c>--feed</c> to <c>--other</c>.</summary>
internal static class StageAccents
{
    public static SKColor Of(StageKind kind, OverlayTheme theme) => new(0xFF000000 | (theme == OverlayTheme.Dark ? OnDark(kind) : OnLight(kind)));

    private static uint OnLight(StageKind kind) => kind switch
    {
        StageKind.Feed => 0x7A5C00,
        StageKind.Input => 0x6B4E9B,
        StageKind.SwitchNode => 0x9A3575,
        StageKind.Output => 0x0F6B4F,
        StageKind.Return => 0x2A5A9A,
        _ => 0x5F5A52,
    };

    private static uint OnDark(StageKind kind) => kind switch
    {
        StageKind.Feed => 0xDCB94A,
        StageKind.Input => 0xBDA4EA,
        StageKind.SwitchNode => 0xEE93C9,
        StageKind.Output => 0x79D2AB,
        StageKind.Return => 0x8FBCF5,
        _ => 0xB3AEA5,
    };
}

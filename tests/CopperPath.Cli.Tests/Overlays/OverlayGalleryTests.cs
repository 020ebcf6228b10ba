using CopperPath.Cli.Overlays;
using CopperPath.Geometry;
using SkiaSharp;

namespace CopperPath.Cli.Tests.Overlays;

/// <summary>
/// A gallery of scenes, each checked for the promises of the layout. Set COPPERPATH_GALLERY to a folder to have the
/// pictures written there for looking at.
/// </summary>
public sealed class OverlayGalleryTests
{
    public static TheoryData<string> Names => [.. Gallery.Keys];

    private static Dictionary<string, Func<OverlayScene>> Gallery { get; } = new()
    {
        ["few-call-outs"] = () => SyntheticScenes.LShape(widthPx: 2400) with { CallOuts = SyntheticScenes.CallOuts(7) },
        ["dozens-of-call-outs"] = () => SyntheticScenes.LShape() with { CallOuts = SyntheticScenes.CallOuts(48) },
        ["dark-from-below"] = () => SyntheticScenes.LShape(theme: OverlayTheme.Dark, seenFromBelow: true) with
        {
            CallOuts = SyntheticScenes.CallOuts(12),
            Scale = new ScaleSpec("Current density", "A/mm²", ScaleKind.Logarithmic),
        },
        ["bare"] = () => SyntheticScenes.LShape() with { Vias = [], Sheets = [], QuietCopper = [], Outline = [] },
        ["narrow"] = () => SyntheticScenes.LShape(widthPx: 640) with { CallOuts = SyntheticScenes.CallOuts(9) },
        ["tall"] = () => SyntheticScenes.LShape() with
        {
            ViewNm = new BoxNm(0, 0, 28_000_000, 50_000_000),
            CallOuts = SyntheticScenes.CallOuts(20),
            Scale = new ScaleSpec("Current density", "A/mm²", ScaleKind.Linear, Top: 20),
        },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void PicturesDecodeAtTheSizeOfTheirLayout(string name)
    {
        OverlayScene scene = Gallery[name]();
        byte[] png = OverlayPainter.PaintPng(scene);
        Keep(name, png);

        using SKBitmap decoded = SKBitmap.Decode(png);
        decoded.Width.ShouldBe(scene.WidthPx);
        decoded.Height.ShouldBe(OverlayPainter.Arrange(scene).Size.Height);
    }

    private static void Keep(string name, byte[] png)
    {
        if (Environment.GetEnvironmentVariable("COPPERPATH_GALLERY") is string folder)
        {
            Directory.CreateDirectory(folder);
            File.WriteAllBytes(Path.Combine(folder, name + ".png"), png);
        }
    }
}

using System.Diagnostics;
using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Tests.Overlays;

public sealed class OverlaySpeedTests
{
    /// <summary>246 000 triangles at 2400 pixels: the aim is well under a second, the check allows a slow machine more.</summary>
    [Fact]
    [Trait("Category", "Soak")]
    public void LargeMeshIsPaintedInAboutASecond()
    {
        Assert.SkipWhen(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is null, "set COPPERPATH_SOAK to measure");
        OverlayScene scene = SyntheticScenes.LShape(cellsPerMm: 9, widthPx: 2400) with { CallOuts = SyntheticScenes.CallOuts(40) };
        OverlayPainter.PaintPng(scene);
        TimeSpan fastest = TimeSpan.MaxValue;
        for (int run = 0; run < 3; run++)
        {
            long start = Stopwatch.GetTimestamp();
            OverlayPainter.PaintPng(scene);
            TimeSpan taken = Stopwatch.GetElapsedTime(start);
            fastest = taken < fastest ? taken : fastest;
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{scene.Sheets[0].Mesh.TriangleCount} triangles: {fastest.TotalMilliseconds:F0} ms");
        fastest.ShouldBeLessThan(TimeSpan.FromSeconds(3));
    }
}

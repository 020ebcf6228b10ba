using CopperPath.Cli.Overlays;
using SkiaSharp;

namespace CopperPath.Cli.Tests.Overlays;

public sealed class ColourMapTests
{
    public static TheoryData<string> Names => ["viridis", "inner inferno"];

    /// <summary>Colours 0 and 255 of the published viridis table, 32 and 223 of inferno's; places beyond take the end.</summary>
    [Theory]
    [InlineData("viridis", "#440154", "#FDE725")]
    [InlineData("inner inferno", "#210C4A", "#F9C932")]
    public void EndsAreThoseOfThePublishedTables(string name, string first, string last)
    {
        MapNamed(name).At(0).ShouldBe(SKColor.Parse(first));
        MapNamed(name).At(1).ShouldBe(SKColor.Parse(last));
        MapNamed(name).At(-3).ShouldBe(SKColor.Parse(first));
        MapNamed(name).At(7).ShouldBe(SKColor.Parse(last));
    }

    /// <summary>CIE 1976 lightness L* (CIE 15) of sRGB colours (IEC 61966-2-1) must rise along the whole map.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void LightnessRisesAllAlong(string name)
    {
        double[] lightness = [.. Enumerable.Range(0, 65).Select(i => Lightness(MapNamed(name).At(i / 64.0)))];

        for (int i = 1; i < lightness.Length; i++)
        {
            lightness[i].ShouldBeGreaterThan(lightness[i - 1]);
        }
    }

    private static ColourMap MapNamed(string name) =>
        new[] { ColourMap.Viridis, ColourMap.InnerInferno }.Single(m => m.Name == name);

    private static double Lightness(SKColor c)
    {
        double y = (0.2126 * Linear(c.Red)) + (0.7152 * Linear(c.Green)) + (0.0722 * Linear(c.Blue));
        return y > 216.0 / 24389 ? (116 * Math.Cbrt(y)) - 16 : y * 24389 / 27;
    }

    private static double Linear(byte level)
    {
        double v = level / 255.0;
        return v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
    }
}

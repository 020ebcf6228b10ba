using System.Text.RegularExpressions;
using CopperPath.Cli.Overlays;
using CopperPath.Cli.Overlays.Stages;
using CopperPath.Core.Tests;
using CopperPath.Geometry;
using SkiaSharp;

namespace CopperPath.Cli.Tests.Overlays.Stages;

public sealed class StagePictureTests
{
    private static readonly StageKind[] s_kinds = [StageKind.Feed, StageKind.Input, StageKind.SwitchNode, StageKind.Output, StageKind.Return];

    /// <summary>Five stages side by side over one plane, one of them smaller than any plate.</summary>
    private static StageScene Scene(OverlayTheme theme = OverlayTheme.Light, int widthPx = 1800, bool fromBelow = false) => new(
        new TitleBlock("Board", "A", "all layers", "Power path by stages", ["allowed rise 30 K"], "CopperPath", "0123"),
        new BoxNm(0, 0, 100_000_000, 60_000_000),
        [Box(2, 2, 98, 58)],
        [Box(4, 4, 6, 6)],
        [.. s_kinds.Select(kind => new StageInWords(kind, StageWords.Of(kind), "9.00 A, 2.60 mV, 18.0 K of 30.0 K"))],
        [
            new(StageKind.Feed, "Feed", "9.00 A, 2.60 mV, 18.0 K of 30.0 K", [Box(5, 40, 35, 55)]),
            new(StageKind.Input, "Input", "9.00 A, 2.60 mV, 18.0 K of 30.0 K", [Box(40, 40, 70, 55)]),
            new(StageKind.SwitchNode, "Switch node 1", "22.5 A, 2.60 mV, 18.0 K of 30.0 K", [Box(45, 25, 49, 29)]),
            new(StageKind.Output, "Output", "90.0 A, 2.60 mV, 18.0 K of 30.0 K", [Box(5, 5, 95, 20)]),
            new(StageKind.Return, "Return", "99.0 A, 2.60 mV, 18.0 K of 30.0 K", [Box(3, 3, 97, 57)]),
        ],
        [new StagePartMark("L1", new BoxNm(48_000_000, 18_000_000, 56_000_000, 26_000_000))],
        [
            new(StageKind.Feed, new PointNm(8_000_000, 50_000_000), 9, "9.00 A"),
            new(StageKind.Feed, new PointNm(32_000_000, 50_000_000), -9, "9.00 A"),
            new(StageKind.Feed, new PointNm(32_100_000, 50_000_000), -1, "1.00 A"),
        ],
        fromBelow, theme, widthPx);

    [Theory]
    [InlineData(900)]
    [InlineData(1800)]
    public void EveryStageHasAPlateInsideTheViewAndNoTwoOverlap(int widthPx)
    {
        StageLayout layout = StagePainter.Arrange(Scene(widthPx: widthPx));

        layout.Labels.Count.ShouldBe(5);
        foreach (StageLabel label in layout.Labels)
        {
            layout.View.Contains(label.Plate).ShouldBeTrue(label.Lines[0]);
            layout.Labels.Where(other => other != label).ShouldAllBe(other => !other.Plate.IntersectsWith(label.Plate));
            layout.Ends.ShouldAllBe(end => !label.Plate.Contains(end.At));
        }
    }

    [Fact]
    public void APlateLiesOnItsOwnCopperOrALeaderLeadsThere()
    {
        StageScene scene = Scene();
        StageLayout layout = StagePainter.Arrange(scene);

        foreach (StageLabel label in layout.Labels.Where(label => scene.Fills[label.Fill].Kind != StageKind.Return))
        {
            BoxNm copper = scene.Fills[label.Fill].Copper[0].Bounds;
            SKPoint low = layout.Transform.Map(new PointNm(copper.MinX, copper.MinY));
            SKPoint high = layout.Transform.Map(new PointNm(copper.MaxX, copper.MaxY));
            SKRect box = new(low.X, high.Y, high.X, low.Y);

            (label.Anchor is { } anchor ? SKRect.Inflate(box, 4, 4).Contains(anchor) : box.IntersectsWith(label.Plate)).ShouldBeTrue(label.Lines[0]);
        }

        // 4 x 4 mm are far smaller than a plate: it must not be hidden.
        layout.Labels.Single(label => label.Lines[0] == "Switch node 1").Anchor.ShouldNotBeNull();
        layout.Labels.Single(label => label.Lines[0] == "Output").Anchor.ShouldBeNull();
    }

    [Fact]
    public void MarksThatWouldLieOnEachOtherAreOneAndTheLargestIsIt()
    {
        StageLayout layout = StagePainter.Arrange(Scene());

        layout.Ends.Select(end => end.End.CurrentA).ShouldBe([9, -9]);
        layout.Ends.ShouldAllBe(end => end.TextAt != null);
    }

    [Fact]
    public void AxesCountMillimetresOfTheFiles()
    {
        StageLayout layout = StagePainter.Arrange(Scene());

        AxisTick tick = layout.Ticks.Single(tick => tick.IsAcross && tick.Text == "40");
        tick.At.X.ShouldBe((float)layout.Transform.XPx(40e6), 0.01f);
        layout.Ticks.Single(tick => !tick.IsAcross && tick.Text == "40").At.Y.ShouldBe((float)layout.Transform.YPx(40e6), 0.01f);
    }

    [Fact]
    public void FromBelowLeftAndRightAreExchanged()
    {
        StageLayout above = StagePainter.Arrange(Scene());
        StageLayout below = StagePainter.Arrange(Scene(fromBelow: true));

        (above.Ends[0].At.X - above.View.Left).ShouldBe(below.View.Right - below.Ends[0].At.X, 0.1f);
    }

    [Fact]
    public void TheSameSceneGivesTheSameBytes()
    {
        foreach (PictureFormat format in Enum.GetValues<PictureFormat>())
        {
            StagePainter.Paint(Scene(widthPx: 900), format).ShouldBe(StagePainter.Paint(Scene(widthPx: 900), format));
        }
    }

    /// <summary>The picture's copper is tinted: the accent over the board's ground, within what smoothing leaves.</summary>
    [Fact]
    public void AStageIsSeenInItsAccent()
    {
        StageScene scene = Scene();
        StageLayout layout = StagePainter.Arrange(scene);
        using SKBitmap bitmap = SKBitmap.Decode(StagePainter.Paint(scene, PictureFormat.Png));
        SKPoint place = layout.Transform.Map(new PointNm(15_000_000, 8_000_000));
        SKColor seen = bitmap.GetPixel((int)place.X, (int)place.Y);
        SKColor accent = StageAccents.Of(StageKind.Output, OverlayTheme.Light);

        seen.Green.ShouldBeGreaterThan(seen.Red);
        ((int)seen.Green).ShouldBeGreaterThan(accent.Green);
        bitmap.GetPixel((int)layout.Transform.XPx(1e6), (int)layout.Transform.YPx(1e6)).ShouldBe(OverlayPalette.Of(OverlayTheme.Light).Panel);
    }

    /// <summary>WCAG 2.1, success criterion 1.4.11: marks of meaning have at least 3 : 1 against what is beside them.</summary>
    [Theory]
    [InlineData(OverlayTheme.Light)]
    [InlineData(OverlayTheme.Dark)]
    public void AccentsStandOutFromTheirGround(OverlayTheme theme)
    {
        OverlayPalette palette = OverlayPalette.Of(theme);
        foreach (StageKind kind in Enum.GetValues<StageKind>())
        {
            foreach (SKColor ground in new[] { palette.Page, palette.Panel, palette.Board, palette.Plate })
            {
                Contrast(StageAccents.Of(kind, theme), ground).ShouldBeGreaterThan(3, $"{kind} {theme}");
            }
        }
    }

    /// <summary>Accents stand in the page's style as well; they must be the same.</summary>
    [Fact]
    public void AccentsAreThoseOfThePage()
    {
        string style = File.ReadAllText(Path.Combine(SharedData.ProjectRoot, "src", "CopperPath.Cli", "Report", "Html", "Assets", "report.css"));
        (StageKind Kind, string Name)[] names =
        [
            (StageKind.Feed, "feed"), (StageKind.Input, "input"), (StageKind.SwitchNode, "switch"), (StageKind.Output, "output"), (StageKind.Return, "return"), (StageKind.Other, "other"),
        ];
        foreach ((StageKind kind, string name) in names)
        {
            string[] colours = [.. Regex.Matches(style, $"--{name}: #([0-9a-f]{{6}});").Select(match => match.Groups[1].Value)];

            colours.Distinct().ShouldBe([Hex(StageAccents.Of(kind, OverlayTheme.Light)), Hex(StageAccents.Of(kind, OverlayTheme.Dark))], name);
        }
    }

    private static string Hex(SKColor colour) => $"{colour.Red:x2}{colour.Green:x2}{colour.Blue:x2}";

    /// <summary>WCAG 2.1, relative luminance and contrast ratio.</summary>
    private static double Contrast(SKColor a, SKColor b)
    {
        double la = Luminance(a), lb = Luminance(b);
        return (Math.Max(la, lb) + 0.05) / (Math.Min(la, lb) + 0.05);
    }

    private static double Luminance(SKColor colour) => (0.2126 * Linear(colour.Red)) + (0.7152 * Linear(colour.Green)) + (0.0722 * Linear(colour.Blue));

    private static double Linear(byte value)
    {
        double share = value / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }

    private static PolygonNm Box(double x0, double y0, double x1, double y1) =>
        new(new BoxNm((long)(x0 * 1e6), (long)(y0 * 1e6), (long)(x1 * 1e6), (long)(y1 * 1e6)).ToRing(), []);
}

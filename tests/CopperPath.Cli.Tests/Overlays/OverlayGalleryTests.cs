using System.Collections.Concurrent;
using System.Text;
using System.Xml.Linq;
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
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Names => [.. Gallery.Keys];

    private static ConcurrentDictionary<string, Lazy<OverlayLayout>> Layouts { get; } = new();

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
        ["partly-solved"] = () => SyntheticScenes.PartlySolved() with { CallOuts = SyntheticScenes.CallOuts(3) },
        ["temperature"] = () => SyntheticScenes.Temperature() with { CallOuts = SyntheticScenes.CallOuts(5) },
        ["temperature-dark"] = () => SyntheticScenes.Temperature() with { CallOuts = SyntheticScenes.CallOuts(48), Theme = OverlayTheme.Dark },
        ["part-of-a-board"] = () => SyntheticScenes.Temperature() with
        {
            ViewNm = new BoxNm(10_000_000, 5_000_000, 40_000_000, 30_000_000),
            WholeNm = new BoxNm(0, 0, 70_000_000, 50_000_000),
            CallOuts = SyntheticScenes.CallOuts(9),
        },
        ["narrow"] = () => SyntheticScenes.LShape(widthPx: 640) with { CallOuts = SyntheticScenes.CallOuts(9) },
        ["tall"] = () => SyntheticScenes.LShape() with
        {
            ViewNm = new BoxNm(0, 0, 28_000_000, 50_000_000),
            CallOuts = SyntheticScenes.CallOuts(20),
            Scale = new ScaleSpec("Current density", "A/mm²", ScaleKind.Linear, Top: 20),
        },
        ["tall-and-narrow"] = () => SyntheticScenes.LShape(widthPx: 600) with
        {
            ViewNm = new BoxNm(0, 0, 28_000_000, 50_000_000),
            CallOuts = SyntheticScenes.CallOuts(8),
        },
        ["long-words"] = () => SyntheticScenes.LShape(widthPx: 1200) with
        {
            Title = new TitleBlock(
                new string('W', 150), new string('8', 80), new string('m', 120), string.Concat(Enumerable.Repeat("Net ", 60)),
                [.. Enumerable.Repeat("a condition that is told at length", 12)], "copperpath 0.1.0", new string('a', 300)),
            CallOuts = [new CallOut(9999, SyntheticScenes.At(30, 10), CallOutRank.Fail, new string('x', 400))],
        },
        ["slot-and-via-group"] = () => SyntheticScenes.LShape() with
        {
            CallOuts =
            [
                .. SyntheticScenes.CallOuts(6),
                new CallOut(7, SyntheticScenes.At(15, 30), CallOutRank.Fail, "A slot 20 mm long") { ExtentNm = new BoxNm(14_000_000, 20_000_000, 16_000_000, 40_000_000) },
                new CallOut(8, SyntheticScenes.At(56, 8), CallOutRank.Fail, "A field of holes") { ExtentNm = new BoxNm(56_000_000, 8_000_000, 62_400_000, 18_000_000) },
            ],
        },
        ["crowded"] = () => SyntheticScenes.LShape(cellsPerMm: 1) with
        {
            CallOuts = [.. SyntheticScenes.CallOuts(100), .. SyntheticScenes.CallOuts(40).Select(c => c with
            {
                Number = c.Number + 100, SpotNm = SyntheticScenes.At(30, 20),
            })],
        },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void PicturesDecodeAtTheSizeOfTheirLayoutAndAreTheSameEveryTime(string name)
    {
        OverlayScene scene = Gallery[name]();
        byte[][] pngs = new byte[2][];
        Parallel.For(0, pngs.Length, i => pngs[i] = OverlayPainter.PaintPng(Gallery[name]()));
        Keep(name + ".png", pngs[0]);

        pngs[1].AsSpan().SequenceEqual(pngs[0]).ShouldBeTrue();
        using SKBitmap decoded = SKBitmap.Decode(pngs[0]);
        decoded.Width.ShouldBe(scene.WidthPx);
        decoded.Height.ShouldBe(LayoutOf(name).Size.Height);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryLineOfTextLiesWithinThePictureAndOnNoOtherLine(string name)
    {
        OverlayLayout layout = LayoutOf(name);
        SKRect picture = SKRect.Create(layout.Size.Width, layout.Size.Height);

        layout.Texts.ShouldAllBe(t => picture.Contains(t.Bounds));
        PairsThatMeet([.. layout.Texts.Select(GlyphBox)]).ShouldBe(0);
    }

    [Fact]
    public void LegendTextKeepsToItsColumn()
    {
        OverlayLayout layout = LayoutOf("partly-solved");
        float right = layout.Frame.Right;

        layout.Keys.Select(k => k.Kind).ShouldContain(KeyKind.UnsolvedCopper);
        layout.Texts.ShouldAllBe(t => t.Bounds.Right <= right + 0.5f);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void NumberPlatesOverlapNeitherEachOtherNorAnyRing(string name)
    {
        OverlayLayout layout = LayoutOf(name);

        layout.CallOuts.ShouldAllBe(c => c.Plate != null && layout.Frame.Contains(c.Plate.Box));
        PairsThatMeet([.. layout.CallOuts.Select(c => c.Plate!.Box)]).ShouldBe(0);
        foreach (PlacedCallOut ringed in layout.CallOuts)
        {
            layout.CallOuts.ShouldAllBe(c => DistanceTo(c.Plate!.Box, ringed.Spot) > ringed.RingRadiusPx);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void NumberPlatesKeepClearOfAllThatCallOutsAreAboutAndOfViasOverTheirLimit(string name)
    {
        OverlayLayout layout = LayoutOf(name);
        SKRect[] plates = [.. layout.CallOuts.Select(c => c.Plate!.Box)];

        foreach (SKRect extent in layout.CallOuts.Select(c => c.Extent).OfType<SKRect>())
        {
            plates.ShouldAllBe(plate => !plate.IntersectsWith(extent));
        }

        foreach (PlacedVia via in layout.Vias.Where(via => via.Via.IsOverLimit))
        {
            plates.ShouldAllBe(plate => !plate.IntersectsWith(via.Box));
        }
    }

    [Fact]
    public void WhatACallOutIsAboutIsBoxedWhereItReachesBeyondTheRing()
    {
        OverlayLayout layout = LayoutOf("slot-and-via-group");
        ViewTransform transform = layout.Transform;

        layout.CallOuts.Count(c => c.Extent is not null).ShouldBe(2);
        SKRect slot = layout.CallOuts.Single(c => c.CallOut.Number == 7).Extent!.Value;
        slot.Contains(transform.Map(SyntheticScenes.At(14, 20))).ShouldBeTrue();
        slot.Contains(transform.Map(SyntheticScenes.At(16, 40))).ShouldBeTrue();
    }

    /// <summary>No line without its value, no value on anything that is pointed at or points.</summary>
    [Theory]
    [InlineData("temperature")]
    [InlineData("temperature-dark")]
    [InlineData("part-of-a-board")]
    public void EveryContourCarriesItsValueClearOfCallOuts(string name)
    {
        OverlayLayout layout = LayoutOf(name);

        layout.Contours.Count.ShouldBeGreaterThan(1);
        foreach (PlacedContour contour in layout.Contours)
        {
            contour.Labels.Count.ShouldBeInRange(1, 2);
            foreach (SKRect label in contour.Labels)
            {
                layout.View.Contains(label).ShouldBeTrue();
                layout.CallOuts.ShouldAllBe(c => !c.Covers(label));
                layout.Vias.Where(via => via.Via.IsOverLimit).ShouldAllBe(via => !via.Box.IntersectsWith(label));
                contour.Line.Min(point => SKPoint.Distance(point, new SKPoint(label.MidX, label.MidY))).ShouldBeLessThan(1);
                layout.Texts.Single(text => label.Contains(text.Bounds.MidX, text.Bounds.MidY)).Text
                    .ShouldBe(FormattableString.Invariant($"{contour.Level:0} °C"));
            }
        }
    }

    [Fact]
    public void ContoursStandARoundStepApartThatTheLegendStates()
    {
        OverlayLayout layout = LayoutOf("temperature");

        double[] levels = [.. layout.Contours.Select(contour => contour.Level).Distinct().Order()];
        levels.ShouldAllBe(level => Math.Abs(Math.IEEERemainder(level, 10)) < 1e-9);
        layout.Texts.ShouldContain(text => text.Text.Contains("lines every 10 °C", StringComparison.Ordinal));
    }

    [Fact]
    public void APartOfABoardComesWithAMapOfTheWhole()
    {
        OverlayLayout layout = LayoutOf("part-of-a-board");
        KeyMap map = layout.KeyMap!;

        // 30 mm of 70 mm wide, 25 mm of 50 mm high, from 10 mm right of and 20 mm below the board's upper left corner.
        (map.Shown.Width / map.Box.Width).ShouldBe(30f / 70, 1e-3f);
        (map.Shown.Height / map.Box.Height).ShouldBe(25f / 50, 1e-3f);
        ((map.Shown.Left - map.Box.Left) / map.Box.Width).ShouldBe(10f / 70, 1e-3f);
        ((map.Shown.Top - map.Box.Top) / map.Box.Height).ShouldBe(20f / 50, 1e-3f);
        LayoutOf("temperature").KeyMap.ShouldBeNull();
    }

    /// <summary>The bar's pixels over its length are the view's pixels over its millimetres, whole board or part.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void TheLengthBarHasTheScaleOfTheView(string name)
    {
        OverlayLayout layout = LayoutOf(name);
        double viewMm = Gallery[name]().ViewNm.WidthNm / 1e6;

        (layout.ScaleBar.Bar.Width / layout.ScaleBar.LengthMm).ShouldBe(layout.View.Width / viewMm, 1e-3 * layout.View.Width / viewMm);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void LeadersRunFromRingToPlate(string name)
    {
        foreach (PlacedCallOut c in LayoutOf(name).CallOuts)
        {
            if (c.Extent is { } extent)
            {
                DistanceTo(extent, c.LeaderStart).ShouldBe(0, 0.01f);
                DistanceTo(SKRect.Inflate(extent, -0.01f, -0.01f), c.LeaderStart).ShouldBeGreaterThan(0);
            }
            else
            {
                SKPoint.Distance(c.LeaderStart, c.Spot).ShouldBe(c.RingRadiusPx, 0.01f);
            }

            DistanceTo(c.Plate!.Box, c.LeaderEnd).ShouldBe(0, 0.01f);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryCallOutIsListedWithItsNumberOnce(string name)
    {
        OverlayScene scene = Gallery[name]();
        OverlayLayout layout = LayoutOf(name);

        layout.ListedPlates.Where(p => p.Number is not null).Select(p => p.Number!.Value)
            .ShouldBe(scene.CallOuts.Select(c => c.Number));
        layout.CallOuts.Select(c => c.CallOut)
            .ShouldBe(scene.CallOuts.Where(c => scene.ViewNm.Contains(c.SpotNm)), ignoreOrder: true);
    }

    [Fact]
    public void SvgAndPdfHoldTheirTextAsText()
    {
        OverlayScene scene = Gallery["few-call-outs"]();
        byte[] svg = OverlayPainter.PaintSvg(scene);
        byte[] pdf = OverlayPainter.PaintPdf(scene);
        Keep("few-call-outs.svg", svg);
        Keep("few-call-outs.pdf", pdf);

        XDocument.Load(new MemoryStream(svg)).Descendants(Svg + "text").Select(t => t.Value.Trim())
            .ShouldContain("Output rail +1V0 \u00B7 Current density");
        Encoding.Latin1.GetString(pdf).Contains("/ToUnicode", StringComparison.Ordinal).ShouldBeTrue();
        OverlayPainter.PaintSvg(scene).AsSpan().SequenceEqual(svg).ShouldBeTrue();
        OverlayPainter.PaintPdf(scene).AsSpan().SequenceEqual(pdf).ShouldBeTrue();
    }

    private static OverlayLayout LayoutOf(string name) => Layouts.GetOrAdd(
        name, n => new Lazy<OverlayLayout>(() => OverlayPainter.Arrange(Gallery[n]()))).Value;

    // Ascent and descent leave room for accents; lines may share that room, their letters may not meet.
    private static SKRect GlyphBox(TextRun text) => SKRect.Create(
        text.Bounds.Left, text.Baseline.Y - (0.75f * text.SizePx), text.Bounds.Width, 0.95f * text.SizePx);

    private static int PairsThatMeet(SKRect[] boxes)
    {
        int count = 0;
        for (int i = 0; i < boxes.Length; i++)
        {
            for (int j = i + 1; j < boxes.Length; j++)
            {
                count += boxes[i].IntersectsWith(boxes[j]) ? 1 : 0;
            }
        }

        return count;
    }

    private static float DistanceTo(SKRect box, SKPoint p)
    {
        float dx = Math.Max(0, Math.Max(box.Left - p.X, p.X - box.Right));
        float dy = Math.Max(0, Math.Max(box.Top - p.Y, p.Y - box.Bottom));
        return MathF.Sqrt((dx * dx) + (dy * dy));
    }

    private static void Keep(string fileName, byte[] picture)
    {
        if (Environment.GetEnvironmentVariable("COPPERPATH_GALLERY") is string folder)
        {
            Directory.CreateDirectory(folder);
            File.WriteAllBytes(Path.Combine(folder, fileName), picture);
        }
    }
}

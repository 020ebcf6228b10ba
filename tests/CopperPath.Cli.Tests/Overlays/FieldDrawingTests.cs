using CopperPath.Cli.Overlays;
using CopperPath.Geometry;
using CopperPath.Meshing;
using SkiaSharp;

namespace CopperPath.Cli.Tests.Overlays;

public sealed class FieldDrawingTests
{
    private const int PixelsPerMm = 40;
    private const int SidePx = 10 * PixelsPerMm;

    private static readonly BoxNm View = new(0, 0, 10_000_000, 10_000_000);

    /// <summary>Linear interpolation reproduces a linear field exactly, up to single precision, in every pixel.</summary>
    [Fact]
    public void LinearFieldIsSampledExactlyAndWithoutGaps()
    {
        SheetMesh mesh = SkewedSquare();
        double[] values = [.. mesh.XM.Zip(mesh.YM, (x, y) => (2000 * x) - (700 * y) + 5)];
        FieldRaster raster = Sample(new ShadedSheet(mesh, values, FieldShading.PerVertex));

        for (int y = 0; y < SidePx; y++)
        {
            for (int x = 0; x < SidePx; x++)
            {
                double xMm = (x + 0.5) / PixelsPerMm;
                double yMm = 10 - ((y + 0.5) / PixelsPerMm);
                double expected = (2 * xMm) - (0.7 * yMm) + 5;
                if (Math.Abs(raster[x, y] - expected) > 1e-4)
                {
                    Assert.Fail($"pixel {x}, {y}: {raster[x, y]} in place of {expected}");
                }
            }
        }
    }

    [Fact]
    public void EveryPixelShowsTheTriangleItsCentreLiesIn()
    {
        SheetMesh mesh = SkewedSquare();
        FieldRaster raster = Sample(new ShadedSheet(mesh, [.. Enumerable.Range(0, mesh.TriangleCount).Select(t => (double)t)]));

        for (int y = 0; y < SidePx; y++)
        {
            for (int x = 0; x < SidePx; x++)
            {
                Holds(mesh, (int)raster[x, y], (x + 0.5) / PixelsPerMm, 10 - ((y + 0.5) / PixelsPerMm)).ShouldBeTrue();
            }
        }
    }

    [Fact]
    public void ContourOfALinearFieldIsAStraightLineAcrossTheCopper()
    {
        SheetMesh mesh = SkewedSquare();
        using SKPath line = ContourLines.Of(mesh, [.. mesh.XM.Select(x => x * 1e3)], 4.3, Transform());

        line.Points.ShouldAllBe(p => Math.Abs(p.X - (4.3f * PixelsPerMm)) < 0.01f);
        line.Points.Chunk(2).Sum(ends => SKPoint.Distance(ends[0], ends[1])).ShouldBe(SidePx, 0.01f);
    }

    [Fact]
    public void SeenFromBelowSwapsLeftAndRightOnly()
    {
        ViewTransform below = new(View, 100, 50, PixelsPerMm / 1e6, seenFromBelow: true);

        below.Map(new PointNm(0, 0)).ShouldBe(new SKPoint(100 + SidePx, 50 + SidePx));
        below.Map(new PointNm(10_000_000, 10_000_000)).ShouldBe(new SKPoint(100, 50));
    }

    [Theory]
    [InlineData(OverlayTheme.Light, false)]
    [InlineData(OverlayTheme.Dark, true)]
    public void CopperIsPaintedInTheShadeTheLegendGives(OverlayTheme theme, bool seenFromBelow)
    {
        OverlayScene scene = SyntheticScenes.LShape(1, 800, theme, seenFromBelow);
        ShadedSheet sheet = scene.Sheets[0];
        scene = scene with
        {
            Sheets = [sheet with { Values = [.. sheet.Values.Select(_ => 30.0)] }],
            Scale = new ScaleSpec("Current density", "A/mm²", ScaleKind.Linear, Top: 60, Bottom: 0),
        };
        using SKBitmap picture = SKBitmap.Decode(OverlayPainter.PaintPng(scene));
        SKPoint inside = OverlayPainter.Arrange(scene).Transform.Map(SyntheticScenes.At(15, 35));
        SKColor drawn = picture.GetPixel((int)inside.X, (int)inside.Y);
        SKColor expected = ColourMap.Viridis.At(0.5);

        ((int)drawn.Red).ShouldBeInRange(expected.Red - 1, expected.Red + 1);
        ((int)drawn.Green).ShouldBeInRange(expected.Green - 1, expected.Green + 1);
        ((int)drawn.Blue).ShouldBeInRange(expected.Blue - 1, expected.Blue + 1);
    }

    [Fact]
    public void TypefaceHasTheSignsOfTheTrade()
    {
        const string Signs = "µμΩΔρθ°²³·×±≤≥≈−–—…½√∞→←↑↓äöüßéèñçåøŁ";

        PictureFonts.Of(12, isStrong: false).ContainsGlyphs(Signs).ShouldBeTrue();
        PictureFonts.Of(12, isStrong: true).ContainsGlyphs(Signs).ShouldBeTrue();
    }

    [Theory]
    [InlineData("one two three", 60)]
    [InlineData("3f0c9a5e77d1b2846a0e5c1f94b7d3a2e8615f70c9ab4d2e1f3a5b6c7d8e9f01", 60)]
    [InlineData("  spaces   at  odd  places ", 35)]
    public void WrappedLinesFitAndLoseNoLetter(string text, float widthPx)
    {
        IReadOnlyList<string> lines = PictureFonts.Wrap(text, 12, false, widthPx);

        lines.ShouldAllBe(l => PictureFonts.WidthPx(l, 12, false) <= widthPx);
        string.Concat(lines).Replace(" ", "", StringComparison.Ordinal)
            .ShouldBe(text.Replace(" ", "", StringComparison.Ordinal));
    }

    private static ViewTransform Transform() => new(View, 0, 0, PixelsPerMm / 1e6, seenFromBelow: false);

    private static FieldRaster Sample(ShadedSheet sheet) =>
        FieldRaster.Sample([sheet], Transform(), SKRectI.Create(SidePx, SidePx));

    /// <summary>A 10 mm square whose inner vertices are pushed about, so that no edge runs along the pixels.</summary>
    private static SheetMesh SkewedSquare()
    {
        SheetMesh mesh = SyntheticScenes.GridMesh(0, 0, 10, 10, 2, (_, _) => true);
        for (int v = 0; v < mesh.VertexCount; v++)
        {
            bool isInner = mesh.XM[v] is > 1e-4 and < 9.9e-3 && mesh.YM[v] is > 1e-4 and < 9.9e-3;
            mesh.XM[v] += isInner ? 1.1e-4 * Math.Sin(7.0 * v) : 0;
            mesh.YM[v] += isInner ? 1.1e-4 * Math.Cos(5.0 * v) : 0;
        }

        return mesh;
    }

    private static bool Holds(SheetMesh mesh, int triangle, double xMm, double yMm)
    {
        for (int k = 0; k < 3; k++)
        {
            int a = mesh.Triangles[(3 * triangle) + k];
            int b = mesh.Triangles[(3 * triangle) + ((k + 1) % 3)];
            double cross = ((mesh.XM[b] - mesh.XM[a]) * ((yMm * 1e-3) - mesh.YM[a]))
                - ((mesh.YM[b] - mesh.YM[a]) * ((xMm * 1e-3) - mesh.XM[a]));
            if (cross < -1e-15)
            {
                return false;
            }
        }

        return true;
    }
}

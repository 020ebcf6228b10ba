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
    public void ContourOfALinearFieldIsAStraightLineAcrossTheBoard()
    {
        LevelField field = LevelField.Sample(View, 370_000, 1, (xNm, _) => xNm / 1e6);
        SKPoint[] line = ContourLines.Of(field, 4.3, Transform()).ShouldHaveSingleItem();

        line.ShouldAllBe(p => Math.Abs(p.X - (4.3f * PixelsPerMm)) < 0.01f);
        Length(line).ShouldBe(SidePx, 0.01f);
    }

    /// <summary>A cone's contour is a circle: closed, of length 2 pi r; corners cut off the chords take less than 0.2 % here.</summary>
    [Fact]
    public void ContourOfAConeIsOneClosedCircle()
    {
        LevelField field = LevelField.Sample(View, 100_000, 1, (xNm, yNm) => Math.Sqrt(Math.Pow((xNm / 1e6) - 5, 2) + Math.Pow((yNm / 1e6) - 5, 2)));
        SKPoint[] line = ContourLines.Of(field, 3, Transform()).ShouldHaveSingleItem();

        line[^1].ShouldBe(line[0]);
        Length(line).ShouldBe(2 * MathF.PI * 3 * PixelsPerMm, 0.002f * 2 * MathF.PI * 3 * PixelsPerMm);
        line.ShouldAllBe(p => Math.Abs(SKPoint.Distance(p, new SKPoint(SidePx / 2, SidePx / 2)) - (3 * PixelsPerMm)) < 0.1f);
    }

    /// <summary>On the saddle x y the level 0.5 has two branches that do not meet, and none passes where values are missing.</summary>
    [Fact]
    public void ContoursOfASaddleDoNotMeetAndStopWhereValuesAreMissing()
    {
        LevelField field = LevelField.Sample(View, 250_000, 1, (xNm, yNm) => ((xNm / 1e6) - 5) * ((yNm / 1e6) - 5));
        ContourLines.Of(field, 0.5, Transform()).Count.ShouldBe(2);

        LevelField half = LevelField.Sample(View, 250_000, 1, (xNm, yNm) => xNm > 5e6 ? double.NaN : ((xNm / 1e6) - 5) * ((yNm / 1e6) - 5));
        SKPoint[] line = ContourLines.Of(half, 0.5, Transform()).ShouldHaveSingleItem();
        line.ShouldAllBe(p => p.X <= SidePx / 2);
    }

    /// <summary>A mean of neighbours in the parts 1, 2, 1 leaves what is linear as it is and halves a single step's slope at most.</summary>
    [Fact]
    public void SmoothingLeavesALinearFieldAsItIsWithinItsEdges()
    {
        LevelField field = LevelField.Sample(View, 1_000_000, 1, (xNm, yNm) => (2 * xNm / 1e6) - (yNm / 1e6));
        LevelField smooth = field.Smoothed();

        for (int row = 1; row < field.Rows - 1; row++)
        {
            for (int column = 1; column < field.Columns - 1; column++)
            {
                smooth.Values[(row * field.Columns) + column].ShouldBe(field.Values[(row * field.Columns) + column], 1e-9);
            }
        }
    }

    /// <summary>The table that stands in for a logarithm per pixel is within one shade of 1024 of the scale itself.</summary>
    [Theory]
    [InlineData(ScaleKind.Logarithmic, 0.5, 50)]
    [InlineData(ScaleKind.Logarithmic, 1e-14, 1e-12)]
    [InlineData(ScaleKind.Linear, 0, 5)]
    [InlineData(ScaleKind.Linear, -5, 5)]
    [InlineData(ScaleKind.Linear, 60, 100)]
    public void LookedUpShadesAreThoseOfTheScale(ScaleKind kind, double bottom, double top)
    {
        ValueScale scale = ValueScale.For(new ScaleSpec("", "", kind, top, bottom), []);
        ShadeTable table = new(scale, ColourMap.Viridis);
        for (int i = -10; i <= 1010; i++)
        {
            double value = kind == ScaleKind.Linear ? bottom + ((top - bottom) * i / 1000) : bottom * Math.Pow(top / bottom, i / 1000.0);
            SKColor looked = Unpacked(table.Of((float)value));
            SKColor exact = ColourMap.Viridis.At(scale.PlaceOf(value));
            Math.Abs(looked.Red - exact.Red).ShouldBeLessThanOrEqualTo(2);
            Math.Abs(looked.Green - exact.Green).ShouldBeLessThanOrEqualTo(2);
            Math.Abs(looked.Blue - exact.Blue).ShouldBeLessThanOrEqualTo(2);
        }
    }

    [Fact]
    public void WhatLiesAboveTheScaleIsHatchedAndNothingElse()
    {
        SheetMesh mesh = SkewedSquare();
        double[] values = [.. mesh.XM.Select(xM => xM > 5e-3 ? 30.0 : 10.0)];
        ValueScale scale = ValueScale.For(new ScaleSpec("", "", ScaleKind.Linear, 20, 0), []);
        using SKImage image = Sample(new ShadedSheet(mesh, values, FieldShading.PerVertex)).Coloured(scale, ColourMap.Viridis, 2);
        using SKBitmap bitmap = SKBitmap.FromImage(image);

        SharesOf(bitmap, SidePx * 3 / 4, ColourMap.Viridis.At(0)).ShouldBe(1.0 / 3, 0.02);
        SharesOf(bitmap, SidePx * 3 / 4, ColourMap.Viridis.At(1)).ShouldBe(2.0 / 3, 0.02);
        SharesOf(bitmap, SidePx / 4, ColourMap.Viridis.At(0)).ShouldBe(0);
    }

    private static double SharesOf(SKBitmap bitmap, int column, SKColor colour) =>
        Enumerable.Range(0, bitmap.Height).Count(y => bitmap.GetPixel(column, y) == colour) / (double)bitmap.Height;

    private static SKColor Unpacked(uint pixel) => new((byte)pixel, (byte)(pixel >> 8), (byte)(pixel >> 16));

    private static float Length(SKPoint[] line) => line.Zip(line.Skip(1)).Sum(piece => SKPoint.Distance(piece.First, piece.Second));

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

    /// <summary>SI Brochure, 9th edition, 5.4.3: a number and its unit belong together, with a space between.</summary>
    [Theory]
    [InlineData("a rise of 97.1 K by the fit", "97.1 K")]
    [InlineData("1610 mm² of copper", "1610 mm²")]
    [InlineData("above: 0.06 %; lines", "0.06 %;")]
    [InlineData("carry more than the 3.10 A, all", "3.10 A,")]
    public void ANumberAndItsUnitStayOnOneLine(string text, string together)
    {
        for (float widthPx = 60; widthPx < 200; widthPx += 3)
        {
            PictureFonts.Wrap(text, 12, false, widthPx).ShouldContain(line => line.Contains(together, StringComparison.Ordinal));
        }
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

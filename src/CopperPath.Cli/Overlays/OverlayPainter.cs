using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// Review pictures of one layer: copper shaded by a solved field, via currents, numbered call-outs, legend and title.
/// The same scene gives the same bytes on every run and any number of threads.
/// </summary>
public static partial class OverlayPainter
{
    private const float A3LandscapeWidthPt = 1190.55f;


    /// <summary>Where everything will stand, without drawing.</summary>
    public static OverlayLayout Arrange(OverlayScene scene) => OverlayArranger.Arrange(scene, Summary(scene));

    /// <summary>The ending that files of a format take.</summary>
    public static string EndingOf(PictureFormat format) => format switch
    {
        PictureFormat.Svg => "svg",
        PictureFormat.Pdf => "pdf",
        _ => "png",
    };

    /// <summary>The picture in a format.</summary>
    /// <exception cref="ArgumentException">The scene breaks its own contract: see <see cref="OverlayScene"/>.</exception>
    public static byte[] Paint(OverlayScene scene, PictureFormat format) => format switch
    {
        PictureFormat.Svg => PaintSvg(scene),
        PictureFormat.Pdf => PaintPdf(scene),
        _ => PaintPng(scene),
    };

    /// <summary>The picture as PNG.</summary>
    /// <exception cref="ArgumentException">The scene breaks its own contract: see <see cref="OverlayScene"/>.</exception>
    public static byte[] PaintPng(OverlayScene scene)
    {
        FieldSummary field = Summary(scene);
        OverlayLayout layout = OverlayArranger.Arrange(scene, field);
        return PngOf(layout.Size, canvas => new ScenePainter(canvas, scene, field, layout).Paint());
    }

    /// <summary>The picture as SVG: copper and marks as curves, text as text, the field as an embedded raster.</summary>
    /// <exception cref="ArgumentException">The scene breaks its own contract: see <see cref="OverlayScene"/>.</exception>
    public static byte[] PaintSvg(OverlayScene scene)
    {
        FieldSummary field = Summary(scene);
        OverlayLayout layout = OverlayArranger.Arrange(scene, field);
        return SvgOf(layout.Size, canvas => new ScenePainter(canvas, scene, field, layout).Paint());
    }

    /// <summary>The picture as one PDF page as wide as an A3 sheet, the typeface embedded.</summary>
    /// <exception cref="ArgumentException">The scene breaks its own contract: see <see cref="OverlayScene"/>.</exception>
    public static byte[] PaintPdf(OverlayScene scene)
    {
        FieldSummary field = Summary(scene);
        OverlayLayout layout = OverlayArranger.Arrange(scene, field);
        return PdfOf(layout.Size, canvas => new ScenePainter(canvas, scene, field, layout).Paint());
    }

    internal static byte[] PngOf(SKSizeI size, Action<SKCanvas> paint)
    {
        using SKBitmap bitmap = new(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            paint(canvas);
        }

        return PngFile.Of(bitmap);
    }

    internal static byte[] SvgOf(SKSizeI size, Action<SKCanvas> paint)
    {
        using MemoryStream stream = new();
        using (SKCanvas canvas = SKSvgCanvas.Create(SKRect.Create(size.Width, size.Height), stream))
        {
            paint(canvas);
        }

        return Encoding.UTF8.GetBytes(Portable(Encoding.UTF8.GetString(stream.ToArray()), size));
    }

    internal static byte[] PdfOf(SKSizeI size, Action<SKCanvas> paint)
    {
        float pointsPerPx = A3LandscapeWidthPt / size.Width;
        using MemoryStream stream = new();
        using (SKDocument document = SKDocument.CreatePdf(stream))
        {
            SKCanvas canvas = document.BeginPage(A3LandscapeWidthPt, size.Height * pointsPerPx);
            canvas.Scale(pointsPerPx);
            paint(canvas);
            document.EndPage();
            document.Close();
        }

        return stream.ToArray();
    }

    // A reader without the typeface gets a plain one of the right weight; a page may show the picture at any size; and
    // clip names, which count on from picture to picture within one run, are counted anew.
    internal static string Portable(string svg, SKSizeI size)
    {
        string viewBox = string.Create(CultureInfo.InvariantCulture, $"<svg viewBox=\"0 0 {size.Width} {size.Height}\" ");
        List<string> clips = [];
        return ClipName()
            .Replace(svg, match =>
            {
                if (!clips.Contains(match.Value))
                {
                    clips.Add(match.Value);
                }

                return string.Create(CultureInfo.InvariantCulture, $"clip{clips.IndexOf(match.Value)}");
            })
            .Replace("font-family=\"Inter Semi Bold, Inter\"", "font-family=\"Inter, sans-serif\"", StringComparison.Ordinal)
            .Replace("font-family=\"Inter\"", "font-family=\"Inter, sans-serif\"", StringComparison.Ordinal)
            .Replace("font-weight=\"500\"", "font-weight=\"600\"", StringComparison.Ordinal)
            .Replace("<svg ", viewBox, StringComparison.Ordinal);
    }

    [GeneratedRegex("(?<=id=\"|url\\(#)cl_[0-9a-f]+")]
    private static partial Regex ClipName();

    private static FieldSummary Summary(OverlayScene scene)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(scene.WidthPx, OverlayScene.MinimumWidthPx);
        if (scene.ViewNm.WidthNm <= 0 || scene.ViewNm.HeightNm <= 0)
        {
            throw new ArgumentException("the view has no extent", nameof(scene));
        }

        foreach (ShadedSheet sheet in scene.Sheets)
        {
            int expected = sheet.Shading switch
            {
                FieldShading.PerVertex => sheet.Mesh.VertexCount,
                FieldShading.PerCorner => sheet.Mesh.Triangles.Length,
                _ => sheet.Mesh.TriangleCount,
            };
            if (sheet.Values.Length != expected)
            {
                throw new ArgumentException($"a sheet has {sheet.Values.Length} values for {expected} places", nameof(scene));
            }
        }

        return FieldSummary.Of(scene);
    }
}

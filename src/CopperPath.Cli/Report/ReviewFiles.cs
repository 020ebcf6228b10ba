using CopperPath.Cli.Commands;
using CopperPath.Cli.Overlays;
using CopperPath.Cli.Report.Html;
using CopperPath.Cli.Report.Tables;

namespace CopperPath.Cli.Report;

/// <summary>Everything <c>check</c> writes, complete in memory; made side by side, the order always the same.</summary>
internal static class ReviewFiles
{
    /// <param name="review">A review with at least one net.</param>
    /// <param name="stretches">Its stretches.</param>
    /// <param name="brief">The brief it was made from.</param>
    /// <param name="options">How the pictures are wanted.</param>
    public static IReadOnlyList<OutputFile> Of(
        Review review, IReadOnlyList<Stretch> stretches, BriefSource brief, CheckOptions options)
    {
        IReadOnlyList<LayerField> fields = LayerField.Of(review);
        ReviewScales scales = new(fields);
        IReadOnlyList<FieldGrid> grids = [];
        IReadOnlyList<(string Name, OverlayScene Scene)> pictures = [];
        IReadOnlyList<OutputFile> waveforms = [];
        Parallel.Invoke(
            () => grids = FieldGrid.Of(review),
            () => pictures = ReviewPictures.Of(review, brief, fields, scales, options.PictureTheme, options.PictureWidthPx),
            () => waveforms = WaveformFiles.Of(review));

        // The largest come first, so that no core is left alone with one at the end.
        Func<IReadOnlyList<OutputFile>>[] jobs =
        [
            () => [HtmlReport.Of(review, stretches, brief, grids, scales, waveforms)],
            () => [new OutputFile("results.json", ResultsJson.Of(review, stretches, grids))],
            () => [new OutputFile("findings.sarif", FindingsSarif.Of(review))],
            () => ReviewTables.Of(review, stretches),
            .. pictures.SelectMany(picture => options.PictureFormats.Select<PictureFormat, Func<IReadOnlyList<OutputFile>>>(
                format => () => [Painted(picture.Name, picture.Scene, format)])),
            () => waveforms,
        ];
        return [.. OnAllCores.Of(jobs, job => job()).SelectMany(files => files)];
    }

    private static OutputFile Painted(string name, OverlayScene scene, PictureFormat format)
    {
        (string ending, byte[] content) = OverlayPainter.Paint(scene, format);
        return new OutputFile($"{name}.{ending}", content);
    }
}

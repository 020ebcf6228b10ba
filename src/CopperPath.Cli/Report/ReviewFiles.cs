using System.Collections.Concurrent;
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
    /// <param name="formats">What each picture is written as.</param>
    public static IReadOnlyList<OutputFile> Of(
        Review review, IReadOnlyList<Stretch> stretches, BriefSource brief, IReadOnlyList<PictureFormat> formats)
    {
        IReadOnlyList<FieldGrid> grids = [];
        IReadOnlyList<(string Name, OverlayScene Scene)> pictures = [];
        IReadOnlyList<OutputFile> waveforms = [];
        Parallel.Invoke(
            () => grids = FieldGrid.Of(review),
            () => pictures = ReviewPictures.Of(review),
            () => waveforms = WaveformFiles.Of(review));

        // The largest come first, so that no core is left alone with one at the end.
        Func<IReadOnlyList<OutputFile>>[] jobs =
        [
            () => [HtmlReport.Of(review, stretches, brief, grids, waveforms)],
            () => [new OutputFile("results.json", ResultsJson.Of(review, stretches, grids))],
            () => [new OutputFile("findings.sarif", FindingsSarif.Of(review))],
            () => ReviewTables.Of(review),
            .. pictures.SelectMany(picture => formats.Select<PictureFormat, Func<IReadOnlyList<OutputFile>>>(
                format => () => [Painted(picture.Name, picture.Scene, format)])),
            () => waveforms,
        ];
        IReadOnlyList<OutputFile>[] made = new IReadOnlyList<OutputFile>[jobs.Length];
        Parallel.ForEach(
            Partitioner.Create(Enumerable.Range(0, jobs.Length), EnumerablePartitionerOptions.NoBuffering),
            job => made[job] = jobs[job]());
        return [.. made.SelectMany(files => files)];
    }

    private static OutputFile Painted(string name, OverlayScene scene, PictureFormat format)
    {
        (string ending, byte[] content) = OverlayPainter.Paint(scene, format);
        return new OutputFile($"{name}.{ending}", content);
    }
}

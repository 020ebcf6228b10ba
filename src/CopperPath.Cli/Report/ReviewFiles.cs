using CopperPath.Cli.Commands;
using CopperPath.Cli.Overlays;
using CopperPath.Cli.Overlays.Stages;
using CopperPath.Cli.Report.Html;
using CopperPath.Cli.Report.Tables;

namespace CopperPath.Cli.Report;

/// <summary>Everything <c>check</c> writes, complete in memory; made side by side, the order always the same.</summary>
internal static class ReviewFiles
{
    /// <summary>What all pictures together are called where not even their scenes could be laid out.</summary>
    public const string Pictures = "pictures";

    /// <summary>Results first: what only shows them needs the most memory and is made when they are safe.</summary>
    /// <param name="review">A review with at least one net.</param>
    /// <param name="stretches">Its stretches.</param>
    /// <param name="brief">The brief it was made from.</param>
    /// <param name="options">How the pictures are wanted.</param>
    /// <param name="parts">Told what could not be made.</param>
    public static IReadOnlyList<OutputFile> Of(
        Review review, IReadOnlyList<Stretch> stretches, BriefSource brief, CheckOptions options, ReportParts parts)
    {
        IReadOnlyList<FieldGrid> grids = parts.Make("values of the board view", () => FieldGrid.Of(review), []);
        IReadOnlyList<OutputFile> results = Made(
        [
            () => parts.Make(ResultsJson.FileName, () => [new OutputFile(ResultsJson.FileName, ResultsJson.Of(review, stretches, grids))], NoFiles, isResult: true),
            () => parts.Make(FindingsSarif.FileName, () => [new OutputFile(FindingsSarif.FileName, FindingsSarif.Of(review))], NoFiles, isResult: true),
            () => parts.Make("tables", () => ReviewTables.Of(review, stretches), NoFiles, isResult: true),
        ]);

        IReadOnlyList<LayerField> fields = parts.Make("fields of the pictures", () => LayerField.Of(review), []);
        ReviewScales scales = parts.Make("scales of the pictures", () => new ReviewScales(fields), new ReviewScales([]));
        IReadOnlyList<(string Name, OverlayScene Scene)> pictures = [];
        IReadOnlyList<(string Name, StageScene Scene)> stages = parts.Make(
            StagePictures.Name,
            () => StagePictures.Of(
                review, stretches, PicturedArea.Of(review, fields, scales.Density()), ReviewPictures.FingerprintOf(review, brief), options.Theme, options.PictureWidthPx),
            []);
        IReadOnlyList<OutputFile> waveforms = [];
        IReadOnlyList<OutputFile> loadProfile = [];
        Parallel.Invoke(
            () => pictures = parts.Make(Pictures, () => ReviewPictures.Of(review, brief, fields, scales, options.Theme, options.PictureWidthPx), []),
            () => waveforms = parts.Make("waveforms", () => WaveformFiles.Of(review), NoFiles),
            () => loadProfile = parts.Make(LoadProfileFiles.Name, () => LoadProfileFiles.Of(review), NoFiles));

        // The largest come first, so that no core is left alone with one at the end.
        IReadOnlyList<OutputFile> shown = Made(
        [
            () => parts.Make(HtmlReport.FileName, () => [HtmlReport.Of(review, stretches, brief, grids, scales, waveforms, loadProfile, stages.Count > 0 ? stages[0].Scene : null, parts)], NoFiles),
            .. pictures.SelectMany(picture => options.PictureFormats.Select<PictureFormat, Func<IReadOnlyList<OutputFile>>>(
                format => () => Painted($"{picture.Name}.{OverlayPainter.EndingOf(format)}", () => OverlayPainter.Paint(picture.Scene, format), parts))),
            .. stages.SelectMany(picture => options.PictureFormats.Select<PictureFormat, Func<IReadOnlyList<OutputFile>>>(
                format => () => Painted($"{picture.Name}.{OverlayPainter.EndingOf(format)}", () => StagePainter.Paint(picture.Scene, format), parts))),
            () => waveforms,
            () => loadProfile,
        ]);
        return [.. results, .. shown];
    }

    private static IReadOnlyList<OutputFile> NoFiles => [];

    private static IReadOnlyList<OutputFile> Made(Func<IReadOnlyList<OutputFile>>[] jobs) =>
        [.. OnAllCores.Of(jobs, job => job()).SelectMany(files => files)];

    private static IReadOnlyList<OutputFile> Painted(string name, Func<byte[]> paint, ReportParts parts) =>
        parts.Make(name, () => [new OutputFile(name, paint())], NoFiles);
}

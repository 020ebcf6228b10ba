using System.Diagnostics;
using CopperPath.Cli.Output;
using CopperPath.Cli.Overlays;
using CopperPath.Cli.Report;
using CopperPath.Cli.Report.Html;
using CopperPath.Files;

namespace CopperPath.Cli.Commands;

/// <summary><c>copperpath check BRIEF</c>: analyse, speak, write pictures and results.</summary>
public static class CheckCommand
{
    private const string DrawingStage = "Drawing and reporting";
    private const string WritingStage = "Writing files";
    private const string StandardOutput = "standard output";

    public static int Run(CheckOptions options, Terminal terminal)
    {
        Stopwatch whole = Stopwatch.StartNew();
        if (options.PictureWidthPx is < OverlayScene.MinimumWidthPx or > OverlayScene.MaximumWidthPx)
        {
            terminal.Error.WriteLine(FormattableString.Invariant(
                $"--picture-width: error OUT002: found {options.PictureWidthPx}; expected {OverlayScene.MinimumWidthPx} to {OverlayScene.MaximumWidthPx} pixels"));
            return ExitCode.CouldNotJudge;
        }

        ReportParts parts = new();
        string folder = options.Output ?? DefaultFolder(options.Brief);
        string? problem = null;
        using ReportFolder? report = HasReport(options.Brief, folder) ? ReportFolder.Prepare(folder, "check", out problem) : null;
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        Review review = Analysis.Check(options.Brief, terminal.Progress, (brief, board) =>
        {
            terminal.EndProgress();
            if (!options.Quiet)
            {
                parts.Do(StandardOutput, () => TextSummary.WriteHead(terminal.Out, brief, board));
            }
        });
        terminal.EndProgress();
        DiagnosticList.Write(terminal.Error, review.Diagnostics, options.Verbose);
        BriefSource brief = BriefSource.Of(options.Brief, review);
        if (report is null || review.Nets.Count == 0)
        {
            terminal.Error.WriteLine(report is null
                ? "Could not judge: nothing was written."
                : report.Replace(UndecidedFiles.Of(review, brief)) ?? $"Could not judge: the report in {folder} says so.");
            return ExitCode.CouldNotJudge;
        }

        // The answer is given before anything is drawn, so that no fault of a picture and no full disk can lose it.
        IReadOnlyList<Stretch> stretches = parts.Make("stretches", () => Stretch.Of(review), [], isResult: true);
        parts.Do(StandardOutput, () => WriteAnswer(terminal, review, stretches, options));

        // Everything is made before anything is written, so that a failure leaves no half of a report behind.
        terminal.Progress?.Invoke(DrawingStage);
        Stopwatch watch = Stopwatch.StartNew();
        IReadOnlyList<OutputFile> files = ReviewFiles.Of(review, stretches, brief, options, parts);
        StageTiming drawing = new(DrawingStage, watch.Elapsed.TotalSeconds);
        terminal.Progress?.Invoke(WritingStage);
        watch.Restart();
        problem = report.Replace(files);
        StageTiming writing = new(WritingStage, watch.Elapsed.TotalSeconds);
        terminal.EndProgress();
        if (problem is null && !options.Quiet)
        {
            parts.Do(StandardOutput, () => TextSummary.WriteFiles(terminal.Out, review, folder, files, parts.Missing));
        }

        if (options.Timings)
        {
            TextSummary.WriteTimings(terminal.Out, [.. review.Timings, drawing, writing], whole.Elapsed.TotalSeconds);
        }

        foreach (MissingPart part in parts.Missing)
        {
            terminal.Error.WriteLine(part);
        }

        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        return parts.Missing.Any(part => part.IsResult) ? ExitCode.CouldNotJudge : ExitCode.Of(review.Verdict);
    }

    private static void WriteAnswer(Terminal terminal, Review review, IReadOnlyList<Stretch> stretches, CheckOptions options)
    {
        if (options.Quiet)
        {
            terminal.Out.WriteLine($"Verdict: {TextSummary.VerdictText(review)}");
        }
        else
        {
            TextSummary.WriteAnswer(terminal, review, stretches);
        }
    }

    internal static string DefaultFolder(string brief) => Path.Combine(
        Path.GetDirectoryName(brief) ?? "", ReportFolder.HomeName, Path.GetFileNameWithoutExtension(brief));

    /// <summary>A run leaves a report whatever comes of it; only a brief that was never there leaves nothing.</summary>
    private static bool HasReport(string brief, string folder) => PathKinds.At(brief) != PathKind.Nothing || Path.Exists(folder);
}

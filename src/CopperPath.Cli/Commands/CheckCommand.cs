using System.Diagnostics;
using CopperPath.Cli.Overlays;
using CopperPath.Cli.Report;
using CopperPath.Cli.Report.Html;

namespace CopperPath.Cli.Commands;

/// <summary><c>copperpath check BRIEF ...</c>: analyse, speak, write pictures and results, of one brief after the other.</summary>
public static class CheckCommand
{
    private const string DrawingStage = "Drawing and reporting";
    private const string WritingStage = "Writing files";

    public static int Run(CheckOptions options, Terminal terminal)
    {
        if (options.PictureWidthPx is < OverlayScene.MinimumWidthPx or > OverlayScene.MaximumWidthPx)
        {
            terminal.Error.WriteLine(FormattableString.Invariant(
                $"--picture-width: error OUT002: found {options.PictureWidthPx}; expected {OverlayScene.MinimumWidthPx} to {OverlayScene.MaximumWidthPx} pixels"));
            return ExitCode.CouldNotJudge;
        }

        string[] briefs = [.. options.Briefs];
        IReadOnlyList<string> folders = ReportFolders.Of(briefs, options.Output);
        List<(string Brief, Answer Answer)> answers = [];
        for (int i = 0; i < briefs.Length; i++)
        {
            if (briefs.Length > 1 && !options.Quiet)
            {
                terminal.Out.WriteLine($"{(i > 0 ? Environment.NewLine : "")}Brief {i + 1} of {briefs.Length}: {briefs[i]}");
            }

            answers.Add((briefs[i], CheckOne(briefs[i], folders[i], options, terminal)));
        }

        WriteVerdicts(answers, options, terminal);
        return answers.Max(answer => answer.Answer.ExitCode);
    }

    /// <summary>The end of one brief: its exit code, and its verdict in words.</summary>
    private sealed record Answer(int ExitCode, string Verdict);

    /// <summary>Quiet runs say nothing else; several briefs are answered together once more at the end.</summary>
    private static void WriteVerdicts(List<(string Brief, Answer Answer)> answers, CheckOptions options, Terminal terminal)
    {
        if (answers is [var (_, only)])
        {
            if (options.Quiet && only.Verdict.Length > 0)
            {
                terminal.Out.WriteLine($"Verdict: {only.Verdict}");
            }

            return;
        }

        if (!options.Quiet)
        {
            terminal.Out.WriteLine();
        }

        foreach ((string brief, Answer answer) in answers)
        {
            terminal.Out.WriteLine($"Verdict of {brief}: {(answer.Verdict.Length > 0 ? answer.Verdict : "could not judge: nothing was written.")}");
        }
    }

    private static Answer CheckOne(string brief, string folder, CheckOptions options, Terminal terminal)
    {
        Stopwatch whole = Stopwatch.StartNew();
        Review review = Analysis.Check(brief, terminal.Progress, (read, board) =>
        {
            terminal.EndProgress();
            if (!options.Quiet)
            {
                TextSummary.WriteHead(terminal.Out, read, board);
            }
        });
        terminal.EndProgress();
        DiagnosticList.Write(terminal.Error, review.Diagnostics, options.Verbose);
        if (review.Nets.Count == 0)
        {
            terminal.Error.WriteLine("Could not judge: nothing was written.");
            return new Answer(ExitCode.CouldNotJudge, "");
        }

        // Everything is made before anything is written, so that a failure leaves no half of a report behind.
        terminal.Progress?.Invoke(DrawingStage);
        Stopwatch watch = Stopwatch.StartNew();
        IReadOnlyList<Stretch> stretches = Stretch.Of(review);
        IReadOnlyList<OutputFile> files = ReviewFiles.Of(review, stretches, BriefSource.Of(brief), options);
        StageTiming drawing = new(DrawingStage, watch.Elapsed.TotalSeconds);
        terminal.Progress?.Invoke(WritingStage);
        watch.Restart();
        string? problem = OutputFolder.Write(folder, files);
        StageTiming writing = new(WritingStage, watch.Elapsed.TotalSeconds);
        terminal.EndProgress();
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return new Answer(ExitCode.CouldNotJudge, "");
        }

        if (!options.Quiet)
        {
            TextSummary.Write(terminal, review, stretches, folder, files);
        }

        if (options.Timings)
        {
            TextSummary.WriteTimings(terminal.Out, [.. review.Timings, drawing, writing], whole.Elapsed.TotalSeconds);
        }

        return new Answer(ExitCode.Of(review.Verdict), VerdictWords.Of(review));
    }
}

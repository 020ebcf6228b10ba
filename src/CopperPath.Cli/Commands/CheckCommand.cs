using System.Diagnostics;
using CopperPath.Cli.Output;
using CopperPath.Cli.Report;
using CopperPath.Cli.Report.Html;
using CopperPath.Diagnostics;
using CopperPath.Files;
using CopperPath.Judging;

namespace CopperPath.Cli.Commands;

/// <summary><c>copperpath check BRIEF ...</c>: analyse, speak, write pictures and results, of one brief after the other.</summary>
public static class CheckCommand
{
    private const string DrawingStage = "Drawing and reporting";
    private const string WritingStage = "Writing files";
    private const string StandardOutput = "standard output";

    /// <summary>What the folder of the overview is marked with, so that no report is taken for one.</summary>
    private const string OverviewCommand = "check of several briefs";

    public static int Run(CheckOptions options, Terminal terminal)
    {
        if (options.Refusal is { } refusal)
        {
            terminal.Error.WriteLine(refusal);
            return ExitCode.CouldNotJudge;
        }

        string[] briefs = [.. options.Briefs];
        (IReadOnlyList<string> folders, string overviewFolder) = ReportFolders.Of(briefs, options.Output);
        string? problem = null;
        using ReportFolder? overview = briefs.Length == 1 ? null : ReportFolder.Prepare(overviewFolder, OverviewCommand, out problem);
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        List<(string Brief, Answer Answer)> answers = [];
        for (int i = 0; i < briefs.Length; i++)
        {
            if (briefs.Length > 1 && !options.Quiet)
            {
                if (i > 0)
                {
                    terminal.Out.WriteLine();
                }

                terminal.Out.WriteLine($"Brief {i + 1} of {briefs.Length}: {briefs[i]}");
            }

            answers.Add((briefs[i], CheckOne(briefs[i], folders[i], options, terminal)));
        }

        if (overview is null)
        {
            return answers[0].Answer.ExitCode;
        }

        problem = overview.Replace([OverviewPage.Of(
            [.. answers.Select((answer, i) => new OverviewLine(
                answer.Brief, answer.Answer.HasReport ? Path.GetRelativePath(overviewFolder, folders[i]) : null, answer.Answer.Verdict, answer.Answer.Worst))])]);
        if (!options.Quiet)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine(problem is null ? $"Overview: {Path.Combine(overviewFolder, OverviewPage.FileName)}" : "No overview was written.");
        }

        foreach ((string brief, Answer answer) in answers)
        {
            terminal.Out.WriteLine($"Verdict of {brief}: {answer.Verdict}");
        }

        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        return ExitCode.Gravest(answers.Select(answer => answer.Answer.ExitCode));
    }

    /// <summary>The end of one brief: its exit code, its verdict and its worst finding in words, and whether it left a report.</summary>
    private sealed record Answer(int ExitCode, string Verdict, string? Worst = null, bool HasReport = false);

    /// <summary>One brief; whatever goes wrong in it, the others are still judged.</summary>
    private static Answer CheckOne(string brief, string folder, CheckOptions options, Terminal terminal)
    {
        try
        {
            return Check(brief, folder, options, terminal);
        }
        catch (Exception fault) when (options.Briefs.Skip(1).Any() && !Fault.IsCancellation(fault))
        {
            terminal.EndProgress();
            terminal.Error.WriteLine(Fault.LineOf(fault));
            return Undecided("given up.");
        }
    }

    private static Answer Undecided(string why) => new(ExitCode.CouldNotJudge, $"could not judge: {why}");

    private static Answer Check(string brief, string folder, CheckOptions options, Terminal terminal)
    {
        Stopwatch whole = Stopwatch.StartNew();
        string? problem = null;
        using ReportFolder? report = HasReport(brief, folder) ? ReportFolder.Prepare(folder, "check", out problem) : null;
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return Undecided("its report can not be written.");
        }

        ReportParts parts = new();
        Review review;
        try
        {
            review = Analysis.Check(brief, terminal.Progress, (read, board) => terminal.Announce(TextSummary.Head(read, board)));
        }
        catch (Exception fault) when (!Fault.IsCancellation(fault))
        {
            // An earlier report would look as if it were still true.
            Review givenUp = GivenUp(brief, fault);
            report?.Replace(UndecidedFiles.Of(givenUp, BriefSource.Of(brief, givenUp)));
            throw;
        }

        terminal.EndProgress();
        DiagnosticList.Write(terminal.Error, review.Diagnostics, options.Verbose);
        BriefSource source = BriefSource.Of(brief, review);
        if (report is null || review.Nets.Count == 0)
        {
            terminal.Error.WriteLine(report is null
                ? "Could not judge: nothing was written."
                : report.Replace(UndecidedFiles.Of(review, source)) ?? $"Could not judge: the report in {folder} says so.");
            return report is null ? Undecided("nothing was written.") : Undecided("nothing was solved.") with { HasReport = true };
        }

        // The answer is given before anything is drawn, so that no fault of a picture and no full disk can lose it.
        IReadOnlyList<Stretch> stretches = parts.Make("stretches", () => Stretch.Of(review), [], isResult: true);
        parts.Do(StandardOutput, () => WriteAnswer(terminal, review, stretches, options));

        // Everything is made before anything is written, so that a failure leaves no half of a report behind.
        terminal.Progress?.Invoke(DrawingStage);
        Stopwatch watch = Stopwatch.StartNew();
        IReadOnlyList<OutputFile> files = ReviewFiles.Of(review, stretches, source, options, parts);
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
        }

        bool isLost = problem is not null || parts.Missing.Any(part => part.IsResult);
        return new Answer(isLost ? ExitCode.CouldNotJudge : ExitCode.Of(review.Verdict), VerdictWords.Of(review), OverviewLine.WorstOf(review), HasReport: problem is null);
    }

    private static Review GivenUp(string brief, Exception fault) => new(
        null, null, null, [], [], Verdict.CouldNotJudge,
        [new Diagnostic("RUN001", Severity.Error, SourcePosition.WholeFile(Path.GetFileName(brief)), $"a run that was given up ({Fault.WordsOf(fault)})", "a review")],
        [], []);

    private static void WriteAnswer(Terminal terminal, Review review, IReadOnlyList<Stretch> stretches, CheckOptions options)
    {
        if (!options.Quiet)
        {
            TextSummary.WriteAnswer(terminal, review, stretches, options);
        }
        else if (!options.Briefs.Skip(1).Any())
        {
            terminal.Out.WriteLine($"Verdict: {VerdictWords.Of(review)}");
        }
    }

    /// <summary>A run leaves a report whatever comes of it; only a brief that was never there leaves nothing.</summary>
    private static bool HasReport(string brief, string folder) => PathKinds.At(brief) != PathKind.Nothing || Path.Exists(folder);
}

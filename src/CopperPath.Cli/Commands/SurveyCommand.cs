using System.Diagnostics;
using CopperPath.Cli.Report;
using CopperPath.Cli.Report.Starter;

namespace CopperPath.Cli.Commands;

/// <summary><c>copperpath survey FOLDER</c>: say what is there, what was guessed and what could not be placed.</summary>
public static class SurveyCommand
{
    public static int Run(SurveyOptions options, Terminal terminal)
    {
        if (SurplusArguments.Refusal("survey", "folder or archive", options.Surplus) is { } refusal)
        {
            terminal.Error.WriteLine(refusal);
            return ExitCode.CouldNotJudge;
        }

        Stopwatch whole = Stopwatch.StartNew();
        Survey survey = Analysis.Survey(options.Folder, terminal.Progress);
        terminal.EndProgress();
        DiagnosticList.Write(terminal.Error, survey.Board.Diagnostics, options.Verbose);
        SurveySummary.Write(terminal.Out, survey.Board, Math.Max(1, options.Nets));
        if (survey.Path is { } path)
        {
            ProposalSummary.Write(terminal.Out, path);
        }

        if (options.Timings)
        {
            TextSummary.WriteTimings(terminal.Out, survey.Timings, whole.Elapsed.TotalSeconds);
        }

        if (survey.Board.Nets is null)
        {
            return ExitCode.CouldNotJudge;
        }

        if (options.Brief is { } file && WriteBrief(file, options.Folder, survey) is { } problem)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        return survey.Board.CopperIsUncertain ? ExitCode.CouldNotJudge : ExitCode.WithinLimits;
    }

    private static string? WriteBrief(string file, string folder, Survey survey)
    {
        if (File.Exists(file))
        {
            return $"{file}: error OUT002: found a file of that name; expected a new one, a brief is never overwritten";
        }

        string relative = Path.GetRelativePath(Path.GetDirectoryName(Path.GetFullPath(file))!, Path.GetFullPath(folder));
        return OutputFolder.Write(Path.GetDirectoryName(Path.GetFullPath(file))!,
            [new OutputFile(Path.GetFileName(file), StarterBrief.Of(survey.Board, relative.Replace('\\', '/'), survey.Path))]);
    }
}

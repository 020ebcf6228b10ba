using System.Diagnostics;
using CopperPath.Cli.Output;
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
        string? problem = null;
        using NewFile? brief = options.Brief is null ? null : NewFile.Prepare(options.Brief, out problem);
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

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

        if (brief?.Write(BriefOf(options.Brief!, options.Folder, survey)) is { } fault)
        {
            terminal.Error.WriteLine(fault);
            return ExitCode.CouldNotJudge;
        }

        return survey.Board.CopperIsUncertain ? ExitCode.CouldNotJudge : ExitCode.WithinLimits;
    }

    private static byte[] BriefOf(string file, string folder, Survey survey)
    {
        string relative = Path.GetRelativePath(Path.GetDirectoryName(Path.GetFullPath(file))!, Path.GetFullPath(folder));
        return StarterBrief.Of(survey.Board, relative.Replace('\\', '/'), survey.Path);
    }
}

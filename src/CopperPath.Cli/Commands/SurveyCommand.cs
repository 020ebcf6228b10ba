using System.Diagnostics;
using CopperPath.Cli.Output;
using CopperPath.Cli.Overlays.Stages;
using CopperPath.Cli.Report;
using CopperPath.Cli.Report.Starter;

namespace CopperPath.Cli.Commands;

/// <summary><c>copperpath survey FOLDER</c>: say what is there, what was guessed and what could not be placed.</summary>
public static class SurveyCommand
{
    public static int Run(SurveyOptions options, Terminal terminal)
    {
        string? problem = options.Refusal;
        using NewFile? brief = options.Brief is null || problem is not null ? null : NewFile.Prepare(options.Brief, out problem);
        using NewFile? picture = options.Picture is null || problem is not null ? null : NewFile.Prepare(options.Picture, out problem);
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        string[] folders = [.. options.Folders];
        int worst = ExitCode.WithinLimits;
        for (int i = 0; i < folders.Length; i++)
        {
            if (folders.Length > 1)
            {
                if (i > 0)
                {
                    terminal.Out.WriteLine();
                }

                terminal.Out.WriteLine($"Board {i + 1} of {folders.Length}: {folders[i]}");
            }

            worst = Math.Max(worst, SurveyOne(folders[i], brief, picture, options, terminal));
        }

        return worst;
    }

    private static int SurveyOne(string folder, NewFile? brief, NewFile? picture, SurveyOptions options, Terminal terminal)
    {
        Stopwatch whole = Stopwatch.StartNew();
        Survey survey = Analysis.Survey(folder, terminal.Progress);
        terminal.EndProgress();
        DiagnosticList.Write(terminal.Error, survey.Board.Diagnostics, options.Verbose);
        SurveySummary.Write(terminal, survey.Board, options.NetCount);
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

        if (picture?.Write(StagePainter.Paint(StagePictures.OfSurvey(survey, Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)))), SurveyOptions.FormatOf(options.Picture!)!.Value)) is { } unwritten)
        {
            terminal.Error.WriteLine(unwritten);
            return ExitCode.CouldNotJudge;
        }

        if (brief?.Write(BriefOf(options.Brief!, folder, survey)) is { } fault)
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

using CopperPath.Cli.Report;
using CopperPath.Cli.Report.Html;
using CopperPath.Cli.Report.Tables;

namespace CopperPath.Cli.Commands;

/// <summary><c>copperpath check BRIEF</c>: analyse, speak, write pictures and results.</summary>
public static class CheckCommand
{
    public static int Run(CheckOptions options, Terminal terminal)
    {
        Review review = Analysis.Check(options.Brief, terminal.Progress, (brief, board) =>
        {
            terminal.EndProgress();
            if (!options.Quiet)
            {
                TextSummary.WriteHead(terminal.Out, brief, board);
            }
        });
        terminal.EndProgress();
        DiagnosticList.Write(terminal.Error, review.Diagnostics, options.Verbose);
        if (review.Nets.Count == 0)
        {
            terminal.Error.WriteLine("Could not judge: nothing was written.");
            return ExitCode.CouldNotJudge;
        }

        // Everything is made before anything is written, so that a failure leaves no half of a report behind.
        terminal.Progress?.Invoke("Drawing");
        IReadOnlyList<FieldGrid> grids = FieldGrid.Of(review);
        List<OutputFile> files =
        [
            HtmlReport.Of(review, BriefSource.Of(options.Brief), grids),
            new OutputFile("results.json", ResultsJson.Of(review, grids)),
            new OutputFile("findings.sarif", FindingsSarif.Of(review)),
            .. ReviewTables.Of(review),
        ];
        files.AddRange(ReviewPictures.Of(review, options.PictureFormats));
        files.AddRange(review.Brief!.Converters.Select((section, i) => new OutputFile(
            FormattableString.Invariant($"waveforms-{i + 1}.png"), Overlays.WaveformChart.PaintPng(section.Facts))));
        terminal.EndProgress();
        string folder = options.Output ?? DefaultFolder(options.Brief);
        if (OutputFolder.Write(folder, files) is { } problem)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        if (options.Quiet)
        {
            terminal.Out.WriteLine($"Verdict: {TextSummary.VerdictText(review)}");
        }
        else
        {
            TextSummary.Write(terminal, review, folder, files);
        }

        if (options.Timings)
        {
            TextSummary.WriteTimings(terminal.Out, review.Timings);
        }

        return ExitCode.Of(review.Verdict);
    }

    internal static string DefaultFolder(string brief) => Path.Combine(
        Path.GetDirectoryName(brief) ?? "", "copperpath-report", Path.GetFileNameWithoutExtension(brief));
}

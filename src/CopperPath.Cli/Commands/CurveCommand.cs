using CopperPath.Cli.Plots;
using CopperPath.Cli.Report;

namespace CopperPath.Cli.Commands;

/// <summary><c>copperpath curve BRIEF</c>: what a straight trace carries on this board, printed and plotted.</summary>
public static class CurveCommand
{
    public static int Run(CurveOptions options, Terminal terminal)
    {
        if (SurplusArguments.Refusal("curve", "brief", options.Surplus) is { } refusal)
        {
            terminal.Error.WriteLine(refusal);
            return ExitCode.CouldNotJudge;
        }

        CurveReview review = CurveAnalysis.Run(options.Brief, terminal.Progress);
        terminal.EndProgress();
        DiagnosticList.Write(terminal.Error, review.Diagnostics, options.Verbose);
        if (review.Trace is null)
        {
            terminal.Error.WriteLine("No curves: nothing was written.");
            return ExitCode.CouldNotJudge;
        }

        List<OutputFile> files = [.. review.Curves.GroupBy(curve => curve.Layer).SelectMany(layer =>
        {
            LogLogPlot plot = CurvePlot.Of(review, layer.Key);
            string name = FormattableString.Invariant($"curve-layer-{layer.Key}");
            return new[] { new OutputFile($"{name}.png", PlotPainter.PaintPng(plot)), new OutputFile($"{name}.svg", PlotPainter.PaintSvg(plot)) };
        })];
        string folder = options.Output ?? ReportFolders.Beside(options.Brief);
        if (OutputFolder.Write(folder, files) is { } problem)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        CurveSummary.Write(terminal.Out, review);
        terminal.Out.WriteLine($"Written: {files.Count} files in {folder}");
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(Cautions.Text);
        return review.Brief!.Blanks.Count > 0 ? ExitCode.CouldNotJudge : ExitCode.WithinLimits;
    }
}

using CopperPath.Cli.Output;
using CopperPath.Cli.Plots;
using CopperPath.Cli.Report;
using CopperPath.Files;

namespace CopperPath.Cli.Commands;

/// <summary><c>copperpath curve BRIEF</c>: what a straight trace carries on this board, printed and plotted.</summary>
public static class CurveCommand
{
    public static int Run(CurveOptions options, Terminal terminal)
    {
        string folder = options.Output ?? CheckCommand.DefaultFolder(options.Brief) + "-curve";
        string? problem = null;
        using ReportFolder? report = PathKinds.At(options.Brief) == PathKind.Nothing ? null : ReportFolder.Prepare(folder, "curve", out problem);
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        CurveReview review = CurveAnalysis.Run(options.Brief, terminal.Progress);
        terminal.EndProgress();
        DiagnosticList.Write(terminal.Error, review.Diagnostics, options.Verbose);
        if (report is null || review.Trace is null)
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
        problem = report.Replace(files);
        CurveSummary.Write(terminal.Out, review);
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        terminal.Out.WriteLine($"Written: {files.Count} files in {folder}");
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(Cautions.Text);
        return ExitCode.WithinLimits;
    }
}

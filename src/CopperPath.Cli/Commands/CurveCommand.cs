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
        if (SurplusArguments.Refusal("curve", "brief", options.Surplus) is { } refusal)
        {
            terminal.Error.WriteLine(refusal);
            return ExitCode.CouldNotJudge;
        }

        string folder = options.Output ?? ReportFolders.Beside(options.Brief) + "-curve";
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

        CurveSummary.Write(terminal.Out, review);
        ReportParts parts = new();
        List<OutputFile> files = [];
        foreach (int layer in review.Curves.Select(curve => curve.Layer).Distinct())
        {
            string name = FormattableString.Invariant($"curve-layer-{layer}");
            Add($"{name}.png", () => PlotPainter.PaintPng(CurvePlot.Of(review, layer)));
            Add($"{name}.svg", () => PlotPainter.PaintSvg(CurvePlot.Of(review, layer)));
        }

        foreach (MissingPart part in parts.Missing)
        {
            terminal.Error.WriteLine(part);
        }

        problem = report.Replace(files);
        if (problem is not null)
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.CouldNotJudge;
        }

        terminal.Out.WriteLine($"Written: {files.Count} files in {folder}");
        terminal.Out.WriteLine();
        Cautions.Write(terminal.Out);
        return review.Brief!.Blanks.Count > 0 ? ExitCode.CouldNotJudge : ExitCode.WithinLimits;

        void Add(string name, Func<byte[]> paint) => files.AddRange(parts.Make<OutputFile[]>(name, () => [new OutputFile(name, paint())], []));
    }
}

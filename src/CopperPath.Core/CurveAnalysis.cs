using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Circuit;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath;

/// <summary>What a board's layers, size and cooling let a straight trace carry.</summary>
/// <param name="Brief">What was asked; null when the brief could not be read.</param>
/// <param name="Trace">Board as the trace sees it; null when there are no curves.</param>
/// <param name="Curves">By layer, then rise.</param>
/// <param name="Diagnostics">Remarks about the input.</param>
public sealed record CurveReview(
    ReviewBrief? Brief, StraightTrace? Trace, IReadOnlyList<BoardCurve> Curves, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>A side path of <see cref="Analysis"/>: a review brief -> capacity curves of its board.</summary>
public static class CurveAnalysis
{
    /// <summary>The trace is this share of the board's longer side.</summary>
    private const double LengthShare = 0.8;

    /// <param name="briefFile">Path of the brief.</param>
    /// <param name="progress">Told the name of each stage as it begins; may be null.</param>
    public static CurveReview Run(string briefFile, Action<string>? progress = null)
    {
        StageClock clock = new(progress);
        clock.Begin("Reading the brief");
        BriefReading reading = BriefFile.Read(briefFile);
        if (reading.Brief is not { } brief)
        {
            return new CurveReview(null, null, [], reading.Diagnostics);
        }

        Board board = BoardRebuilder.Rebuild(BriefFile.FolderOf(briefFile, brief), brief.Board, clock);
        List<Diagnostic> diagnostics = [.. reading.Diagnostics, .. board.Diagnostics];
        if (board.Nets is null)
        {
            return new CurveReview(brief, null, [], RemarkBudget.Apply(diagnostics));
        }

        (Stackup? stack, _, Diagnostic? problem) = StackupBuilder.Build(brief, board.Nets);
        if (stack is null)
        {
            diagnostics.Add(problem!);
            return new CurveReview(brief, null, [], RemarkBudget.Apply(diagnostics));
        }

        clock.Begin("Solving traces");
        StraightTrace trace = TraceOn(board, brief, stack);
        int[] layers = stack.ThicknessM.Count > 2 ? [1, 2] : [1];
        return new CurveReview(brief, trace, BoardCurves.Of(trace, layers), RemarkBudget.Apply(diagnostics));
    }

    /// <summary>The board as one straight trace would see it: along its longer side, over the copper the other layers have on average.</summary>
    private static StraightTrace TraceOn(Board board, ReviewBrief brief, Stackup stack)
    {
        double longerM = Units.MetresFromNm(Math.Max(board.Bounds.WidthNm, board.Bounds.HeightNm));
        double shorterM = Units.MetresFromNm(Math.Min(board.Bounds.WidthNm, board.Bounds.HeightNm));
        double[] shares = new double[stack.ThicknessM.Count];
        foreach (CopperLayer layer in board.Nets!.Layers)
        {
            shares[layer.Number - 1] = Math.Min(1, layer.AreaM2 / (longerM * shorterM));
        }

        return new StraightTrace(
            LengthShare * longerM, longerM, shorterM, stack, brief.Thermal.Laminate.BelowM, 1, shares,
            BoardHeat.MaterialsOf(brief.Thermal.Laminate), BoardHeat.CoolingOf(brief.Thermal, brief.AmbientK));
    }
}

using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The answer for the person at the terminal.</summary>
public static class TextSummary
{
    /// <summary>All but the head, which is written as soon as it is known.</summary>
    public static void Write(Terminal terminal, Review review, string folder, IReadOnlyList<OutputFile> files)
    {
        TextWriter writer = terminal.Out;
        WriteNets(terminal, review);
        ConverterSummary.Write(writer, review);
        SkinSummary.Write(writer, review);
        WriteFindings(writer, review.Findings);
        foreach (string line in review.StatedDefaults)
        {
            writer.WriteLine($"Assumed: {line}");
        }

        writer.WriteLine();
        writer.WriteLine($"Verdict: {VerdictText(review)}");
        writer.WriteLine($"Written: {files.Count} files in {folder}");
        writer.WriteLine();
        writer.WriteLine(Cautions.Text);
    }

    public static void WriteTimings(TextWriter writer, IReadOnlyList<StageTiming> timings)
    {
        writer.WriteLine();
        TextTable table = new(["Stage", "Seconds"], [false, true]);
        foreach (StageTiming timing in timings)
        {
            table.Add([timing.Stage, FormattableString.Invariant($"{timing.Seconds:0.00}")]);
        }

        table.Add(["All stages", FormattableString.Invariant($"{timings.Sum(timing => timing.Seconds):0.00}")]);
        table.Write(writer);
    }

    public static string VerdictText(Review review) => review.Verdict switch
    {
        Verdict.WithinLimits => "all within limits.",
        Verdict.BeyondLimits => FormattableString.Invariant(
            $"{review.Findings.Count(finding => finding.Counts)} findings beyond limits."),
        _ => "could not judge: part of the input was not understood or not solved; see the messages.",
    };

    /// <summary>What is under review: known as soon as the copper is rebuilt.</summary>
    public static void WriteHead(TextWriter writer, ReviewBrief brief, Board board)
    {
        string revision = brief.Board.Revision is { } text ? $", revision {text}" : "";
        writer.WriteLine($"{Product.NameAndVersion}: review of {brief.Board.Name}{revision}");
        writer.WriteLine(FormattableString.Invariant(
            $"{board.Nets!.Layers.Count} copper layers, {board.HoleCount} holes, {board.Nets.Nets.Count} nets; ")
            + $"ambient {QuantityText.Temperature(brief.AmbientK)}, copper at {QuantityText.Temperature(brief.ConductorK)}, "
            + $"allowed rise {QuantityText.TemperatureDifference(brief.Limits.TemperatureRiseK)}");
        writer.WriteLine();
        writer.Flush();
    }

    private static void WriteNets(Terminal terminal, Review review)
    {
        TextWriter writer = terminal.Out;
        ConductorRating rating = new(review.Brief!.Limits.JudgeBy, review.Stack!);
        TextTable table = new(
            ["Stretch of copper", "Current", "Resistance", "Drop", "Loss", "Hottest section", "Hottest hole", "Own mean", "Own peak"],
            [false, true, true, true, true, true, true, true, true]);
        foreach (SolvedNet net in review.Nets)
        {
            ConductionResult result = net.Conduction;
            double enteringA = net.Bound.Terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA);
            if (result.Status != ConductionStatus.Solved)
            {
                table.Add([net.Bound.Review.Name, QuantityText.Current(enteringA), "not solved", "", "", "", "", "", ""]);
                continue;
            }

            NetTemperatures? own = review.Heat is { Result.Status: ThermalStatus.Solved } heat ? NetTemperatures.Of(result, heat) : null;
            table.Add([
                net.Bound.Review.Name,
                QuantityText.Current(enteringA),
                result.ResistanceOhm is { } ohm ? QuantityText.Resistance(ohm) : "-",
                QuantityText.Voltage(result.DropV),
                QuantityText.Power(result.LossW),
                net.Sections.Count == 0 ? "-" : QuantityText.TemperatureDifference(net.Sections.Max(rating.TraceRiseK)),
                result.Barrels.Count == 0 ? "-" : QuantityText.TemperatureDifference(result.Barrels.Max(rating.BarrelRiseK)),
                own is null ? "-" : QuantityText.TemperatureDifference(own.MeanK),
                own is null ? "-" : QuantityText.TemperatureDifference(own.PeakK)]);
        }

        table.Write(writer, terminal.Width);
        WriteBounds(writer, review);
        writer.WriteLine($"Sections and holes by {rating.Name}: one long isolated conductor in still air, no planes. Drop and loss from the field solve.");
        HeatText.Write(writer, review.Heat);
        writer.WriteLine();
    }

    /// <summary>How far off the numbers of the field solve can be, at worst over all nets.</summary>
    private static void WriteBounds(TextWriter writer, Review review)
    {
        ConductionResult[] solved = [.. review.Nets.Select(net => net.Conduction)
            .Where(result => result.Status == ConductionStatus.Solved)];
        if (solved.Length > 0)
        {
            double loss = solved.Max(result => result.LossBoundsW.RelativeWidth) / 2;
            double drop = solved.Max(result => result.DropBoundsV.RelativeWidth) / 2;
            writer.WriteLine(FormattableString.Invariant(
                $"Proven for the meshed copper: every loss within {100 * loss:0.00} %, every drop within {100 * drop:0.00} %."));
        }
    }

    private static void WriteFindings(TextWriter writer, IReadOnlyList<Finding> findings)
    {
        for (int i = 0; i < findings.Count; i++)
        {
            Finding finding = findings[i];
            string layer = finding.Layer > 0 ? FormattableString.Invariant($"layer {finding.Layer}, ") : "";
            writer.WriteLine(FormattableString.Invariant(
                $"{i + 1,3}. [{finding.Rule}] {finding.Subject}: {layer}x {finding.XM * 1e3:0.00} mm, y {finding.YM * 1e3:0.00} mm"));
            if (finding.Level == FindingLevel.Remark)
            {
                writer.WriteLine("     Remark, not a limit:");
            }

            writer.WriteLine($"     {finding.Sentence}");
            writer.WriteLine($"     {finding.Advice}");
            if (finding.Waiver is { } waiver)
            {
                writer.WriteLine($"     Waived by {waiver.By}: {waiver.Reason}");
            }

        }

        if (findings.Count > 0)
        {
            writer.WriteLine();
        }
    }
}

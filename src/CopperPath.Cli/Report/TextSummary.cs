using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>The answer for the person at the terminal.</summary>
public static class TextSummary
{
    /// <summary>What was found, all but the head, which is written as soon as it is known.</summary>
    internal static void WriteAnswer(Terminal terminal, Review review, IReadOnlyList<Stretch> stretches)
    {
        TextWriter writer = terminal.Out;
        WriteNets(terminal, review, stretches);
        ConverterSummary.Write(writer, review);
        SkinSummary.Write(writer, review);
        ToleranceText.Write(writer, review.Tolerance);
        WriteFindings(writer, review.Findings);
        foreach (string line in review.StatedDefaults)
        {
            writer.WriteLine($"Assumed: {line}");
        }

        writer.WriteLine();
        writer.WriteLine($"Verdict: {VerdictWords.Of(review)}");
        if (review.Findings.Any(finding => finding.Level != FindingLevel.Remark) || review.Brief!.Waivers.Count > 0)
        {
            writer.WriteLine($"These files: a waiver given for them says `fingerprint: '{review.Board!.Fingerprint}'`.");
        }

        writer.Flush();
    }

    /// <summary>What was written, and what is not among it.</summary>
    internal static void WriteFiles(
        TextWriter writer, Review review, string folder, IReadOnlyList<OutputFile> files, IReadOnlyList<MissingPart> missing)
    {
        writer.WriteLine($"Written: {Counted.Of(files.Count, "file")} in {folder}");
        if (missing.Count > 0)
        {
            writer.WriteLine($"Not made: {string.Join("; ", missing.Select(part => part.Name))}.");
        }

        bool hasPictures = missing.All(part => part.Name != ReviewFiles.Pictures);
        if (hasPictures && ReviewPictures.LayersWithoutPicture(review, [.. files.Select(file => file.Name), .. missing.Select(part => part.Name)]) is { Count: > 0 } empty)
        {
            writer.WriteLine(FormattableString.Invariant(
                $"No picture of {(empty.Count == 1 ? "layer" : "layers")} {string.Join(", ", empty)}: no reviewed copper with current there."));
        }

        writer.WriteLine();
        Cautions.Write(writer);
    }

    /// <param name="writer">Where to.</param>
    /// <param name="timings">Stages, one after another.</param>
    /// <param name="wholeSeconds">From the start of the command on, what lies between the stages included.</param>
    public static void WriteTimings(TextWriter writer, IReadOnlyList<StageTiming> timings, double wholeSeconds)
    {
        writer.WriteLine();
        TextTable table = new(["Stage", "Seconds"], [false, true]);
        foreach (StageTiming timing in timings)
        {
            table.Add([timing.Stage, FormattableString.Invariant($"{timing.Seconds:0.00}")]);
        }

        table.Add(["Whole command", FormattableString.Invariant($"{wholeSeconds:0.00}")]);
        table.Write(writer);
    }

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

    private static void WriteNets(Terminal terminal, Review review, IReadOnlyList<Stretch> stretches)
    {
        TextWriter writer = terminal.Out;
        ConductorRating rating = ConductorRating.Shown(review.Brief!.Limits.JudgeBy, review.Stack!);
        TextTable table = new(
            ["Stretch of copper", "Current", "Resistance", "Drop", "Loss", "Hottest section", "Hottest hole", "Own mean", "Own peak"],
            [false, true, true, true, true, true, true, true, true]);
        foreach (Stretch stretch in stretches)
        {
            ConductionResult result = stretch.Conduction;
            if (!stretch.IsSolved)
            {
                table.Add([stretch.Name, QuantityText.Current(stretch.EnteringA), "not solved", "", "", "", "", "", ""]);
                continue;
            }

            table.Add([
                stretch.Name,
                QuantityText.Current(stretch.EnteringA),
                result.ResistanceOhm is { } ohm ? QuantityText.Resistance(ohm) : "-",
                QuantityText.Voltage(result.DropV),
                QuantityText.Power(result.LossW),
                RiseText(stretch.SectionRiseK),
                RiseText(stretch.HoleRiseK),
                RiseText(stretch.Own?.MeanK),
                RiseText(stretch.Own?.PeakK)]);
        }

        table.Write(writer, terminal.Width);
        WriteBounds(writer, review);
        writer.WriteLine($"Sections and holes by {rating.Name}, for screening: one long isolated conductor in still air, no planes. Drop and loss from the field solve.");
        HeatText.Write(writer, review);
        writer.WriteLine();
    }

    private static string RiseText(double? riseK) => riseK is { } rise ? QuantityText.TemperatureDifference(rise) : "-";

    /// <summary>How far off the numbers of the field solve can be, at worst over all nets.</summary>
    private static void WriteBounds(TextWriter writer, Review review)
    {
        if (SolveAccuracy.Of([.. review.Nets.Select(net => net.Conduction).Where(result => result.HasFields)]) is { } accuracy)
        {
            writer.WriteLine($"Bounds for the drawn copper: every loss within {SolveAccuracy.Text(accuracy.Loss)}, every drop within {SolveAccuracy.Text(accuracy.Drop)}; "
                + $"of it {SolveAccuracy.Text(accuracy.Outline)} estimated for outlines, the rest proven.");
            writer.WriteLine($"Estimated: currents of single holes and contacts within {SolveAccuracy.Text(accuracy.HoleAndContact)}.");
        }
    }

    private static void WriteFindings(TextWriter writer, IReadOnlyList<Finding> findings)
    {
        for (int i = 0; i < findings.Count; i++)
        {
            Finding finding = findings[i];
            string layer = finding.Layer > 0 ? FormattableString.Invariant($"layer {finding.Layer}, ") : "";
            writer.WriteLine(FormattableString.Invariant(
                $"{i + 1,3}. [{finding.Rule}] {finding.Subject}: {layer}x {QuantityText.Place(finding.XM)}, y {QuantityText.Place(finding.YM)}"));
            if (finding.Level == FindingLevel.Remark)
            {
                writer.WriteLine("     Remark, not a limit:");
            }
            else if (finding.Level == FindingLevel.WithinAsStated)
            {
                writer.WriteLine("     Within the limit as stated, not over the range of what is not known:");
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

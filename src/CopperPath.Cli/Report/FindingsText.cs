using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>Findings for the person at the terminal.</summary>
internal static class FindingsText
{
    public static void Write(TextWriter writer, IReadOnlyList<Finding> findings)
    {
        for (int i = 0; i < findings.Count; i++)
        {
            Finding finding = findings[i];
            writer.WriteLine(FormattableString.Invariant($"{i + 1,3}. [{finding.Rule}] {PlaceOf(finding)}"));
            if (finding.Level is FindingLevel.Remark or FindingLevel.WithinAsStated)
            {
                writer.WriteLine(finding.Level == FindingLevel.Remark ? "     Remark, not a limit:" : "     Within the limit as stated, not over the range of what is not known:");
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

    /// <summary>What it is about and where.</summary>
    public static string PlaceOf(Finding finding)
    {
        string layer = finding.Layer > 0 ? FormattableString.Invariant($"layer {finding.Layer}, ") : "";
        return $"{finding.Subject}: {layer}x {QuantityText.Place(finding.XM)}, y {QuantityText.Place(finding.YM)}";
    }
}

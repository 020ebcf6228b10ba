using CopperPath.PowerPath;

namespace CopperPath.Cli.Report;

/// <summary>The proposed power path, for the person at the terminal.</summary>
public static class ProposalSummary
{
    public static void Write(TextWriter writer, PathProposal path)
    {
        writer.WriteLine();
        if (path.Converters.Count == 0)
        {
            writer.WriteLine("Power path: no converter was recognised; no switch node with switches and an inductor was found.");
            return;
        }

        writer.WriteLine("Power path proposed from the copper alone; confirm each line before relying on it.");
        foreach (StageProposal stage in path.Stages)
        {
            writer.WriteLine($"  {NameOf(stage)}: {stage.Net.Name} ({ConfidenceText(stage)})");
            writer.WriteLine($"      {string.Join("; ", stage.Reasons)}.");
        }

        foreach (ConverterProposal converter in path.Converters)
        {
            writer.WriteLine(PhaseLine(converter));
        }
    }

    public static string ConfidenceText(StageProposal stage) => stage.Confidence switch
    {
        Confidence.High => "high confidence",
        Confidence.Medium => "medium confidence",
        _ => "low confidence",
    };

    /// <summary>E.g. <c>switch node, converter 1, phase 2</c>.</summary>
    public static string NameOf(StageProposal stage) => RoleText(stage.Role)
        + (stage.Converter > 0 ? FormattableString.Invariant($", converter {stage.Converter}") : "")
        + (stage.Phase > 0 ? FormattableString.Invariant($", phase {stage.Phase}") : "");

    /// <summary>How many phases are electrically separate: one for each switch node of its own.</summary>
    public static string PhaseLine(ConverterProposal converter)
    {
        int inductors = converter.Phases.Sum(phase => phase.Inductors.Count);
        string phases = converter.Phases.Count == 1 ? "one electrical phase" : FormattableString.Invariant($"{converter.Phases.Count} electrical phases");
        return FormattableString.Invariant($"Converter {converter.Number}, output {converter.Output.Name}: {phases}, {(converter.Phases.Count == 1 ? "with one switch node" : "each with a switch node of its own")}")
            + (inductors > converter.Phases.Count ? FormattableString.Invariant($"; its {inductors} inductors include parallel ones, which add no phase.") : ".");
    }

    private static string RoleText(StageRole role) => role switch
    {
        StageRole.Feed => "feed",
        StageRole.FeedReturn => "feed return",
        StageRole.Input => "input",
        StageRole.HighSideSupply => "high-side supply",
        StageRole.SwitchNode => "switch node",
        StageRole.Output => "output",
        _ => "return",
    };
}

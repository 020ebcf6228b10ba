using System.Globalization;
using System.Text;
using CopperPath.Nets;
using CopperPath.OutsideText;
using CopperPath.PowerPath;

namespace CopperPath.Cli.Report;

/// <summary>
/// The proposed power path as comments of a starter brief: entries that become part of the brief when a person has
/// confirmed them and takes the comment marks away. Currents are named as stages of a converter to be described.
/// </summary>
public static class ProposedStretches
{
    private const int PlacesShown = 24;

    public static string Of(PathProposal path, int layers)
    {
        StringBuilder text = new();
        if (path.Converters.Count == 0)
        {
            return "# No converter was recognised in the copper.\n";
        }

        text.Append("# Proposed power path, a guess from the copper alone. Confirm each entry, then take away its '#'.\n");
        foreach (ConverterProposal converter in path.Converters)
        {
            text.Append("# ").Append(VisibleText.Of(ProposalSummary.PhaseLine(converter))).Append('\n');
        }

        text.Append("# converters:\n");
        foreach (ConverterProposal converter in path.Converters)
        {
            text.Append(CultureInfo.InvariantCulture, $"#   - {{ name: converter {converter.Number}, phases: {converter.Phases.Count}, input voltage: 12 V, output voltage: 1 V, ")
                .Append("load current: 10 A, switching frequency: 500 kHz, inductance: 1 uH }  # ?\n");
        }

        text.Append("# nets:\n");
        foreach (StageProposal stage in path.Stages)
        {
            text.Append(CultureInfo.InvariantCulture, $"#   # {stage.Confidence.ToString().ToLowerInvariant()} confidence: {VisibleText.Of(string.Join("; ", stage.Reasons))}\n");
            text.Append(CultureInfo.InvariantCulture, $"#   - name: {YamlScalar.Quoted(ProposalSummary.NameOf(stage))}\n#     {SelectorOf(stage.Net)}\n#     role: {RoleWord(stage.Role)}\n");
            if (stage.Parts.Count > 0)
            {
                text.Append("#     terminals:\n");
            }

            foreach (IGrouping<string, StagePart> kind in stage.Parts.GroupBy(part => part.Kind))
            {
                text.Append(CultureInfo.InvariantCulture, $"#       - {{ name: {kind.Key}, {PlacesOf(stage.Net, kind.Select(part => part.Part), layers)}, {CurrentOf(stage, kind.Key)} }}\n");
            }
        }

        return text.ToString();
    }

    private static string CurrentOf(StageProposal stage, string kind)
    {
        string converter = FormattableString.Invariant($"converter {Math.Max(1, stage.Converter)}");
        return (stage.Role, kind) switch
        {
            (StageRole.SwitchNode, "low side") => $"enters: low side of {converter}",
            (StageRole.SwitchNode, "high side") => $"enters: high side of {converter}",
            (StageRole.Output, "inductor") => $"enters: output of {converter}",
            (StageRole.HighSideSupply, "input capacitor") => $"enters: rms phase input capacitors of {converter}",
            (StageRole.Feed, "connector") => $"enters: feed of {converter}",
            _ => "takes: rest",
        };
    }

    private static string SelectorOf(Net net)
    {
        if (!net.NameIsGenerated)
        {
            return $"net: {YamlScalar.Quoted(net.Name)}";
        }

        Pad pad = net.Pads[0];
        return FormattableString.Invariant($"at: {{ layer: {pad.Layer}, x: {pad.At.X / 1e6:0.####} mm, y: {pad.At.Y / 1e6:0.####} mm }}");
    }

    private static string PlacesOf(Net net, IEnumerable<Part> parts, int layers)
    {
        List<(Part Part, PartPad Pad)> ends = [.. parts.SelectMany(part => part.PadsOn(net).Select(pad => (part, pad))).Take(PlacesShown)];
        if (ends.TrueForAll(end => end.Part.IsNamed && end.Pad.Name is not null))
        {
            return $"pins: [{string.Join(", ", ends.Select(end => YamlScalar.Quoted($"{end.Part.Name}.{end.Pad.Name}")).Distinct())}]";
        }

        string Layer(PartPad pad) => pad.Pad.Layer == layers && layers > 1 ? "bottom" : "top";
        return ends.Count > 0 && ends[0].Pad.HoleDiameterNm > 0
            ? $"holes: [{string.Join(", ", ends.Select(end => FormattableString.Invariant($"{{ x: {end.Pad.At.X / 1e6:0.####} mm, y: {end.Pad.At.Y / 1e6:0.####} mm }}")))}]"
            : $"pads: [{string.Join(", ", ends.Select(end => FormattableString.Invariant($"{{ layer: {Layer(end.Pad)}, x: {end.Pad.At.X / 1e6:0.####} mm, y: {end.Pad.At.Y / 1e6:0.####} mm }}")))}]";
    }

    private static string RoleWord(StageRole role) => role switch
    {
        StageRole.Feed or StageRole.FeedReturn => "feed",
        StageRole.Input or StageRole.HighSideSupply => "input",
        StageRole.SwitchNode => "switch node",
        StageRole.Output => "output",
        _ => "return",
    };
}

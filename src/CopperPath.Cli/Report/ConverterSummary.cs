using System.Text.Json;
using CopperPath.Converter;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>Operating points of the converters, switch nodes and hot loops: as text and as JSON.</summary>
public static class ConverterSummary
{
    private static readonly (PathStage Stage, string Word, string Key)[] s_stages =
    [
        (PathStage.Feed, "feed", "feed"),
        (PathStage.InputCapacitors, "input capacitors, all", "inputCapacitors"),
        (PathStage.PhaseInputCapacitors, "input capacitors of a phase", "phaseInputCapacitors"),
        (PathStage.HighSide, "high side of a phase", "highSide"),
        (PathStage.LowSide, "low side of a phase", "lowSide"),
        (PathStage.Inductor, "inductor of a phase", "inductor"),
        (PathStage.Output, "output, all phases", "output"),
        (PathStage.OutputCapacitors, "output capacitors, all", "outputCapacitors"),
    ];

    /// <summary>What the operating points rest on.</summary>
    internal const string Basis = "Drop follows the average, heat the RMS. Ideal converter: phases alike, continuous conduction, no dead time.";

    /// <summary>What the figures of switch nodes rest on.</summary>
    internal const string SwitchNodeBasis = "Capacitance without fringing field; no limit is published, the values serve to compare.";

    /// <summary>What the figures of hot loops rest on.</summary>
    internal const string HotLoopBasis = "Wide-strip formula over the plane, parts' own inductance left out; no limit is published, the values rank the phases.";

    /// <summary>Currents of each stage, from the feed to the output.</summary>
    internal static IEnumerable<(string Word, StageCurrent Current)> Currents(ConverterFacts facts) =>
        s_stages.Select(stage => (stage.Word, facts.CurrentOf(stage.Stage)));

    /// <summary>How many phases and when each turns on.</summary>
    internal static string PhasesText(BuckStage stage) => stage.Phases == 1 ? "one phase" : FormattableString.Invariant($"{stage.Phases} phases at ")
        + string.Join(", ", Enumerable.Range(0, stage.Phases).Select(phase => FormattableString.Invariant($"{stage.TurnOnDegrees(phase):0.#}\u00B0")));

    /// <summary>A hot loop by the name the brief gives its switch node; where the brief gives none, by its place in the copper.</summary>
    internal static string NameOf(HotLoopFacts loop, Review review) =>
        review.Nets.FirstOrDefault(net => ReferenceEquals(net.Bound.Net, loop.SwitchNode))?.Bound.Review.Name
            ?? FormattableString.Invariant($"converter {loop.Converter}, phase {loop.Phase}");

    public static void Write(Terminal terminal, Review review)
    {
        foreach (ConverterFacts facts in review.Brief!.Converters.Select(section => section.Facts))
        {
            WriteOperatingPoint(terminal, facts);
        }

        WriteSwitchNodes(terminal, review.SwitchNodes);
        WriteHotLoops(terminal, review);
    }

    public static void Write(Utf8JsonWriter json, Review review)
    {
        json.WriteStartArray("converters");
        foreach (ConverterFacts facts in review.Brief!.Converters.Select(section => section.Facts))
        {
            WriteOperatingPoint(json, facts);
        }

        json.WriteEndArray();
        json.WriteStartArray("switchNodes");
        foreach (SwitchNodeFacts node in review.SwitchNodes)
        {
            json.WriteStartObject();
            json.WriteString("name", node.Net.Bound.Review.Name);
            json.WriteNumberOrNull("areaM2", node.AreaM2);
            json.WriteStartArray("layers");
            foreach ((int layer, double areaM2) in node.LayerAreasM2)
            {
                json.WriteStartObject();
                json.WriteNumber("layer", layer);
                json.WriteNumberOrNull("areaM2", areaM2);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteNumberOrNull("leastAreaM2", node.LeastAreaM2);
            json.WriteNumberOrNull("capacitanceF", node.CapacitanceF);
            if (node is { DisplacementA: { } displacementA, SwitchingLossW: { } lossW })
            {
                json.WriteNumberOrNull("displacementA", displacementA);
                json.WriteNumberOrNull("switchingLossW", lossW);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("hotLoops");
        foreach (HotLoopFacts loop in review.HotLoops)
        {
            json.WriteStartObject();
            json.WriteNumber("converter", loop.Converter);
            json.WriteNumber("phase", loop.Phase);
            json.WriteString("switchNode", loop.SwitchNode.Name);
            json.WriteString("capacitor", loop.Capacitor.Name);
            json.WriteNumberOrNull("areaM2", loop.AreaM2);
            json.WriteNumberOrNull("lengthM", loop.LengthM);
            json.WriteNumberOrNull("widthM", loop.WidthM);
            if (loop is { HeightM: { } heightM, Inductance: { } inductance })
            {
                json.WriteNumberOrNull("heightM", heightM);
                json.WriteNumberOrNull("inductanceH", inductance.InductanceH);
                json.WriteBoolean("inductanceIsInRange", inductance.Basis.IsInRange);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteOperatingPoint(Terminal terminal, ConverterFacts facts)
    {
        TextWriter writer = terminal.Out;
        BuckStage stage = facts.Stage;
        writer.WriteLine($"Converter {facts.Name}: {QuantityText.Voltage(stage.InputV)} to {QuantityText.Voltage(facts.OutputV)}, {QuantityText.Current(stage.OutputA)}; "
            + $"duty {QuantityText.Percent(stage.Duty)}, {PhasesText(stage)}");
        writer.WriteLine($"  ripple {QuantityText.Current(stage.PhaseRippleA)} in each inductor, {QuantityText.Current(stage.OutputRippleA)} summed, at {QuantityText.Frequency(stage.RippleHz)}"
            + (facts.OutputRipple is { } ripple ? $"; on the output capacitors at most {QuantityText.Voltage(ripple.ResistiveV + ripple.CapacitiveV)}" : ""));
        TextTable table = new(["  Stretch", "Average", "RMS"], [false, true, true]);
        foreach ((string word, StageCurrent current) in Currents(facts))
        {
            table.Add([$"  {word}", QuantityText.Current(current.AverageA), QuantityText.Current(current.RmsA)]);
        }

        table.Write(writer, terminal.Width);
        writer.WriteLine($"  {Basis}");
        writer.WriteLine();
    }

    private static void WriteOperatingPoint(Utf8JsonWriter json, ConverterFacts facts)
    {
        BuckStage stage = facts.Stage;
        json.WriteStartObject();
        json.WriteString("name", facts.Name);
        json.WriteNumberOrNull("duty", stage.Duty);
        json.WriteNumber("phases", stage.Phases);
        json.WriteNumberOrNull("phaseRippleA", stage.PhaseRippleA);
        json.WriteNumberOrNull("outputRippleA", stage.OutputRippleA);
        json.WriteNumberOrNull("rippleHz", stage.RippleHz);
        if (facts.OutputRipple is { } ripple)
        {
            json.WriteNumberOrNull("outputRippleResistiveV", ripple.ResistiveV);
            json.WriteNumberOrNull("outputRippleCapacitiveV", ripple.CapacitiveV);
        }

        json.WriteStartObject("currents");
        foreach ((PathStage member, _, string key) in s_stages)
        {
            StageCurrent current = facts.CurrentOf(member);
            json.WriteStartObject(key);
            json.WriteNumberOrNull("averageA", current.AverageA);
            json.WriteNumberOrNull("rmsA", current.RmsA);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteSwitchNodes(Terminal terminal, IReadOnlyList<SwitchNodeFacts> nodes)
    {
        TextWriter writer = terminal.Out;
        if (nodes.Count == 0)
        {
            return;
        }

        TextTable table = new(["Switch node", "Copper", "Least needed", "To return", "Edge current", "C V² f"], [false, true, true, true, true, true]);
        foreach (SwitchNodeFacts node in nodes)
        {
            table.Add([node.Net.Bound.Review.Name, QuantityText.Area(node.AreaM2), QuantityText.Area(node.LeastAreaM2), QuantityText.Capacitance(node.CapacitanceF),
                node.DisplacementA is { } displacementA ? QuantityText.Current(displacementA) : "-", node.SwitchingLossW is { } lossW ? QuantityText.Power(lossW) : "-"]);
        }

        table.Write(writer, terminal.Width);
        writer.WriteLine(SwitchNodeBasis);
        writer.WriteLine();
    }

    private static void WriteHotLoops(Terminal terminal, Review review)
    {
        TextWriter writer = terminal.Out;
        if (review.HotLoops.Count == 0)
        {
            return;
        }

        TextTable table = new(["Hot loop, best of its converter first", "Capacitor", "Length", "Area", "Over plane", "Inductance"], [false, false, true, true, true, true]);
        foreach (HotLoopFacts loop in review.HotLoops)
        {
            table.Add([NameOf(loop, review), loop.Capacitor.Name, QuantityText.Length(loop.LengthM), QuantityText.Area(loop.AreaM2),
                loop.HeightM is { } heightM ? QuantityText.Length(heightM) : "none", loop.Inductance is { } inductance ? QuantityText.Inductance(inductance.InductanceH) : "-"]);
        }

        table.Write(writer, terminal.Width);
        writer.WriteLine(HotLoopBasis);
        writer.WriteLine();
    }
}

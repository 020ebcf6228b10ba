using CopperPath.Brief.Yaml;
using CopperPath.Converter;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads <c>converters</c>.</summary>
internal static class ConverterSectionReader
{
    /// <summary>No board carries more at its output; beyond it a prefix was mistaken.</summary>
    private const double MostCurrentA = 5e3;

    private const int MostPhases = 64;
    private const int MostParts = 1000;

    /// <summary>An edge of present-day switches; only the displacement current of the switch node rests on it. Common practice, no source.</summary>
    private const double DefaultEdgeS = 5e-9;

    public static List<ConverterSection> ReadAll(SectionReader root, BriefContext context)
    {
        List<ConverterSection> converters = [];
        if (root.Optional("converters") is not { } node)
        {
            return converters;
        }

        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one converter"))
        {
            if (SectionReader.Open(item, BriefKeys.Converter, context.Sink) is not { } section
                || Read(section, context) is not { } converter)
            {
                continue;
            }

            if (converters.Find(other => other.Facts.Name == converter.Facts.Name) is { } earlier)
            {
                context.Sink.Error(BriefCodes.RepeatedName, section.PositionOf("name"),
                    $"converter name '{converter.Facts.Name}' again", $"another name; line {earlier.Position.Line} uses it");
            }

            converters.Add(converter);
        }

        return converters;
    }

    private static ConverterSection? Read(SectionReader section, BriefContext context)
    {
        string? name = section.Required("name", "`name: core`: what is the converter to be called?") is { } nameNode
            ? context.Values.Text(nameNode, "a name for the converter") : null;
        double? inputV = Required("input voltage", "`input voltage: 12 V`", Dimension.Voltage, 0.1, 2e3, QuantityText.Voltage);
        double? outputV = Required("output voltage", "`output voltage: 0.9 V`", Dimension.Voltage, 0.01, 2e3, QuantityText.Voltage);
        double? loadA = Required("load current", "`load current: 90 A`", Dimension.Current, 1e-3, MostCurrentA, QuantityText.Current);
        int? phases = section.Required("phases", "`phases: 4`: how many phases does it claim?") is { } phasesNode
            ? context.Values.WholeNumber(phasesNode, 1, MostPhases) : null;
        double? switchingHz = Required("switching frequency", "`switching frequency: 500 kHz`, of each phase", Dimension.Frequency, 1e3, 1e9, QuantityText.Frequency);
        double? inductanceH = Required("inductance", "`inductance: 0.25 uH`, of each phase", Dimension.Inductance, 1e-10, 1, QuantityText.Inductance);
        double? efficiency = ReadEfficiency(section, name ?? "?", context);
        LossShares? shares = ReadLossShares(section, name ?? "?", hasLosses: efficiency < 1, context);
        double? edgeS = DefaultEdgeS;
        if (section.Optional("edge time") is { } edge)
        {
            edgeS = context.Values.QuantitySi(edge, Dimension.Time, 1e-11, 1e-4, QuantityText.Time);
        }
        else
        {
            context.StateDefault($"converter '{name ?? "?"}': edge time: {QuantityText.Time(DefaultEdgeS)}");
        }

        int? highSides = ReadCount("high-side switches");
        int? lowSides = ReadCount("low-side switches");
        CapacitorBank? inputBank = ReadBank(section, "input capacitors", context);
        CapacitorBank? outputBank = ReadBank(section, "output capacitors", context);
        SupplyConnector? connector = ReadConnector(section, context);
        if (name is null || inputV is null || outputV is null || loadA is null || switchingHz is null || inductanceH is null
            || phases is null || efficiency is null || shares is null || edgeS is null || highSides is null || lowSides is null)
        {
            return null;
        }

        if (outputV / efficiency >= inputV)
        {
            context.Sink.Error(BriefCodes.NotABuck, section.PositionOf("output voltage"),
                $"{QuantityText.Voltage(outputV.Value)} from {QuantityText.Voltage(inputV.Value)} at an efficiency of {QuantityText.Ratio(efficiency.Value)}",
                "an output below input times efficiency; converters that raise the voltage are not understood");
            return null;
        }

        BuckStage stage = new(phases.Value, inputV.Value, outputV.Value / efficiency.Value, loadA.Value, inductanceH.Value, switchingHz.Value);
        if (stage.PhaseRippleA > MostCurrentA)
        {
            context.Sink.Error(BriefCodes.OutOfRange, section.PositionOf("inductance"),
                $"a ripple of {QuantityText.Current(stage.PhaseRippleA)} in each inductor of {QuantityText.Inductance(inductanceH.Value)} at {QuantityText.Frequency(switchingHz.Value)}",
                $"at most {QuantityText.Current(MostCurrentA)}: was a prefix mistaken?");
            return null;
        }

        return new ConverterSection(
            new ConverterFacts(name, outputV.Value, efficiency.Value, stage, inputBank, outputBank, highSides.Value, lowSides.Value, connector, edgeS.Value)
            {
                LossShares = shares,
            },
            section.Position);

        double? Required(string key, string example, Dimension dimension, double least, double most, Func<double, string> print) =>
            section.Required(key, example) is { } node ? context.Values.QuantitySi(node, dimension, least, most, print) : null;

        int? ReadCount(string key) => section.Optional(key) is { } node ? context.Values.WholeNumber(node, 1, MostParts) : section.Has(key) ? null : 1;
    }

    private static double? ReadEfficiency(SectionReader section, string name, BriefContext context)
    {
        if (section.Optional("efficiency") is not { } node)
        {
            context.StateDefault($"converter '{name}': efficiency: 1, no losses; duty and feed current come out low");
            return section.Has("efficiency") ? null : 1;
        }

        if (context.Values.Ratio(node, least: 0.01) is not { } efficiency)
        {
            return null;
        }

        if (efficiency > 1)
        {
            context.Sink.Error(BriefCodes.Number, node.Position, node.Shape, "a plain number from 0.01 to 1, e.g. `0.9`");
            return null;
        }

        return efficiency;
    }

    private static LossShares? ReadLossShares(SectionReader converter, string name, bool hasLosses, BriefContext context)
    {
        LossShares common = LossShares.Common;
        if (converter.Optional("loss shares") is not { } node)
        {
            if (hasLosses)
            {
                context.StateDefault(FormattableString.Invariant(
                    $"converter '{name}': loss shares: high side {common.HighSide}, low side {common.LowSide}, inductor {common.Inductor}, rest {common.Rest} (common practice, no source)"));
            }

            return converter.Has("loss shares") ? null : common;
        }

        if (SectionReader.Open(node, BriefKeys.LossShares, context.Sink) is not { } section
            || Share("high side") is not { } highSide || Share("low side") is not { } lowSide
            || Share("inductor") is not { } inductor || Share("rest") is not { } rest)
        {
            return null;
        }

        LossShares shares = new(highSide, lowSide, inductor, rest);
        if (Math.Abs(shares.Sum - 1) <= LossShares.SumTolerance)
        {
            return shares;
        }

        context.Sink.Error(BriefCodes.LossShares, section.Position, FormattableString.Invariant($"shares that add to {shares.Sum:0.###}"), "shares that add to 1");
        return null;

        double? Share(string key) => section.Optional(key) is { } share ? context.Values.Number(share, 0, 1) : section.Has(key) ? null : 0;
    }

    private static CapacitorBank? ReadBank(SectionReader converter, string key, BriefContext context)
    {
        if (converter.Optional(key) is not { } node)
        {
            return null;
        }

        List<CapacitorGroup> groups = [];
        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one `{ count: 4, value: 1800 uF, esr: 8 mohm }`"))
        {
            if (SectionReader.Open(item, BriefKeys.CapacitorGroup, context.Sink) is not { } section)
            {
                continue;
            }

            int? count = section.Required("count", "`count: 4`: how many of them?") is { } countNode
                ? context.Values.WholeNumber(countNode, 1, MostParts) : null;
            double? valueF = section.Required("value", "`value: 1800 uF`, of each, at its bias") is { } value
                ? context.Values.QuantitySi(value, Dimension.Capacitance, 1e-12, 100, QuantityText.Capacitance) : null;
            double? esrOhm = section.Required("esr", "`esr: 8 mohm`, equivalent series resistance of each") is { } esr
                ? context.Values.QuantitySi(esr, Dimension.Resistance, 0, 100, QuantityText.Resistance) : null;
            if (count is not null && valueF is not null && esrOhm is not null)
            {
                groups.Add(new CapacitorGroup(count.Value, valueF.Value, esrOhm.Value));
            }
        }

        return groups.Count == 0 ? null : new CapacitorBank(groups);
    }

    private static SupplyConnector? ReadConnector(SectionReader converter, BriefContext context)
    {
        if (converter.Optional("connector") is not { } node
            || SectionReader.Open(node, BriefKeys.SupplyConnector, context.Sink) is not { } section)
        {
            return null;
        }

        int? pins = section.Required("pins", "`pins: 3`: how many pins share the supply current?") is { } pinsNode
            ? context.Values.WholeNumber(pinsNode, 1, MostParts) : null;
        double? ratingA = section.Required("rating", "`rating: 9 A`: what may one pin carry with its neighbours loaded?") is { } rating
            ? context.Values.QuantitySi(rating, Dimension.Current, 1e-3, 1e3, QuantityText.Current) : null;
        return pins is null || ratingA is null ? null : new SupplyConnector(pins.Value, ratingA.Value);
    }
}

using CopperPath.Brief.Yaml;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads <c>limits</c>, of the board and of a net.</summary>
internal static class LimitsSectionReader
{
    internal static readonly IReadOnlyList<(string Word, JudgingRule Value)> JudgingRules =
        [("board", JudgingRule.Board), ("ipc-2152", JudgingRule.Ipc2152), ("ipc-2221", JudgingRule.Ipc2221), ("all", JudgingRule.All)];

    private const double DefaultSwitchNodeAreaRatio = 2;

    // Beyond what any laminate survives; a larger number is an absolute temperature by mistake. Common practice, no source.
    private const double LeastRiseK = 0.1;
    private const double MostRiseK = 200;

    // No laminate works below the one or above the other. Common practice, no source.
    private const double LeastLimitK = Units.ZeroCelsiusK + 40;
    private const double MostLimitK = Units.ZeroCelsiusK + 300;

    public static ReviewLimits? Read(SectionReader root, BriefContext context)
    {
        if (root.Required("limits", "`limits:` with `temperature rise: 30 K`: what may the copper do?") is not { } node
            || SectionReader.Open(node, BriefKeys.Limits, context.Sink) is not { } section)
        {
            return null;
        }

        double? riseK = section.Required(
            "temperature rise", "`temperature rise: 30 K`: how much may the copper's own current warm it?") is { } rise
            ? ReadRise(rise, context) : null;
        double? dropV = ReadVoltageDrop(section, context);
        double? mostK = LaminateLimit.OperatingK;
        if (section.Optional("temperature") is { } most)
        {
            mostK = context.Values.QuantitySi(most, Dimension.Temperature, LeastLimitK, MostLimitK, QuantityText.Temperature);
        }
        else
        {
            context.StateDefault($"limits: temperature: {QuantityText.Temperature(LaminateLimit.OperatingK)}, the operating temperature of many FR-4 laminates (from memory)");
        }

        JudgingRule judgeBy = JudgingRule.Board;
        if (section.Optional("judge by") is { } rule)
        {
            judgeBy = context.Values.Choice(rule, JudgingRules) ?? judgeBy;
        }
        else
        {
            context.StateDefault("limits: judge by: board, its own temperatures");
        }

        double areaRatio = DefaultSwitchNodeAreaRatio;
        if (section.Optional("switch node area ratio") is { } ratio)
        {
            areaRatio = context.Values.Ratio(ratio, least: 1) ?? areaRatio;
        }
        else
        {
            context.StateDefault($"limits: switch node area ratio: {QuantityText.Ratio(areaRatio)}");
        }

        double? slotM = section.Optional("plane slot length") is { } slot
            ? context.Values.QuantitySi(slot, Dimension.Length, Sign.Positive) : null;
        if (!section.Has("plane slot length"))
        {
            context.StateDefault("limits: plane slot length: none, slots in planes are not judged");
        }

        PracticeLimits practice = PracticeLimitsReader.Read(section, context);
        return riseK is null || mostK is null ? null
            : new ReviewLimits(riseK.Value, dropV, judgeBy, areaRatio, slotM) { TemperatureK = mostK.Value, Practice = practice };
    }

    /// <summary>A net's own limits over those of the board.</summary>
    public static NetLimits? ReadForNet(SectionReader net, ReviewLimits? board, string netName, BriefContext context)
    {
        SectionReader? section = net.Optional("limits") is { } node
            ? SectionReader.Open(node, BriefKeys.NetLimits, context.Sink) : null;
        double? riseK = section?.Optional("temperature rise") is { } rise ? ReadRise(rise, context) : board?.TemperatureRiseK;
        double? dropV = section is not null && section.Has("voltage drop")
            ? ReadVoltageDrop(section, context) : board?.VoltageDropV;
        if (riseK is null)
        {
            return null;
        }

        if (dropV is null)
        {
            context.StateDefault($"net '{netName}': voltage drop: no limit, the drop is reported and not judged");
        }

        return new NetLimits(riseK.Value, dropV);
    }

    private static double? ReadRise(YamlNode node, BriefContext context) => context.Values.QuantitySi(
        node, Dimension.TemperatureDifference, LeastRiseK, MostRiseK, QuantityText.TemperatureDifference);

    private static double? ReadVoltageDrop(SectionReader section, BriefContext context) =>
        section.Optional("voltage drop") is { } drop
            ? context.Values.QuantitySi(drop, Dimension.Voltage, Sign.Positive) : null;
}

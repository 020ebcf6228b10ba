using CopperPath.Brief.Yaml;
using CopperPath.OutsideText;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads <c>faults</c>.</summary>
internal static class FaultSectionReader
{
    // Beyond these a unit was mistaken. Common practice, no source.
    private const double LeastLimitK = Units.ZeroCelsiusK + 30;
    private const double MostLimitK = Units.ZeroCelsiusK + 1083;

    private static readonly string[] s_stated = ["current", "time"];
    private static readonly string[] s_charged = ["capacitance", "voltage", "ramp"];

    public static List<FaultCase> ReadAll(SectionReader root, IReadOnlyList<NetReview> nets, BriefContext context) =>
        root.Optional("faults") is not { } node ? []
            : [.. context.Values.OneOrMany(node, "at least one fault").Select(item => Read(item, nets, context)).OfType<FaultCase>()];

    private static FaultCase? Read(YamlNode node, IReadOnlyList<NetReview> nets, BriefContext context)
    {
        if (SectionReader.Open(node, BriefKeys.Fault, context.Sink) is not { } section)
        {
            return null;
        }

        string? name = section.Required("name", "`name: short at the output`: what happens?") is { } nameNode
            ? context.Values.Text(nameNode, "a name for the fault") : null;
        string? stretch = section.Required("stretch", "`stretch: Feed`: through which entry of `nets` does it run?") is { } stretchNode
            ? context.Values.Text(stretchNode, "the name of an entry of `nets`") : null;
        (double CurrentA, double TimeS)? flow = ReadFlow(section, context);
        double? limitK = LaminateLimit.OperatingK;
        if (section.Optional("limit") is { } limit)
        {
            limitK = context.Values.QuantitySi(limit, Dimension.Temperature, LeastLimitK, MostLimitK, QuantityText.Temperature);
        }
        else
        {
            context.StateDefault($"fault '{name}': limit: {QuantityText.Temperature(LaminateLimit.OperatingK)}");
        }

        if (stretch is not null && nets.All(net => net.Name != stretch))
        {
            context.Sink.Error(BriefCodes.FaultStretch, section.PositionOf("stretch"), () => ($"the stretch '{stretch}'",
                "the name of an entry of `nets`" + (NearestName.Of(stretch, nets.Select(net => net.Name)) is { } near ? $"; did you mean '{near}'?" : "")));
        }

        return name is null || stretch is null || flow is null || limitK is null ? null
            : new FaultCase(name, stretch, flow.Value.CurrentA, flow.Value.TimeS, limitK.Value, section.Position);
    }

    private static (double CurrentA, double TimeS)? ReadFlow(SectionReader section, BriefContext context)
    {
        bool isStated = s_stated.All(section.Has) && !s_charged.Any(section.Has);
        bool isCharged = s_charged.All(section.Has) && !s_stated.Any(section.Has);
        if (isStated == isCharged)
        {
            context.Sink.Error(BriefCodes.FaultCurrent, section.Position, "neither one nor the other way to state the current",
                "`current` with `time`, or `capacitance` with `voltage` and `ramp`");
            return null;
        }

        if (isStated)
        {
            double? currentA = Positive("current", Dimension.Current);
            double? timeS = Positive("time", Dimension.Time);
            return currentA is null || timeS is null ? null : (currentA.Value, timeS.Value);
        }

        double? capacitanceF = Positive("capacitance", Dimension.Capacitance);
        double? stepV = Positive("voltage", Dimension.Voltage);
        double? rampS = Positive("ramp", Dimension.Time);
        return capacitanceF is null || stepV is null || rampS is null ? null
            : (capacitanceF.Value * stepV.Value / rampS.Value, rampS.Value);

        double? Positive(string key, Dimension dimension) =>
            section.Optional(key) is { } node ? context.Values.QuantitySi(node, dimension, Sign.Positive) : null;
    }
}

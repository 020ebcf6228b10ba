using CopperPath.Brief.Yaml;
using CopperPath.Geometry;

namespace CopperPath.Brief;

/// <summary>Reads <c>waivers</c>.</summary>
internal static class WaiverSectionReader
{
    public static List<Waiver> ReadAll(SectionReader root, BriefContext context)
    {
        List<Waiver> waivers = [];
        if (root.Optional("waivers") is not { } node)
        {
            return waivers;
        }

        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one waiver"))
        {
            if (SectionReader.Open(item, BriefKeys.Waiver, context.Sink) is { } section
                && Read(section, context) is { } waiver)
            {
                waivers.Add(waiver);
            }
        }

        return waivers;
    }

    private static Waiver? Read(SectionReader section, BriefContext context)
    {
        string? rule = Text("rule", "`rule: neck`: which rule is waived?");
        string? net = Text("net", "`net: Feed`: for which stretch of the brief?");
        string? reason = Text("reason", "`reason: carries the current for 10 ms only`: why is it accepted?");
        string? by = Text("by", "`by: lead engineer`: who accepts it?");
        PointNm? near = section.Optional("near") is { } place && SectionReader.Open(place, BriefKeys.Point, context.Sink) is { } point
            ? PlaceReader.PointOf(point, context) : null;
        string? fingerprint = section.Optional("fingerprint") is { } files
            ? context.Values.Text(files, "the fingerprint of the board's files, as `check` prints it") : null;
        return rule is null || net is null || reason is null || by is null ? null
            : new Waiver(rule, net, near, reason, by, fingerprint, section.Position);

        string? Text(string key, string question) =>
            section.Required(key, question) is { } value ? context.Values.Text(value, question) : null;
    }
}

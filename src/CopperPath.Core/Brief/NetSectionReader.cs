using CopperPath.Brief.Yaml;
using CopperPath.Geometry;

namespace CopperPath.Brief;

/// <summary>Reads <c>nets</c>.</summary>
internal static class NetSectionReader
{
    internal static readonly IReadOnlyList<(string Word, NetRole Value)> Roles =
    [
        ("feed", NetRole.Feed),
        ("input", NetRole.Input),
        ("switch node", NetRole.SwitchNode),
        ("output", NetRole.Output),
        ("return", NetRole.Return),
        ("other", NetRole.Other),
    ];

    /// <summary>How an entry's currents add to those of the other entries of its net; the value tells whether they alternate.</summary>
    internal static readonly IReadOnlyList<(string Word, bool Value)> Flows = [("direct", false), ("alternating", true)];

    public static List<NetReview> ReadAll(SectionReader root, ReviewLimits? limits, BriefContext context)
    {
        List<NetReview> nets = [];
        if (root.Required("nets", "`nets:` with at least one net: which copper is to be reviewed?") is not { } node)
        {
            return nets;
        }

        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one net"))
        {
            if (SectionReader.Open(item, BriefKeys.Net, context.Sink) is not { } section
                || Read(section, limits, context) is not { } net)
            {
                continue;
            }

            if (nets.Find(other => other.Name == net.Name) is { } earlier)
            {
                context.Sink.Error(BriefCodes.RepeatedName, section.PositionOf("name"),
                    $"net name '{net.Name}' again", $"another name; line {earlier.Position.Line} uses it");
            }

            nets.Add(net);
        }

        return nets;
    }

    private static NetReview? Read(SectionReader section, ReviewLimits? limits, BriefContext context)
    {
        string? name = section.Required("name", "`name: feed`: what is this net to be called in the review?") is { } nameNode
            ? context.Values.Text(nameNode, "a name for the net") : null;
        NetSelector? selector = ReadSelector(section, context);
        string spokenName = name ?? "?";
        NetRole role = NetRole.Other;
        if (section.Optional("role") is { } roleNode)
        {
            role = context.Values.Choice(roleNode, Roles) ?? role;
        }
        else
        {
            context.StateDefault($"net '{spokenName}': role: other");
        }

        string? siblings = section.Optional("siblings") is { } siblingsNode
            ? context.Values.Text(siblingsNode, "the name of a group of nets") : null;
        NetLimits? netLimits = LimitsSectionReader.ReadForNet(section, limits, spokenName, context);
        IReadOnlyList<Terminal> terminals = TerminalSectionReader.ReadAll(section, spokenName, context);
        bool? alternates = section.Optional("flow") is { } flow ? context.Values.Choice(flow, Flows) : null;
        string? alternative = section.Optional("alternative") is { } alternativeNode
            ? context.Values.Text(alternativeNode, "a word that entries which flow together share") : null;
        return name is null || selector is null || netLimits is null ? null
            : new NetReview(name, selector, role, siblings, netLimits, terminals, section.Position)
            {
                IsAlternating = alternates ?? terminals.Any(terminal => terminal.Derived is { IsRms: true }),
                Alternative = alternative,
            };
    }

    internal static NetSelector? ReadSelector(SectionReader section, BriefContext context)
    {
        if (section.Has("net") == section.Has("at"))
        {
            context.Sink.Error(BriefCodes.NetSelector, section.Position,
                section.Has("net") ? "both `net` and `at`" : "neither `net` nor `at`",
                "exactly one: `net: NAME` as in the files, or `at: { layer: top, x: 1 mm, y: 2 mm }`, a point on its copper");
            return null;
        }

        if (section.Optional("net") is { } byName)
        {
            return context.Values.Text(byName, "the net's name in the files") is { } netName ? new NetByName(netName) : null;
        }

        if (section.Optional("at") is not { } at || SectionReader.Open(at, BriefKeys.PointOnLayer, context.Sink) is not { } place)
        {
            return null;
        }

        LayerReference? layer = PlaceReader.LayerOf(place, context);
        PointNm? point = PlaceReader.PointOf(place, context);
        return layer is null || point is null ? null : new NetAtPoint(layer.Value, point.Value);
    }
}

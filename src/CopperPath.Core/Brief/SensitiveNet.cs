using CopperPath.Brief.Yaml;
using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>A net that must keep away from switch nodes, such as the feedback of a converter.</summary>
/// <param name="Name">The reader's name of it.</param>
/// <param name="Selector">Which copper.</param>
/// <param name="Position">Where the brief names it.</param>
public sealed record SensitiveNet(string Name, NetSelector Selector, SourcePosition Position);

/// <summary>Reads <c>sensitive nets</c>.</summary>
internal static class SensitiveNetReader
{
    public static List<SensitiveNet> ReadAll(SectionReader root, BriefContext context)
    {
        List<SensitiveNet> nets = [];
        if (root.Optional("sensitive nets") is not { } node)
        {
            return nets;
        }

        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one net"))
        {
            if (SectionReader.Open(item, BriefKeys.SensitiveNet, context.Sink) is not { } section)
            {
                continue;
            }

            string? name = section.Required("name", "`name: feedback`: what is this net to be called?") is { } nameNode
                ? context.Values.Text(nameNode, "a name for the net") : null;
            NetSelector? selector = NetSectionReader.ReadSelector(section, context);
            if (name is not null && selector is not null)
            {
                nets.Add(new SensitiveNet(name, selector, section.Position));
            }
        }

        return nets;
    }
}

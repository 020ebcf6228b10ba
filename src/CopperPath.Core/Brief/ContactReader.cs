using CopperPath.Brief.Yaml;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads the contacts of a terminal.</summary>
internal static class ContactReader
{
    /// <summary>The contacts in the order of <see cref="BriefKeys.Terminal"/>; faulty ones are left out.</summary>
    public static List<Contact> ReadAll(SectionReader terminal, BriefContext context)
    {
        List<Contact> contacts = [];
        Gather("pins", "at least one pin such as `J1.1`", node => ReadPin(node, context));
        Gather("component", "a designator such as `U1`", node =>
            context.Values.Text(node, "a designator such as `U1`") is { } name ? new ComponentContact(name, node.Position) : null);
        Gather("pads", "at least one `{ layer, x, y }`", node => ReadPad(node, context));
        Gather("pads in", "at least one `{ layer, from, to }`", node =>
            ReadBox(node, context) is var (layer, box) ? new PadsInContact(layer, box, node.Position) : null);
        Gather("holes", "at least one `{ x, y }`", node =>
            SectionReader.Open(node, BriefKeys.Point, context.Sink) is { } section
            && PlaceReader.PointOf(section, context) is { } at ? new HoleContact(at, node.Position) : null);
        Gather("rectangle", "a `{ layer, from, to }`", node =>
            ReadBox(node, context) is var (layer, box) ? new RectangleContact(layer, box, node.Position) : null);
        Gather("circle", "a `{ layer, x, y, diameter }`", node => ReadCircle(node, context));
        return contacts;

        void Gather(string key, string what, Func<YamlNode, Contact?> read)
        {
            if (terminal.Optional(key) is { } value)
            {
                contacts.AddRange(context.Values.OneOrMany(value, what).Select(read).OfType<Contact>());
            }
        }
    }

    /// <summary>A pin <c>J1.12</c>: the designator ends at the first point.</summary>
    private static PinContact? ReadPin(YamlNode node, BriefContext context)
    {
        string written = node is YamlText text ? text.Text.Trim() : "";
        int point = written.IndexOf('.', StringComparison.Ordinal);
        if (point > 0 && point < written.Length - 1)
        {
            return new PinContact(written[..point], written[(point + 1)..], node.Position);
        }

        context.Sink.Error(BriefCodes.Pin, node.Position, node.Shape, "component and pin joined by a point, e.g. `J1.1`");
        return null;
    }

    private static PadContact? ReadPad(YamlNode node, BriefContext context)
    {
        if (SectionReader.Open(node, BriefKeys.PointOnLayer, context.Sink) is not { } section)
        {
            return null;
        }

        LayerReference? layer = PlaceReader.LayerOf(section, context);
        PointNm? at = PlaceReader.PointOf(section, context);
        return layer is null || at is null ? null : new PadContact(layer.Value, at.Value, node.Position);
    }

    internal static (LayerReference Layer, BoxNm Box)? ReadBox(YamlNode node, BriefContext context)
    {
        if (SectionReader.Open(node, BriefKeys.BoxOnLayer, context.Sink) is not { } section)
        {
            return null;
        }

        LayerReference? layer = PlaceReader.LayerOf(section, context);
        BoxNm? box = PlaceReader.BoxOf(section, context);
        return layer is null || box is null ? null : (layer.Value, box.Value);
    }

    internal static CircleContact? ReadCircle(YamlNode node, BriefContext context)
    {
        if (SectionReader.Open(node, BriefKeys.CircleOnLayer, context.Sink) is not { } section)
        {
            return null;
        }

        LayerReference? layer = PlaceReader.LayerOf(section, context);
        PointNm? centre = PlaceReader.PointOf(section, context);
        long? diameterNm = section.Required("diameter", "`diameter: 3 mm`") is { } diameter
            ? context.Values.LengthNm(diameter, Sign.Positive) : null;
        return layer is null || centre is null || diameterNm is null ? null
            : new CircleContact(layer.Value, centre.Value, diameterNm.Value, node.Position);
    }
}

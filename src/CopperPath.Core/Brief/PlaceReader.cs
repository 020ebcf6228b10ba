using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads the parts of a place on the board: layer, point, box.</summary>
internal static class PlaceReader
{
    public static LayerReference? LayerOf(SectionReader section, BriefContext context) =>
        section.Required("layer", "`layer: top`: which copper layer?") is { } node ? context.Values.Layer(node) : null;

    public static PointNm? PointOf(SectionReader section, BriefContext context)
    {
        long? xNm = section.Required("x", "`x: 1 mm`, in the coordinates of the files") is { } x
            ? context.Values.LengthNm(x, Sign.Any) : null;
        long? yNm = section.Required("y", "`y: 1 mm`, in the coordinates of the files") is { } y
            ? context.Values.LengthNm(y, Sign.Any) : null;
        return xNm is null || yNm is null ? null : new PointNm(xNm.Value, yNm.Value);
    }

    /// <summary>The box between two opposite corners, given in any order.</summary>
    public static BoxNm? BoxOf(SectionReader section, BriefContext context)
    {
        PointNm? from = section.Required("from", "`from: [1 mm, 2 mm]`, one corner") is { } fromNode
            ? context.Values.Corner(fromNode) : null;
        PointNm? to = section.Required("to", "`to: [3 mm, 4 mm]`, the opposite corner") is { } toNode
            ? context.Values.Corner(toNode) : null;
        if (from is null || to is null)
        {
            return null;
        }

        BoxNm box = BoxNm.Of([from.Value, to.Value]);
        if (box.WidthNm == 0 || box.HeightNm == 0)
        {
            context.Sink.Error(BriefCodes.EmptyBox, section.PositionOf("to"), "a box without area", "two opposite corners of a box");
            return null;
        }

        return box;
    }
}

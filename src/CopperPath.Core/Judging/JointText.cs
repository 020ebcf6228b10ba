using CopperPath.Electrical;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>How sentences call copper that carries a current together.</summary>
public static class JointText
{
    /// <returns>For example <c>copper of 1.20 mm² over 4 layers together</c>.</returns>
    public static string Of(JointSection section, Stackup stack)
    {
        string area = $"copper of {QuantityText.Area(section.SectionM2(stack))}";
        int lines = section.Layers.Sum(layer => layer.LineCount);
        string where = section.Layers.Count switch
        {
            0 => "",
            1 when section.IsClosed && lines == 1 => FormattableString.Invariant($" that closes round a contact or hole on layer {section.Layers[0].Layer}"),
            1 when lines == 1 => FormattableString.Invariant($" on layer {section.Layers[0].Layer}"),
            1 => FormattableString.Invariant($" in {lines} pieces side by side on layer {section.Layers[0].Layer}"),
            _ => FormattableString.Invariant($" over {section.Layers.Count} layers together"),
        };
        return area + where + (section.Holes.Count == 0 ? "" : $"{(section.Layers.Count == 0 ? " in" : " and")} {Counted.Of(section.Holes.Count, "plated hole")}");
    }
}

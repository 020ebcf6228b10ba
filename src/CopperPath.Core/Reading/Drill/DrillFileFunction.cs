using System.Globalization;
using CopperPath.Artwork;

namespace CopperPath.Reading.Drill;

/// <summary>The <c>.FileFunction</c> attribute of a drill file, such as <c>Plated,1,4,PTH</c>.</summary>
/// <param name="Text">The fields joined by commas, as written.</param>
/// <param name="Plating">Plating of the whole file; unknown for mixed files.</param>
/// <param name="FirstLayer">Uppermost copper layer, 1 = top; 0 when not given.</param>
/// <param name="LastLayer">Lowest copper layer; 0 when not given.</param>
internal sealed record DrillFileFunction(string Text, Plating Plating, int FirstLayer, int LastLayer)
{
    /// <summary>Null when the fields do not name a drill file.</summary>
    public static DrillFileFunction? Parse(ReadOnlySpan<string> fields)
    {
        if (fields is [] || (PlatingOf(fields[0]) == Plating.Unknown && fields[0] != "MixedPlating"))
        {
            return null;
        }

        int first = 0;
        int last = 0;
        bool hasSpan = fields.Length >= 3 && Layer(fields[1], out first) && Layer(fields[2], out last) && first < last;
        return new DrillFileFunction(
            string.Join(',', fields.ToArray()),
            PlatingOf(fields[0]),
            hasSpan ? first : 0,
            hasSpan ? last : 0);
    }

    public static Plating PlatingOf(string field) => field switch
    {
        "Plated" => Plating.Plated,
        "NonPlated" => Plating.NonPlated,
        _ => Plating.Unknown,
    };

    private static bool Layer(string text, out int layer) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out layer) && layer > 0;
}

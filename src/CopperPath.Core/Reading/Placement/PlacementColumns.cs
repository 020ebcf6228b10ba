using CopperPath.Quantities;

namespace CopperPath.Reading.Placement;

/// <summary>
/// Which field of a row is what, from the headings; -1 where there is no such column. Last, the length of one unit of the
/// coordinates as the headings state it, or null.
/// </summary>
internal sealed record PlacementColumns(
    int Designator, int X, int Y, int Rotation, int Side, int Value, int Package, long? CountNm)
{
    private const long NmPerMil = 25_400;

    private static readonly string[] _designator = ["designator", "refdes", "ref", "reference", "refdesignator", "name", "part", "component"];
    private static readonly string[] _x = ["midx", "centerx", "centrex", "posx", "x", "xaxis", "locationx", "xposition", "refx"];
    private static readonly string[] _y = ["midy", "centery", "centrey", "posy", "y", "yaxis", "locationy", "yposition", "refy"];
    private static readonly string[] _rotation = ["rotation", "rot", "angle", "orientation"];
    private static readonly string[] _side = ["side", "layer", "tb", "boardside", "mountside"];
    private static readonly string[] _value = ["value", "val", "comment"];
    private static readonly string[] _package = ["package", "footprint", "pattern", "pkg"];

    /// <summary>A heading may stand in a comment.</summary>
    public static string HeadingOf(string line) => line.TrimStart('#', ' ');

    /// <summary>
    /// The same columns for a row kept apart by blanks that has more fields than headings: values and packages hold
    /// blanks too, so what stands behind them moves to the right, and they themselves can not be told.
    /// </summary>
    public PlacementColumns MovedBy(int surplus)
    {
        int firstText = new[] { Value, Package }.Where(column => column >= 0).DefaultIfEmpty(-1).Min();
        return firstText < 0 ? this : this with
        {
            Designator = Moved(Designator),
            X = Moved(X),
            Y = Moved(Y),
            Rotation = Moved(Rotation),
            Side = Moved(Side),
            Value = -1,
            Package = -1,
        };

        int Moved(int column) => column > firstText ? column + surplus : column;
    }

    /// <summary>The columns of a heading line, or null when it does not name a designator, x and y.</summary>
    public static PlacementColumns? Of(IReadOnlyList<TableField> headings)
    {
        (string Word, long? CountNm)[] words = [.. headings.Select(heading => Split(heading.Text))];
        string[] names = [.. words.Select(word => word.Word)];
        int x = Find(names, _x);
        int y = Find(names, _y);
        int designator = Find(names, _designator);
        return x < 0 || y < 0 || designator < 0 ? null : new PlacementColumns(
            designator, x, y, Find(names, _rotation), Find(names, _side), Find(names, _value), Find(names, _package),
            words[x].CountNm ?? words[y].CountNm);
    }

    /// <summary>Length of a unit by its name, nanometres, or null when the name is none.</summary>
    public static long? UnitNm(string word) => word.ToLowerInvariant() switch
    {
        "mm" or "millimetre" or "millimetres" or "millimeter" or "millimeters" => Units.NmPerMm,
        "mil" or "mils" or "thou" => NmPerMil,
        "in" or "inch" or "inches" => Units.NmPerInch,
        _ => null,
    };

    /// <summary>
    /// Letters of a heading without the unit at its end: <c>Mid X (mm)</c> and <c>MidX[mm]</c> give midx and
    /// millimetres.
    /// </summary>
    private static (string Word, long? CountNm) Split(string heading)
    {
        string letters = string.Concat(heading.Where(char.IsAsciiLetter)).ToLowerInvariant();
        string[] parts = heading.Split(['(', ')', '[', ']', ' ', '_', '-', '/'], StringSplitOptions.RemoveEmptyEntries);
        string last = parts is [.., var end] ? end.Trim('.').ToLowerInvariant() : "";
        return parts.Length > 1 && UnitNm(last) is { } countNm ? (letters[..^last.Length], countNm) : (letters, null);
    }

    /// <summary>The first word of the list that a column bears decides: centres are better than origins.</summary>
    private static int Find(string[] names, string[] words) =>
        words.Select(word => Array.IndexOf(names, word)).FirstOrDefault(index => index >= 0, -1);
}

using System.Globalization;
using CopperPath.Artwork;

namespace CopperPath.Reading.BoardFiles;

/// <summary>How a source of evidence places a copper layer in the stack.</summary>
internal enum LayerPlace
{
    None,
    Top,
    Bottom,

    /// <summary>Layer number counted from the top copper.</summary>
    Numbered,

    /// <summary>A number that may count inner layers or all layers: <c>g1</c>, <c>in1</c>, <c>mid1</c>.</summary>
    InnerNumbered,

    /// <summary>A ground plane known by name only.</summary>
    Ground,

    /// <summary>A supply plane known by name only.</summary>
    Supply,

    /// <summary>A signal layer known by name only.</summary>
    Signal,
}

/// <summary>What one source of evidence says about a file.</summary>
/// <param name="Role">The role.</param>
/// <param name="Reason">The evidence in words.</param>
/// <param name="Place">Place of a copper layer.</param>
/// <param name="Number">Number that goes with the place, or 0.</param>
/// <param name="Plating">Plating of a drill file.</param>
/// <param name="Span">Layers of a drill file.</param>
internal sealed record RoleClaim(
    FileRole Role,
    string Reason,
    LayerPlace Place = LayerPlace.None,
    int Number = 0,
    Plating Plating = Plating.Unknown,
    DrillSpan? Span = null)
{
    /// <summary>Functions of the layer format that leave the copper as it is.</summary>
    private static readonly HashSet<string> _functionsApart = new(StringComparer.OrdinalIgnoreCase)
    {
        "Glue", "Carbonmask", "Goldmask", "Heatsinkmask", "Peelablemask", "Silvermask", "Tinmask", "Pads", "Vcut", "Viafill",
    };

    /// <summary>True for a role whose files make the copper, its holes or its edge.</summary>
    public bool MakesCopper => Role is FileRole.Copper or FileRole.Drill or FileRole.Profile;

    /// <summary>Reads a <c>.FileFunction</c> value as in Gerber, drill and job files; null when it is not known.</summary>
    public static RoleClaim? FromFileFunction(string function, string source)
    {
        string[] fields = function.Split(',', StringSplitOptions.TrimEntries);
        string reason = $"{source} says {function}";
        switch (fields[0].ToUpperInvariant())
        {
            case "COPPER":
                return fields.Length > 1 && fields[1] is ['L', .. string digits] && LayerNumber(digits) is { } layer
                    ? CopperClaim(layer, fields, reason)
                    : null;
            case "PLATED":
                return DrillClaim(Plating.Plated, fields, reason);
            case "NONPLATED":
                return DrillClaim(Plating.NonPlated, fields, reason);
            case "MIXEDPLATING":
                return DrillClaim(Plating.Unknown, fields, reason);
            case "PROFILE":
                return new RoleClaim(FileRole.Profile, reason);
            case "SOLDERMASK":
                return Sided(fields, FileRole.SolderMaskTop, FileRole.SolderMaskBottom, reason);
            case "PASTE" or "SOLDERPASTE":
                return Sided(fields, FileRole.PasteTop, FileRole.PasteBottom, reason);
            case "LEGEND":
                return Sided(fields, FileRole.LegendTop, FileRole.LegendBottom, reason);
            case "COMPONENT":
                return new RoleClaim(FileRole.Placement, reason);
            case "DRILLMAP" or "FABRICATIONDRAWING" or "ASSEMBLYDRAWING" or "ARRAYDRAWING" or "VCUTMAP"
                or "OTHERDRAWING" or "OTHER":
                return new RoleClaim(FileRole.Drawing, reason);
            default:
                return _functionsApart.Contains(fields[0]) ? new RoleClaim(FileRole.Other, reason) : null;
        }
    }

    /// <summary>True when both may be right: same role, and no contradiction on top, bottom or layer number.</summary>
    public bool AgreesWith(RoleClaim other)
    {
        if (Role != other.Role)
        {
            return false;
        }

        bool bothFixed = IsFixed(Place) && IsFixed(other.Place);
        return !bothFixed
            || (Place == other.Place && (Place != LayerPlace.Numbered || Number == other.Number))
            || (Place == LayerPlace.Numbered) != (other.Place == LayerPlace.Numbered);
    }

    private static bool IsFixed(LayerPlace place) => place is LayerPlace.Top or LayerPlace.Bottom or LayerPlace.Numbered;

    private static RoleClaim CopperClaim(int layer, string[] fields, string reason)
    {
        LayerPlace place = fields.Length > 2 && fields[2].Equals("Bot", StringComparison.OrdinalIgnoreCase) ? LayerPlace.Bottom
            : layer == 1 ? LayerPlace.Top
            : LayerPlace.Numbered;
        return new RoleClaim(FileRole.Copper, reason, place, layer);
    }

    private static RoleClaim DrillClaim(Plating plating, string[] fields, string reason)
    {
        DrillSpan? span = fields.Length > 2 && LayerNumber(fields[1]) is { } first && LayerNumber(fields[2]) is { } last && first < last
            ? new DrillSpan(first, last)
            : null;
        return new RoleClaim(FileRole.Drill, reason, Plating: plating, Span: span);
    }

    private static RoleClaim? Sided(string[] fields, FileRole top, FileRole bottom, string reason) =>
        fields.Length < 2 ? null
        : fields[1].Equals("Top", StringComparison.OrdinalIgnoreCase) ? new RoleClaim(top, reason)
        : fields[1].Equals("Bot", StringComparison.OrdinalIgnoreCase) ? new RoleClaim(bottom, reason)
        : null;

    private static int? LayerNumber(string digits) =>
        int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value is > 0 and <= 128 ? value : null;
}

using System.Globalization;
using System.Text.RegularExpressions;
using CopperPath.Artwork;

namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// What file names say by the habits of the trade (common practice, no standard): extensions first, then words.
/// </summary>
internal static partial class NameClaims
{
    private static readonly Dictionary<string, (FileRole Role, LayerPlace Place)> _extensions = new()
    {
        ["gtl"] = (FileRole.Copper, LayerPlace.Top),
        ["top"] = (FileRole.Copper, LayerPlace.Top),
        ["cmp"] = (FileRole.Copper, LayerPlace.Top),
        ["gbl"] = (FileRole.Copper, LayerPlace.Bottom),
        ["bot"] = (FileRole.Copper, LayerPlace.Bottom),
        ["sol"] = (FileRole.Copper, LayerPlace.Bottom),
        ["gts"] = (FileRole.SolderMaskTop, LayerPlace.None),
        ["smt"] = (FileRole.SolderMaskTop, LayerPlace.None),
        ["stc"] = (FileRole.SolderMaskTop, LayerPlace.None),
        ["gbs"] = (FileRole.SolderMaskBottom, LayerPlace.None),
        ["smb"] = (FileRole.SolderMaskBottom, LayerPlace.None),
        ["sts"] = (FileRole.SolderMaskBottom, LayerPlace.None),
        ["gtp"] = (FileRole.PasteTop, LayerPlace.None),
        ["crc"] = (FileRole.PasteTop, LayerPlace.None),
        ["gbp"] = (FileRole.PasteBottom, LayerPlace.None),
        ["crs"] = (FileRole.PasteBottom, LayerPlace.None),
        ["gto"] = (FileRole.LegendTop, LayerPlace.None),
        ["plc"] = (FileRole.LegendTop, LayerPlace.None),
        ["gbo"] = (FileRole.LegendBottom, LayerPlace.None),
        ["pls"] = (FileRole.LegendBottom, LayerPlace.None),
        ["gko"] = (FileRole.Profile, LayerPlace.None),
        ["gm1"] = (FileRole.Profile, LayerPlace.None),
        ["gml"] = (FileRole.Profile, LayerPlace.None),
        ["oln"] = (FileRole.Profile, LayerPlace.None),
        ["dim"] = (FileRole.Profile, LayerPlace.None),
        ["drl"] = (FileRole.Drill, LayerPlace.None),
        ["drd"] = (FileRole.Drill, LayerPlace.None),
        ["xln"] = (FileRole.Drill, LayerPlace.None),
        ["exc"] = (FileRole.Drill, LayerPlace.None),
        ["nc"] = (FileRole.Drill, LayerPlace.None),
        ["ncd"] = (FileRole.Drill, LayerPlace.None),
        ["ncdrill"] = (FileRole.Drill, LayerPlace.None),
        ["tap"] = (FileRole.Drill, LayerPlace.None),
        ["rou"] = (FileRole.Drill, LayerPlace.None),
        ["ipc"] = (FileRole.Netlist, LayerPlace.None),
        ["356"] = (FileRole.Netlist, LayerPlace.None),
        ["d356"] = (FileRole.Netlist, LayerPlace.None),
        ["gbrjob"] = (FileRole.JobFile, LayerPlace.None),
        ["pos"] = (FileRole.Placement, LayerPlace.None),
    };

    private static readonly HashSet<string> _drawingWords =
    [
        "map", "comment", "comments", "note", "notes", "fab", "fabrication", "drawing", "dwg", "dwgs", "assembly", "assy",
        "courtyard", "crtyd", "user", "adhesive", "adhes", "glue", "margin", "drill", "pth", "npth",
    ];

    private static readonly HashSet<string> _pasteWords = ["paste", "stencil", "cream", "solderpaste"];
    private static readonly HashSet<string> _maskWords = ["mask", "soldermask", "stop", "resist"];
    private static readonly HashSet<string> _legendWords = ["silk", "silks", "silkscreen", "legend", "overlay"];
    private static readonly HashSet<string> _profileWords = ["edge", "outline", "profile", "dimension", "contour", "border"];
    private static readonly HashSet<string> _topWords = ["top", "front", "f", "component", "cmp"];
    private static readonly HashSet<string> _bottomWords = ["bottom", "bot", "back", "b"];
    private static readonly HashSet<string> _copperWords = ["cu", "copper", "layer"];
    private static readonly HashSet<string> _innerWords = ["in", "inner", "int", "mid", "internal"];
    private static readonly HashSet<string> _groundWords = ["gnd", "ground"];
    private static readonly HashSet<string> _supplyWords = ["pwr", "power", "vcc", "plane", "supply"];
    private static readonly HashSet<string> _signalWords = ["signal", "sig", "sign"];

    /// <summary>What the extension says, or null.</summary>
    public static RoleClaim? FromExtension(string name)
    {
        string extension = Path.GetExtension(name).TrimStart('.').ToLowerInvariant();
        string reason = $"the extension .{extension}";
        if (_extensions.TryGetValue(extension, out (FileRole Role, LayerPlace Place) known))
        {
            return new RoleClaim(known.Role, reason, known.Place);
        }

        Match numbered = NumberedExtension().Match(extension);
        if (!numbered.Success)
        {
            return DrawingExtension().IsMatch(extension) ? new RoleClaim(FileRole.Drawing, reason) : null;
        }

        int number = Number(numbered.Groups["number"].Value);
        return numbered.Groups["before"].Value switch
        {
            "gp" => new RoleClaim(FileRole.Copper, reason, LayerPlace.Supply, number),
            "l" or "gl" => new RoleClaim(FileRole.Copper, reason, LayerPlace.Numbered, number),
            "g" when numbered.Groups["after"].Length > 0 => new RoleClaim(FileRole.Copper, reason, LayerPlace.Numbered, number),
            _ => new RoleClaim(FileRole.Copper, reason, LayerPlace.InnerNumbered, number),
        };
    }

    /// <summary>True for extensions of plot data that leave open which layer it is.</summary>
    public static bool IsPlotExtension(string name) => Path.GetExtension(name).ToLowerInvariant() is ".gbr" or ".ger" or ".pho" or ".art";

    /// <summary>True for names of copper, holes, outline or a plot of any kind.</summary>
    public static bool IsFabricationName(string name) => IsPlotExtension(name) || FromExtension(name) is { MakesCopper: true };

    /// <summary>What the words of the name say about a Gerber file, or null.</summary>
    public static RoleClaim? FromWords(ReadOnlySpan<string> words)
    {
        string[] all = words.ToArray();
        string reason = $"the words '{string.Join(' ', all)}' of its name";
        bool isTop = all.Any(_topWords.Contains);
        bool isBottom = all.Any(_bottomWords.Contains);
        if (all.Any(_drawingWords.Contains))
        {
            return new RoleClaim(FileRole.Drawing, reason);
        }

        if (all.Any(_profileWords.Contains))
        {
            return new RoleClaim(FileRole.Profile, reason);
        }

        if (all.Any(_pasteWords.Contains))
        {
            return Sided(FileRole.PasteTop, FileRole.PasteBottom);
        }

        if (all.Any(_maskWords.Contains) || (all.Contains("solder") && isTop != isBottom))
        {
            return Sided(FileRole.SolderMaskTop, FileRole.SolderMaskBottom);
        }

        if (all.Any(_legendWords.Contains))
        {
            return Sided(FileRole.LegendTop, FileRole.LegendBottom);
        }

        return Copper(all, reason, isTop, isBottom);

        RoleClaim? Sided(FileRole top, FileRole bottom) =>
            isTop == isBottom ? null : new RoleClaim(isTop ? top : bottom, reason);
    }

    /// <summary>Plating from the words of a drill file's name.</summary>
    public static Plating PlatingFromWords(ReadOnlySpan<string> words)
    {
        string[] all = words.ToArray();
        if (all.Contains("npth") || all.Contains("nonplated") || all.Contains("unplated"))
        {
            return Plating.NonPlated;
        }

        int plated = Array.IndexOf(all, "plated");
        return plated > 0 && all[plated - 1] is "non" or "not" ? Plating.NonPlated
            : plated >= 0 || all.Contains("pth") ? Plating.Plated
            : Plating.Unknown;
    }

    /// <summary>Layers from a drill file's name: <c>L1-L2</c> or <c>1-2</c> as a word of its own. Null when absent.</summary>
    public static DrillSpan? SpanFromName(string name)
    {
        Match span = SpanInName().Match(Path.GetFileNameWithoutExtension(name));
        if (!span.Success)
        {
            return null;
        }

        int first = Number(span.Groups["first"].Value);
        int last = Number(span.Groups["last"].Value);
        return first >= 1 && first < last ? new DrillSpan(first, last) : null;
    }

    private static RoleClaim? Copper(string[] words, string reason, bool isTop, bool isBottom)
    {
        int inner = Array.FindIndex(words, _innerWords.Contains);
        if (inner >= 0 && NumberAfter(words, inner) is > 0 and int innerNumber)
        {
            return new RoleClaim(FileRole.Copper, reason, LayerPlace.InnerNumbered, innerNumber);
        }

        int layer = Array.FindIndex(words, w => w is "l" or "layer");
        if (layer >= 0 && NumberAfter(words, layer) is > 0 and int number)
        {
            return new RoleClaim(FileRole.Copper, reason, LayerPlace.Numbered, number);
        }

        // A lone F or B is too little; a written-out side is enough.
        bool saysCopper = words.Any(_copperWords.Contains);
        bool saysSide = words.Any(w => w is "top" or "bottom" or "front" or "back" or "bot");
        if (isTop != isBottom && (saysCopper || saysSide))
        {
            return new RoleClaim(FileRole.Copper, reason, isTop ? LayerPlace.Top : LayerPlace.Bottom);
        }

        return Named(_groundWords, LayerPlace.Ground) ?? Named(_supplyWords, LayerPlace.Supply) ?? Named(_signalWords, LayerPlace.Signal);

        RoleClaim? Named(HashSet<string> names, LayerPlace place)
        {
            int at = Array.FindIndex(words, names.Contains);
            return at < 0 ? null : new RoleClaim(FileRole.Copper, reason, place, NumberAfter(words, at));
        }
    }

    private static int NumberAfter(string[] words, int index) =>
        index + 1 < words.Length ? Number(words[index + 1]) : 0;

    private static int Number(string digits) =>
        int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value <= 128 ? value : 0;

    [GeneratedRegex(@"^(?<before>gp|gl|l|in|g)(?<number>\d{1,3})(?<after>l?)$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberedExtension();

    [GeneratedRegex(@"^(gm|gd|gg)\d+$", RegexOptions.CultureInvariant)]
    private static partial Regex DrawingExtension();

    [GeneratedRegex(@"(?<![0-9A-Za-z])L?(?<first>\d{1,2})-L?(?<last>\d{1,2})(?![0-9A-Za-z])", RegexOptions.CultureInvariant)]
    private static partial Regex SpanInName();
}

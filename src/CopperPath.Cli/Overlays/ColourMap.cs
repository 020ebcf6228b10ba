using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// A sequential map from 0..1 to colour whose lightness rises steadily, so that it survives grey printing and the
/// common colour-vision deficiencies.
/// </summary>
public sealed class ColourMap
{
    private readonly int[] _anchors;

    private ColourMap(string name, params int[] anchors)
    {
        Name = name;
        _anchors = anchors;
    }

    /// <summary>
    /// Cividis, blue to yellow, made to look alike with normal and with red-green deficient vision: Nunez, Anderton
    /// and Renslow, "Optimizing colormaps with consideration for color vision deficiency", PLoS ONE 13(7), 2018,
    /// e0199239. 33 of its 256 published colours (data CC0); between them colours are within 6/255 of the table.
    /// </summary>
    public static ColourMap Cividis { get; } = new(
        "cividis",
        0x00224E, 0x00285B, 0x002E6A, 0x053371, 0x1A386F, 0x273E6E, 0x32436D, 0x3B496C, 0x434E6C, 0x4B546C, 0x535A6D,
        0x5A5F6E, 0x61656F, 0x686A71, 0x6F7073, 0x767676, 0x7D7C78, 0x838179, 0x8B8778, 0x928D78, 0x9A9376, 0xA29975,
        0xAAA073, 0xB3A670, 0xBBAD6D, 0xC3B369, 0xCCBA64, 0xD4C15F, 0xDDC858, 0xE6D051, 0xEFD748, 0xF8DF3C, 0xFEE838);

    /// <summary>
    /// Inferno, black over red to pale yellow: van der Walt and Smith, 2015 (data CC0). 33 of its 256 published
    /// colours; between them colours are within 2/255 of the table.
    /// </summary>
    public static ColourMap Inferno { get; } = new(
        "inferno",
        0x000004, 0x040312, 0x0B0724, 0x150B37, 0x210C4A, 0x2F0A5B, 0x3D0965, 0x4A0C6B, 0x57106E, 0x64156E, 0x71196E,
        0x7D1E6D, 0x8A226A, 0x972766, 0xA32C61, 0xB0315B, 0xBC3754, 0xC63D4D, 0xD04545, 0xDA4E3C, 0xE35933, 0xEB6429,
        0xF1711F, 0xF67E14, 0xF98C0A, 0xFB9B06, 0xFCAA0F, 0xFBBA1F, 0xF9C932, 0xF5D949, 0xF2E865, 0xF3F586, 0xFCFFA4);

    public string Name { get; }

    /// <summary>Colour at a place on the map; places outside 0..1 take the nearer end.</summary>
    public SKColor At(double place)
    {
        double scaled = Math.Clamp(place, 0, 1) * (_anchors.Length - 1);
        int below = Math.Min((int)scaled, _anchors.Length - 2);
        double part = scaled - below;
        int a = _anchors[below];
        int b = _anchors[below + 1];
        return new SKColor(Mix(a >> 16, b >> 16, part), Mix(a >> 8, b >> 8, part), Mix(a, b, part));
    }

    private static byte Mix(int a, int b, double part) =>
        (byte)Math.Round((a & 0xFF) + (((b & 0xFF) - (a & 0xFF)) * part));
}

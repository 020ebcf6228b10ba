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
    /// Viridis, violet over green to yellow: van der Walt and Smith, 2015 (data CC0). 33 of its 256 published colours;
    /// between them colours are within 2/255 of the table.
    /// </summary>
    public static ColourMap Viridis { get; } = new(
        "viridis",
        0x440154, 0x470D60, 0x48186A, 0x482374, 0x472D7B, 0x453781, 0x424086, 0x3E4989, 0x3B528B, 0x375B8D, 0x33638D,
        0x2F6B8E, 0x2C728E, 0x297A8E, 0x26828E, 0x23898E, 0x21918C, 0x1F978B, 0x1F9F88, 0x21A685, 0x27AD81, 0x31B57B,
        0x3DBC74, 0x4CC26C, 0x5CC863, 0x6ECE58, 0x81D34D, 0x95D840, 0xAADC32, 0xC0DF25, 0xD5E21A, 0xEAE51A, 0xFDE725);

    /// <summary>
    /// The middle of inferno, dark violet over red to amber: van der Walt and Smith, 2015 (data CC0). 25 of its 256
    /// published colours, from the 32nd on; its black and its pale yellow would be lost on dark and light grounds.
    /// </summary>
    public static ColourMap InnerInferno { get; } = new(
        "inner inferno",
        0x210C4A, 0x2F0A5B, 0x3D0965, 0x4A0C6B, 0x57106E, 0x64156E, 0x71196E, 0x7D1E6D, 0x8A226A, 0x972766, 0xA32C61,
        0xB0315B, 0xBC3754, 0xC63D4D, 0xD04545, 0xDA4E3C, 0xE35933, 0xEB6429, 0xF1711F, 0xF67E14, 0xF98C0A, 0xFB9B06,
        0xFCAA0F, 0xFBBA1F, 0xF9C932);

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

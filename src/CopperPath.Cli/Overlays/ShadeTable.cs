using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// Shades looked up by the leading bits of a value in place of a logarithm for each pixel: as floating-point numbers
/// share their exponent, each entry covers the same small ratio of values, a fifth of what one shade covers on a scale
/// of two decades.
/// </summary>
internal sealed class ShadeTable
{
    private const int ShadeCount = 1024;

    /// <summary>Bits left out: of the 23 of a mantissa 11 are kept, so an entry covers a ratio of at most 1.0005.</summary>
    private const int DroppedBits = 12;

    private readonly uint[] _shades;
    private readonly float _bottom;
    private readonly int _bottomBits;
    private readonly float _zero;

    public ShadeTable(ValueScale scale, ColourMap map)
    {
        uint[] colours = [.. Enumerable.Range(0, ShadeCount).Select(i => Packed(map.At(i / (ShadeCount - 1.0))))];
        First = colours[0];

        // Linear scales may start at zero or below, where ratios mean nothing: they are shifted to start at their own range.
        double range = scale.Top - scale.Bottom;
        _zero = scale.Kind == ScaleKind.Linear ? (float)(scale.Bottom - range) : 0;
        _bottom = (float)(scale.Bottom - _zero);
        _bottomBits = Key(_bottom);
        int count = Key((float)(scale.Top - _zero)) - _bottomBits + 1;
        _shades = new uint[count];
        for (int i = 0; i < count; i++)
        {
            double middle = BitConverter.Int32BitsToSingle(((_bottomBits + i) << DroppedBits) | (1 << (DroppedBits - 1)));
            _shades[i] = colours[(int)((scale.PlaceOf(middle + _zero) * (ShadeCount - 1)) + 0.5)];
        }
    }

    /// <summary>The first shade, packed as a pixel.</summary>
    public uint First { get; }

    /// <summary>Shade of a value, packed as a pixel; values beyond the ends take the end.</summary>
    public uint Of(float value)
    {
        float shifted = value - _zero;
        return shifted <= _bottom ? First : _shades[Math.Min(_shades.Length - 1, Key(shifted) - _bottomBits)];
    }

    private static int Key(float value) => BitConverter.SingleToInt32Bits(value) >> DroppedBits;

    private static uint Packed(SKColor c) => c.Red | ((uint)c.Green << 8) | ((uint)c.Blue << 16) | 0xFF000000;
}

using System.Globalization;

namespace CopperPath.Brief;

/// <summary>
/// A copper layer as the brief names it: <c>top</c>, <c>bottom</c> or a number counted from 1 at the top.
/// It becomes a number once the board's layer count is known.
/// </summary>
public readonly record struct LayerReference
{
    private const int BottomCode = -1;

    private readonly int _code;

    private LayerReference(int code) => _code = code;

    /// <summary>The uppermost copper layer, number 1.</summary>
    public static LayerReference Top => new(1);

    /// <summary>The lowest copper layer, whatever its number.</summary>
    public static LayerReference Bottom => new(BottomCode);

    /// <summary>The layer of that number, counted from 1 at the top; numbers below 1 name no layer.</summary>
    public static LayerReference Number(int number) => new(Math.Max(0, number));

    /// <summary>The layer number on a board of that many copper layers, or null when the board has no such layer.</summary>
    public int? Resolve(int layerCount)
    {
        int number = _code == BottomCode ? layerCount : _code;
        return number >= 1 && number <= layerCount ? number : null;
    }

    /// <summary><c>top</c>, <c>bottom</c> or the number.</summary>
    public override string ToString() => _code switch
    {
        1 => "top",
        BottomCode => "bottom",
        _ => _code.ToString(CultureInfo.InvariantCulture),
    };
}

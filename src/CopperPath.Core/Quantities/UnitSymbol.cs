using System.Collections.Frozen;

namespace CopperPath.Quantities;

/// <summary>
/// One spelling of a unit. A number n stands for <c>n * 10^DecimalExponent * Factor + OffsetSi</c> in SI. The power of
/// ten is kept apart from the factor so that it can join the number's own exponent before the one rounding to binary.
/// </summary>
internal sealed record UnitSymbol(
    string Symbol, Dimension Dimension, int DecimalExponent, double Factor = 1, double OffsetSi = 0)
{
    private static readonly (string Prefix, int DecimalExponent)[] s_prefixes =
    [
        ("", 0), ("p", -12), ("n", -9), ("u", -6), ("\u00B5", -6), ("\u03BC", -6), ("m", -3),
        ("k", 3), ("M", 6), ("G", 9),
    ];

    private static readonly UnitSymbol[] s_all = [.. ListAll()];

    private static readonly FrozenDictionary<string, UnitSymbol> s_bySymbol =
        s_all.ToFrozenDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    /// <summary>The unit of that exact spelling (case matters: mV is not MV), or null.</summary>
    public static UnitSymbol? Find(string symbol) => s_bySymbol.GetValueOrDefault(symbol);

    /// <summary>Spellings that differ from the given one in upper and lower case only and suit the dimension.</summary>
    public static IReadOnlyList<string> NearlyMatching(string symbol, Dimension dimension) =>
    [
        .. s_all
            .Where(unit => unit.Suits(dimension))
            .Select(unit => unit.Symbol)
            .Where(known => known.Equals(symbol, StringComparison.OrdinalIgnoreCase)),
    ];

    public bool Suits(Dimension wanted) =>
        Dimension == wanted
        || (Dimension == Dimension.Length && wanted == Dimension.CopperThickness)
        || (Symbol == "K" && wanted == Dimension.TemperatureDifference);

    private static IEnumerable<UnitSymbol> ListAll()
    {
        (string Symbol, Dimension Dimension)[] prefixed =
        [
            ("A", Dimension.Current), ("V", Dimension.Voltage), ("Hz", Dimension.Frequency),
            ("H", Dimension.Inductance), ("F", Dimension.Capacitance), ("W", Dimension.Power), ("s", Dimension.Time),
            ("ohm", Dimension.Resistance), ("\u03A9", Dimension.Resistance), ("\u2126", Dimension.Resistance),
        ];
        foreach ((string symbol, Dimension dimension) in prefixed)
        {
            foreach ((string prefix, int exponent) in s_prefixes)
            {
                yield return new(prefix + symbol, dimension, exponent);
            }
        }

        foreach ((string prefix, int exponent) in s_prefixes.Where(p => p.DecimalExponent is <= 0 and >= -9))
        {
            yield return new(prefix + "m", Dimension.Length, exponent);
        }

        yield return new("cm", Dimension.Length, -2);
        // Exact: an inch is 254e-4 m and a mil 254e-7 m; an ounce is the convention in Units.
        yield return new("in", Dimension.Length, -4, Factor: 254);
        yield return new("mil", Dimension.Length, -7, Factor: 254);
        yield return new("oz", Dimension.CopperThickness, -7, Factor: 348);
        yield return new("K", Dimension.Temperature, 0);
        yield return new("degC", Dimension.Temperature, 0, OffsetSi: Units.ZeroCelsiusK);
        yield return new("\u00B0C", Dimension.Temperature, 0, OffsetSi: Units.ZeroCelsiusK);
        foreach (string spelling in (string[])["W/m2K", "W/m\u00B2K", "W/(m\u00B2\u00B7K)"])
        {
            yield return new(spelling, Dimension.FilmCoefficient, 0);
        }

        foreach (string spelling in (string[])["W/mK", "W/(m\u00B7K)"])
        {
            yield return new(spelling, Dimension.ThermalConductivity, 0);
        }

        yield return new("K/W", Dimension.ThermalResistance, 0);
    }
}

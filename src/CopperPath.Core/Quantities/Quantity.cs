using System.Globalization;

namespace CopperPath.Quantities;

/// <summary>
/// A number with what it measures, read from text such as <c>25 A</c>, <c>35um</c> or <c>60 degC</c>.
/// </summary>
/// <param name="ValueSi">The value in the SI unit of its dimension; always finite.</param>
/// <param name="Dimension">What it measures.</param>
public readonly record struct Quantity(double ValueSi, Dimension Dimension)
{
    /// <summary>
    /// Reads a number and its unit. The number uses a decimal point and no thousands separator; the unit is required,
    /// may touch the number, and is case-sensitive because <c>m</c> and <c>M</c> are different prefixes.
    /// Never throws; the value is rounded to binary once when the unit is a power of ten of the SI unit.
    /// </summary>
    public static QuantityReading Read(string text, Dimension dimension, Sign sign = Sign.Any)
    {
        string trimmed = text.Trim();
        string expected = DimensionWords.Expectation(dimension);
        int digitsEnd = DecimalNumber.End(trimmed);
        if (digitsEnd == 0)
        {
            return new(null, trimmed.Length == 0 ? "nothing" : $"`{trimmed}`", expected);
        }

        string symbol = trimmed[digitsEnd..].Trim();
        if (symbol.Length == 0)
        {
            return new(null, $"`{trimmed}` without a unit", expected);
        }

        if (symbol[0] == ',')
        {
            return new(null, $"`{trimmed}` with a comma", expected + ", with a decimal point");
        }

        if (UnitSymbol.Find(symbol) is not { } unit)
        {
            IReadOnlyList<string> near = UnitSymbol.NearlyMatching(symbol, dimension);
            string hint = near.Count == 0 ? "" : $"; units are case-sensitive: `{string.Join("` or `", near)}`?";
            return new(null, $"unit `{symbol}` in `{trimmed}`", expected + hint);
        }

        if (!unit.Suits(dimension))
        {
            return new(null, $"`{trimmed}`, which is {DimensionWords.Noun(unit.Dimension)}", expected);
        }

        if (DecimalNumber.Read(trimmed[..digitsEnd], unit.DecimalExponent) is not { } number)
        {
            return new(null, $"`{trimmed}`, beyond the numbers that can be held", expected);
        }

        double offsetSi = dimension == Dimension.TemperatureDifference ? 0 : unit.OffsetSi;
        double valueSi = (number * unit.Factor) + offsetSi;
        if (!double.IsFinite(valueSi))
        {
            return new(null, $"`{trimmed}`, beyond the numbers that can be held", expected);
        }

        if (dimension == Dimension.Temperature && valueSi < 0)
        {
            return new(null, $"`{trimmed}`, below absolute zero", expected);
        }

        return sign switch
        {
            Sign.Positive when valueSi <= 0 => new(null, $"`{trimmed}`", expected + ", more than zero"),
            Sign.NotNegative when valueSi < 0 => new(null, $"`{trimmed}`", expected + ", not negative"),
            _ => new(new Quantity(valueSi, dimension), "", ""),
        };
    }

    /// <summary>The value in SI with a round-trip number; for presentation use <see cref="QuantityText"/>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{ValueSi:R} {DimensionWords.SiSymbol(Dimension)}");
}

using System.Globalization;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Quantities;

/// <summary>
/// Factors: SI prefixes and the degree Celsius from the SI Brochure (BIPM, 9th edition), the inch from the
/// international yard and pound agreement of 1959 (25.4 mm exactly); 34.8 um per ounce is common practice.
/// </summary>
public class QuantityTests
{
    [Theory]
    [InlineData("25 A", Dimension.Current, 25)]
    [InlineData("25A", Dimension.Current, 25)]
    [InlineData("  9.5   mA ", Dimension.Current, 9.5e-3)]
    [InlineData("2 oz", Dimension.CopperThickness, 69.6e-6)]
    [InlineData("35 um", Dimension.CopperThickness, 35e-6)]
    [InlineData("35um", Dimension.Length, 35e-6)]
    [InlineData("35 \u00B5m", Dimension.Length, 35e-6)]
    [InlineData("35 \u03BCm", Dimension.Length, 35e-6)]
    [InlineData("0.2 mm", Dimension.Length, 0.2e-3)]
    [InlineData("2.5 cm", Dimension.Length, 25e-3)]
    [InlineData("10 mil", Dimension.Length, 254e-6)]
    [InlineData("1 in", Dimension.Length, 25.4e-3)]
    [InlineData("60 degC", Dimension.Temperature, 333.15)]
    [InlineData("-40 \u00B0C", Dimension.Temperature, 233.15)]
    [InlineData("\u221240 \u00B0C", Dimension.Temperature, 233.15)]
    [InlineData("1E\u22123 A", Dimension.Current, 1e-3)]
    [InlineData("12 W/m2K", Dimension.FilmCoefficient, 12)]
    [InlineData("12 W/m\u00B2K", Dimension.FilmCoefficient, 12)]
    [InlineData("12 W/(m\u00B2\u00B7K)", Dimension.FilmCoefficient, 12)]
    [InlineData("0.3 W/mK", Dimension.ThermalConductivity, 0.3)]
    [InlineData("0.3 W/(m\u00B7K)", Dimension.ThermalConductivity, 0.3)]
    [InlineData("300 K", Dimension.Temperature, 300)]
    [InlineData("30 K", Dimension.TemperatureDifference, 30)]
    [InlineData("12 V", Dimension.Voltage, 12)]
    [InlineData("20 mV", Dimension.Voltage, 20e-3)]
    [InlineData("500 kHz", Dimension.Frequency, 500e3)]
    [InlineData("1.2 MHz", Dimension.Frequency, 1.2e6)]
    [InlineData("0.25 uH", Dimension.Inductance, 0.25e-6)]
    [InlineData("1e2 uF", Dimension.Capacitance, 100e-6)]
    [InlineData("1.5 mohm", Dimension.Resistance, 1.5e-3)]
    [InlineData("1.5 m\u03A9", Dimension.Resistance, 1.5e-3)]
    [InlineData("2 W", Dimension.Power, 2)]
    [InlineData("5 ms", Dimension.Time, 5e-3)]
    [InlineData(".5 s", Dimension.Time, 0.5)]
    [InlineData("+1.E+1 s", Dimension.Time, 10)]
    public void UnitsOfTheTradeBecomeSi(string text, Dimension dimension, double expectedSi)
    {
        Quantity quantity = Quantity.Read(text, dimension).Quantity.ShouldNotBeNull();

        quantity.Dimension.ShouldBe(dimension);
        quantity.ValueSi.ShouldBe(expectedSi, Math.Abs(expectedSi) * 2.3e-16);
    }

    [Theory]
    [InlineData("0.1 mm", 0.1e-3)]
    [InlineData("0.3 um", 0.3e-6)]
    [InlineData("12.345 mm", 12.345e-3)]
    [InlineData("7 nm", 7e-9)]
    public void APowerOfTenIsRoundedOnce(string text, double expectedSi) =>
        Quantity.Read(text, Dimension.Length).Quantity!.Value.ValueSi.ShouldBe(expectedSi);

    [Theory]
    [InlineData("25", Dimension.Current, "without a unit", "25 A")]
    [InlineData("", Dimension.Current, "nothing", "25 A")]
    [InlineData("A", Dimension.Current, "`A`", "25 A")]
    [InlineData("-", Dimension.Current, "`-`", "25 A")]
    [InlineData("NaN A", Dimension.Current, "`NaN A`", "25 A")]
    [InlineData("Infinity A", Dimension.Current, "`Infinity A`", "25 A")]
    [InlineData("25 V", Dimension.Current, "which is a voltage", "25 A")]
    [InlineData("2 oz", Dimension.Length, "which is a copper thickness", "0.2 mm")]
    [InlineData("30 degC", Dimension.TemperatureDifference, "which is a temperature", "30 K")]
    [InlineData("0,2 mm", Dimension.Length, "with a comma", "decimal point")]
    [InlineData("1,000.5 mm", Dimension.Length, "with a comma", "decimal point")]
    [InlineData("500 khz", Dimension.Frequency, "unit `khz`", "case-sensitive: `kHz`")]
    [InlineData("1 MV", Dimension.Current, "which is a voltage", "25 A")]
    [InlineData("1 mm mm", Dimension.Length, "unit `mm mm`", "0.2 mm")]
    [InlineData("1 2 mm", Dimension.Length, "unit `2 mm`", "0.2 mm")]
    [InlineData("1e999 A", Dimension.Current, "beyond the numbers", "25 A")]
    [InlineData("1e99999999999 A", Dimension.Current, "beyond the numbers", "25 A")]
    [InlineData("1e-999 A", Dimension.Current, "beyond the numbers", "25 A")]
    [InlineData("-300 degC", Dimension.Temperature, "below absolute zero", "60 degC")]
    public void WhatIsWrongIsSaidWithAnExample(string text, Dimension dimension, string found, string expected)
    {
        QuantityReading reading = Quantity.Read(text, dimension);

        reading.Quantity.ShouldBeNull();
        reading.Found.ShouldContain(found);
        reading.Expected.ShouldContain(expected);
    }

    [Theory]
    [InlineData("-35 um", Sign.NotNegative, false)]
    [InlineData("0 um", Sign.NotNegative, true)]
    [InlineData("0 um", Sign.Positive, false)]
    [InlineData("-1 um", Sign.Any, true)]
    public void TheSignIsChecked(string text, Sign sign, bool accepted) =>
        Quantity.Read(text, Dimension.Length, sign).Quantity.HasValue.ShouldBe(accepted);

    [Fact]
    public void TheCultureOfTheMachineDoesNotMatter()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");

            Quantity.Read("1.5 mm", Dimension.Length).Quantity!.Value.ValueSi.ShouldBe(1.5e-3);
            QuantityText.Current(1.5).ShouldBe("1.50 A");
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <summary>What is printed must be readable again, within the digits printed.</summary>
    [Fact]
    public void PrintedQuantitiesReadBack()
    {
        Random random = new(20261125);
        for (int i = 0; i < 2000; i++)
        {
            double value = Math.Pow(10, (random.NextDouble() * 12) - 7);
            Check(QuantityText.Current(value), Dimension.Current, value);
            Check(QuantityText.Voltage(-value), Dimension.Voltage, -value);
            Check(QuantityText.Resistance(value), Dimension.Resistance, value);
            Check(QuantityText.Length(value), Dimension.Length, value);
            Check(QuantityText.Film(value), Dimension.FilmCoefficient, value);
            Check(QuantityText.ThermalConductivity(value), Dimension.ThermalConductivity, value);
        }

        static void Check(string printed, Dimension dimension, double value) =>
            Quantity.Read(printed, dimension).Quantity.ShouldNotBeNull(printed)
                .ValueSi.ShouldBe(value, Math.Abs(value) * 0.00501, printed);
    }
}

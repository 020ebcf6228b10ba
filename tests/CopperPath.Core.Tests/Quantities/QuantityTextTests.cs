using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Quantities;

/// <summary>
/// Expected texts follow from the rule: three significant digits, prefixes in steps of a thousand. Signs of units: SI Brochure
/// (BIPM, 9th edition), sections 2.3 and 5.2; the minus of typeset numbers is U+2212.
/// </summary>
public class QuantityTextTests
{
    [Theory]
    [InlineData(9.123, "9.12 A")]
    [InlineData(0.009123, "9.12 mA")]
    [InlineData(0.9994, "999 mA")]
    [InlineData(0.9996, "1.00 A")]
    [InlineData(999.6, "1.00 kA")]
    [InlineData(12.36, "12.4 A")]
    [InlineData(123.6, "124 A")]
    [InlineData(-2.5, "−2.50 A")]
    [InlineData(0, "0 A")]
    [InlineData(1e-15, "0.00100 pA")]
    [InlineData(double.NaN, "undefined")]
    [InlineData(double.PositiveInfinity, "undefined")]
    public void CurrentsKeepThreeDigits(double currentA, string expected) =>
        QuantityText.Current(currentA).ShouldBe(expected);

    [Theory]
    [InlineData(35e-6, "35.0 µm")]
    [InlineData(99.96e-6, "0.100 mm")]
    [InlineData(0.2e-3, "0.200 mm")]
    [InlineData(12.4e-3, "12.4 mm")]
    [InlineData(1.2345, "1230 mm")]
    [InlineData(0, "0 mm")]
    public void LengthsStayInTheUnitsOfBoards(double lengthM, string expected) =>
        QuantityText.Length(lengthM).ShouldBe(expected);

    [Fact]
    public void EveryKindHasItsUnit()
    {
        QuantityText.Voltage(-0.0).ShouldBe("0 V");
        QuantityText.Voltage(0.02).ShouldBe("20.0 mV");
        QuantityText.Resistance(1.28e-3).ShouldBe("1.28 mΩ");
        QuantityText.Power(0.3123).ShouldBe("312 mW");
        QuantityText.Frequency(5e5).ShouldBe("500 kHz");
        QuantityText.Inductance(0.50265e-9).ShouldBe("503 pH");
        QuantityText.Capacitance(19.037e-12).ShouldBe("19.0 pF");
        QuantityText.Time(5e-3).ShouldBe("5.00 ms");
        QuantityText.Area(0.025525e-6).ShouldBe("0.0255 mm²");
        QuantityText.CurrentDensity(35.12e6).ShouldBe("35.1 A/mm²");
        QuantityText.Temperature(338.15).ShouldBe("65.0 °C");
        QuantityText.Temperature(273.149).ShouldBe("0.0 °C");
        QuantityText.TemperatureDifference(29.96).ShouldBe("30.0 K");
        QuantityText.Temperature(233.15).ShouldBe("−40.0 °C");
        QuantityText.Place(-12.3449e-3).ShouldBe("−12.34 mm");
        QuantityText.Place(-0.1e-6).ShouldBe("0.00 mm");
        QuantityText.Resistivity(20.154e-9).ShouldBe("20.2 nΩ·m");
        QuantityText.Film(7.372).ShouldBe("7.37 W/(m²·K)");
        QuantityText.ThermalConductivity(0.3).ShouldBe("0.300 W/(m·K)");
        QuantityText.Percent(0.125).ShouldBe("12.5 %");
        QuantityText.Ratio(1.2549).ShouldBe("1.25");
    }
}

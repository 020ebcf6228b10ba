using System.Globalization;

namespace CopperPath.Quantities;

/// <summary>
/// The one formatter for numbers people read: three significant digits, engineering prefixes, invariant culture, and the
/// signs of the SI Brochure (BIPM, 9th edition): µ, Ω, °C, exponents and a true minus. What it writes for a quantity of
/// the brief can be pasted back into a brief. Where machines read, units are plain ASCII and stand in the key.
/// </summary>
public static class QuantityText
{
    private const int SignificantDigits = 3;
    private const string Undefined = "undefined";

    /// <summary>The minus sign, which is as wide as a plus; the hyphen of the keyboard is not.</summary>
    private const char Minus = '\u2212';

    private static readonly string[] s_prefixes = ["p", "n", "\u00B5", "m", "", "k", "M", "G"];

    /// <summary>Amperes in; e.g. <c>9.12 A</c>.</summary>
    public static string Current(double currentA) => Engineering(currentA, "A");

    /// <summary>Volts in; e.g. <c>20.0 mV</c>.</summary>
    public static string Voltage(double voltageV) => Engineering(voltageV, "V");

    /// <summary>Ohms in; e.g. <c>1.28 mΩ</c>.</summary>
    public static string Resistance(double resistanceOhm) => Engineering(resistanceOhm, "\u03A9");

    /// <summary>Ohm metres in; e.g. <c>20.2 nΩ·m</c>.</summary>
    public static string Resistivity(double resistivityOhmM) => Engineering(resistivityOhmM, "\u03A9\u00B7m");

    /// <summary>Watts in; e.g. <c>312 mW</c>.</summary>
    public static string Power(double powerW) => Engineering(powerW, "W");

    /// <summary>Hertz in; e.g. <c>500 kHz</c>.</summary>
    public static string Frequency(double frequencyHz) => Engineering(frequencyHz, "Hz");

    /// <summary>Henries in; e.g. <c>503 pH</c>.</summary>
    public static string Inductance(double inductanceH) => Engineering(inductanceH, "H");

    /// <summary>Farads in; e.g. <c>19.0 pF</c>.</summary>
    public static string Capacitance(double capacitanceF) => Engineering(capacitanceF, "F");

    /// <summary>Seconds in; e.g. <c>5.00 ms</c>.</summary>
    public static string Time(double timeS) => Engineering(timeS, "s");

    /// <summary>Ampere squares times seconds in, the Joule integral of a fault; e.g. <c>1250 A²s</c>.</summary>
    public static string JouleIntegral(double squaredCurrentSeconds) => Digits(squaredCurrentSeconds, " A\u00B2s");

    /// <summary>Metres in; millimetres from 0.1 mm up, micrometres below: e.g. <c>12.4 mm</c>, <c>35.0 µm</c>.</summary>
    public static string Length(double lengthM)
    {
        double magnitudeM = Math.Abs(lengthM);
        return magnitudeM == 0 ? "0 mm"
            : Rounded(magnitudeM) < 0.1e-3 ? Digits(lengthM * 1e6, " \u00B5m")
            : Digits(lengthM * 1e3, " mm");
    }

    /// <summary>Square metres in; e.g. <c>0.0255 mm²</c>.</summary>
    public static string Area(double areaM2) => Digits(areaM2 * 1e6, " mm\u00B2");

    /// <summary>Amperes per square metre in; e.g. <c>35.1 A/mm²</c>.</summary>
    public static string CurrentDensity(double densityAPerM2) => Digits(densityAPerM2 * 1e-6, " A/mm\u00B2");

    /// <summary>Kelvin in, absolute; degrees Celsius out with one decimal: e.g. <c>65.0 °C</c>.</summary>
    public static string Temperature(double temperatureK) => Decimals(temperatureK - Units.ZeroCelsiusK, 1, " \u00B0C");

    /// <summary>Kelvin in; one decimal: e.g. <c>30.0 K</c>.</summary>
    public static string TemperatureDifference(double differenceK) => Decimals(differenceK, 1, " K");

    /// <summary>Metres in, a coordinate or a measured gap; millimetres with two decimals out: e.g. <c>−12.40 mm</c>.</summary>
    public static string Place(double placeM) => Decimals(placeM * 1e3, 2, " mm");

    /// <summary>Metres in, a place on the board; millimetres with up to three decimals out: e.g. <c>109.474, −87.2 mm</c>.</summary>
    public static string Point(double xM, double yM)
    {
        return $"{Millimetres(xM)}, {Millimetres(yM)} mm";

        static string Millimetres(double m) => Signed((m * 1e3).ToString("0.###", CultureInfo.InvariantCulture));
    }

    /// <summary>Watts per square metre and kelvin in; e.g. <c>7.37 W/(m²·K)</c>.</summary>
    public static string Film(double filmWPerM2K) => Digits(filmWPerM2K, " W/(m\u00B2\u00B7K)");

    /// <summary>Watts per metre and kelvin in; e.g. <c>0.300 W/(m·K)</c>.</summary>
    public static string ThermalConductivity(double conductivityWPerMK) => Digits(conductivityWPerMK, " W/(m\u00B7K)");

    /// <summary>A plain ratio; e.g. <c>1.25</c>.</summary>
    public static string Ratio(double ratio) => Digits(ratio, "");

    /// <summary>A ratio as per cent; e.g. <c>12.5 %</c>.</summary>
    public static string Percent(double ratio) => Digits(ratio * 100, " %");

    private static string Engineering(double valueSi, string symbol)
    {
        if (!double.IsFinite(valueSi))
        {
            return Undefined;
        }

        if (valueSi == 0)
        {
            return "0 " + symbol;
        }

        // The prefix follows the rounded number: 0.9996 A is "1.00 A", not "1000 mA".
        int decade = Decade(Rounded(Math.Abs(valueSi)));
        int step = Math.Clamp((int)Math.Floor(decade / 3.0), -4, 3);
        double scaled = step < 0 ? valueSi * Math.Pow(10, -3 * step) : valueSi / Math.Pow(10, 3 * step);
        return Digits(scaled, " " + s_prefixes[step + 4] + symbol);
    }

    private static string Digits(double value, string unit)
    {
        if (!double.IsFinite(value))
        {
            return Undefined;
        }

        if (value == 0)
        {
            return "0" + unit;
        }

        double rounded = Rounded(value);
        int decimals = Math.Clamp(SignificantDigits - 1 - Decade(Math.Abs(rounded)), 0, 15);
        return Decimals(rounded, decimals, unit);
    }

    private static string Decimals(double value, int decimals, string unit) => double.IsFinite(value)
        ? Signed(value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)) + unit
        : Undefined;

    /// <summary>The nearest number of three significant digits, decided in decimal by the exact binary value.</summary>
    private static double Rounded(double value) =>
        double.Parse(value.ToString("E2", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>Exponent of the leading decimal digit of a positive number: 0 for 1 up to 10.</summary>
    private static int Decade(double magnitude)
    {
        string text = magnitude.ToString("E2", CultureInfo.InvariantCulture);
        return int.Parse(text.AsSpan(text.IndexOf('E', StringComparison.Ordinal) + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
    }

    /// <summary>With a true minus, and none before zero.</summary>
    private static string Signed(string text) => !text.StartsWith('-') ? text
        : text.AsSpan().ContainsAnyInRange('1', '9') ? Minus + text[1..]
        : text[1..];
}

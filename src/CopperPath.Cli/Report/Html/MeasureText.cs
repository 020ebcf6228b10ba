using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>A measured value with its unit, for people.</summary>
internal static class MeasureText
{
    /// <param name="value">In the SI unit.</param>
    /// <param name="unit">Symbol of the unit; empty for a ratio.</param>
    public static string Of(double value, string unit) => unit switch
    {
        "K" => QuantityText.TemperatureDifference(value),
        "V" => QuantityText.Voltage(value),
        "A" => QuantityText.Current(value),
        "W" => QuantityText.Power(value),
        "m" => QuantityText.Length(value),
        "m2" => QuantityText.Area(value),
        "H" => QuantityText.Inductance(value),
        "F" => QuantityText.Capacitance(value),
        "" => QuantityText.Ratio(value),
        _ => $"{QuantityText.Ratio(value)} {unit}",
    };
}

using System.Globalization;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>A measured value and its limit with their units, for people.</summary>
internal static class MeasureText
{
    public static string ValueOf(Measure measure) => Text(measure, measure.Value);

    public static string LimitOf(Measure measure) => Text(measure, measure.Limit);

    /// <summary>What it is and what is allowed, in few words.</summary>
    public static string Against(Measure measure) => $"{measure.Name}; {(measure.LimitIsLeast ? "at least " : "limit ")}{LimitOf(measure)}{(AtWorst(measure) is { } worst ? $"; {worst}" : "")}";

    /// <summary>What it becomes with everything that is not known at its worse end; null where it does not depend on that.</summary>
    public static string? AtWorst(Measure measure) => measure.Worst is not { } worst ? null
        : $"at worst {(double.IsFinite(worst) ? Text(measure, worst) : "no steady state")}";

    private static string Text(Measure measure, double value) => measure.Unit switch
    {
        "K" when measure.Name == "temperature" => QuantityText.Temperature(value),
        "K" => QuantityText.TemperatureDifference(value),
        "V" => QuantityText.Voltage(value),
        "A" => QuantityText.Current(value),
        "W" => QuantityText.Power(value),
        "m" => QuantityText.Length(value),
        "m2" => QuantityText.Area(value),
        "H" => QuantityText.Inductance(value),
        "F" => QuantityText.Capacitance(value),
        "" when measure.IsCount => value.ToString("0", CultureInfo.InvariantCulture),
        "" => QuantityText.Ratio(value),
        _ => $"{QuantityText.Ratio(value)} {measure.Unit}",
    };
}

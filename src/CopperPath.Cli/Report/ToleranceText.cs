using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>Nominal, worst and shares for the person at the terminal.</summary>
internal static class ToleranceText
{
    /// <summary>What the numbers rest on.</summary>
    public const string Basis =
        "Worst: every range at its worse end. Share: what each item does alone, of the sum of all. Loss, and drop between two terminals: "
        + "between proven bounds; other drops of first order; screening rises with the current's division among layers held; own rises "
        + "solved again with the nominal pattern of the current.";

    public static void Write(Terminal terminal, ToleranceStudy? study)
    {
        if (study is null or { Ranges.HasAny: false })
        {
            return;
        }

        TextWriter writer = terminal.Out;
        writer.WriteLine();
        writer.WriteLine("Over the range of what is not known:");
        TextTable table = new(["Stretch of copper", "Drop", "At worst", "Own peak", "At worst", "Most of it from"], [false, true, true, true, true, false]);
        foreach (NetTolerance net in study.Nets)
        {
            table.Add([
                net.Name, Text(net.DropV.Nominal, "V"), Text(net.DropV.Worst, "V"),
                net.OwnRiseK is { } own ? Text(own.Nominal, "K") : "-", net.OwnRiseK is { } worst ? Text(worst.Worst, "K") : "-",
                SharesOf(net.OwnRiseK ?? net.DropV, most: 1)]);
        }

        table.Write(writer, terminal.Width);
        if (Hottest(study) is { } line)
        {
            writer.WriteLine(line);
        }

        writer.WriteLine();
    }

    /// <summary>The hottest place of the board at worst, one sentence; null where no temperatures were solved.</summary>
    public static string? Hottest(ToleranceStudy study) => study.TemperatureK switch
    {
        null => null,
        { } temperature when double.IsFinite(temperature.Worst) =>
            $"Hottest place of the board at worst: {QuantityText.Temperature(temperature.Worst)}{temperature.MostWords}.",
        _ => "Hottest place of the board at worst: none, the board runs away or leaves the range of the laws used.",
    };

    /// <summary>A value of a spread; what runs away has none.</summary>
    public static string Text(double value, string unit) => !double.IsFinite(value) ? "no steady state" : unit switch
    {
        "W" => QuantityText.Power(value),
        "V" => QuantityText.Voltage(value),
        _ => QuantityText.TemperatureDifference(value),
    };

    /// <summary>Items in falling order of their share, those that do next to nothing left out.</summary>
    public static string SharesOf(Spread spread, int most = int.MaxValue) => string.Join(", ", spread.Shares
        .Where(share => share.Share >= 0.005)
        .OrderByDescending(share => share.Share).Take(most)
        .Select(share => FormattableString.Invariant($"{share.Item} {100 * share.Share:0} %")));
}

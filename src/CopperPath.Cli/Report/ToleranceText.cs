using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>Nominal, worst and shares for the person at the terminal, where the brief states ranges.</summary>
internal static class ToleranceText
{
    /// <summary>What the numbers rest on.</summary>
    public const string Basis =
        "Worst: every range at its worse end. Share: what each item does alone, of the sum of all. Loss, and drop between two terminals: "
        + "between proven bounds; other drops of first order; screening rises with the current's division among layers held; own rises "
        + "solved again with the nominal pattern of the current.";

    /// <summary>A line of the terminal has room for the largest shares; the page and the results have all.</summary>
    private const int MostItems = 3;

    public static void Write(Terminal terminal, ToleranceStudy? study)
    {
        if (study is null)
        {
            return;
        }

        TextWriter writer = terminal.Out;
        writer.WriteLine();
        writer.WriteLine("Under the ranges of the brief:");
        TextTable table = new(["Stretch of copper", "", "Nominal", "Worst", "Largest shares"], [false, false, true, true, false]);
        foreach (NetTolerance net in study.Nets)
        {
            string name = net.Name;
            foreach ((string quantity, string unit, Spread spread) in net.Spreads)
            {
                table.Add([name, quantity, Text(spread.Nominal, unit), Text(spread.Worst, unit), SharesOf(spread, MostItems)]);
                name = "";
            }
        }

        table.Write(writer, terminal.Width);
        if (study.WarmestK is { } warmestK)
        {
            writer.WriteLine(double.IsFinite(warmestK)
                ? $"Hottest copper at worst: {QuantityText.Temperature(warmestK)}."
                : "Hottest copper at worst: none, the board runs away or leaves the range of the laws used.");
        }

        foreach (string line in Basis.Split(". "))
        {
            writer.WriteLine(line.TrimEnd('.') + ".");
        }

        writer.WriteLine();
    }

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

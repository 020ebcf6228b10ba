using System.Globalization;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads the limits that have no published source.</summary>
internal static class PracticeLimitsReader
{
    private const int MostVias = 100;

    public static PracticeLimits Read(SectionReader limits, BriefContext context)
    {
        PracticeLimits common = PracticeLimits.Common;
        List<string> assumed = [];
        PracticeLimits read = new(
            Ratio("sharing ratio", common.SharingRatio),
            Ratio("least area ratio", common.LeastAreaRatio),
            Quantity("sensitive distance", common.SensitiveDistanceM, Dimension.Length, QuantityText.Length),
            Count("capacitor vias", common.CapacitorVias),
            Ratio("capacitor distance ratio", common.CapacitorDistanceRatio),
            Quantity("bank drop", common.BankDropV, Dimension.Voltage, QuantityText.Voltage),
            Ratio("hot loop ratio", common.HotLoopRatio));
        if (assumed.Count > 0)
        {
            context.StateDefault($"limits: {string.Join(", ", assumed)} (common practice, no source; remarks only)");
        }

        return read;

        PracticeLimit Ratio(string key, PracticeLimit practice) => Of(key, practice, QuantityText.Ratio,
            limits.Optional(key) is { } node ? context.Values.Ratio(node, least: 1) : null);

        PracticeLimit Quantity(string key, PracticeLimit practice, Dimension dimension, Func<double, string> print) => Of(key, practice, print,
            limits.Optional(key) is { } node ? context.Values.QuantitySi(node, dimension, Sign.Positive) : null);

        PracticeLimit Count(string key, PracticeLimit practice) => Of(key, practice, count => count.ToString("0", CultureInfo.InvariantCulture),
            limits.Optional(key) is { } node ? context.Values.WholeNumber(node, 0, MostVias) : null);

        PracticeLimit Of(string key, PracticeLimit practice, Func<double, string> print, double? stated)
        {
            if (!limits.Has(key))
            {
                assumed.Add($"{key}: {print(practice.Value)}");
            }

            return new PracticeLimit(stated ?? practice.Value, limits.Has(key));
        }
    }
}

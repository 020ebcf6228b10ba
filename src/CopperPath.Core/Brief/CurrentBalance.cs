using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>What enters the copper of a net must leave it.</summary>
internal static class CurrentBalance
{
    /// <summary>Sums of currents written in decimal differ by rounding only; anything more is a slip in the brief.</summary>
    private const double RelativeTolerance = 1e-9;

    /// <summary>
    /// Gives the rest to the terminal that takes it, or checks that the sums agree; the terminals as they came after
    /// an error.
    /// </summary>
    public static IReadOnlyList<Terminal> Settle(
        List<Terminal> terminals, string netName, SourcePosition position, DiagnosticSink sink)
    {
        double entersA = terminals.Where(t => t.CurrentA > 0).Sum(t => t.CurrentA);
        double leavesA = terminals.Where(t => t.CurrentA < 0).Sum(t => -t.CurrentA);
        bool balanced = Math.Abs(entersA - leavesA) <= RelativeTolerance * Math.Max(entersA, leavesA);
        List<Terminal> takers = terminals.FindAll(t => t.TakesRest);
        foreach (Terminal extra in takers.Skip(1))
        {
            sink.Error(BriefCodes.SecondRest, extra.Position,
                $"a second `takes: rest` in net '{netName}'", $"one; line {takers[0].Position.Line} has it");
        }

        if (entersA == 0 && leavesA == 0)
        {
            sink.Error(BriefCodes.NoCurrent, position, $"no current in net '{netName}'", "at least one terminal with a current above zero");
            return terminals;
        }

        if (takers.Count == 0)
        {
            if (!balanced)
            {
                sink.Error(BriefCodes.CurrentBalance, position,
                    $"{Exactly(entersA)} entering and {Exactly(leavesA)} leaving in net '{netName}'",
                    "equal sums, or one terminal with `takes: rest`");
            }

            return terminals;
        }

        if (balanced)
        {
            sink.Warning(BriefCodes.RestTakesNothing, takers[0].Position,
                $"`takes: rest` where the other currents of net '{netName}' already balance", "a rest above zero");
        }

        double restA = balanced ? 0 : leavesA - entersA;
        return [.. terminals.Select(t => t.TakesRest ? t with { CurrentA = restA } : t)];
    }

    /// <summary>Sums that differ little must not print alike, so they are written in full.</summary>
    private static string Exactly(double currentA) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{currentA:G12} A");
}

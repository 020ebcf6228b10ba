using CopperPath.Electrical;

namespace CopperPath.Cli.Report;

/// <summary>How far off the numbers of the field solve can be, at worst over some results, as shares of the numbers.</summary>
/// <param name="Loss">Of losses: half the distance of the bounds.</param>
/// <param name="Drop">Of drops, likewise.</param>
/// <param name="Outline">What the drawn outlines take of either: estimated, the rest is proven.</param>
/// <param name="HoleAndContact">Of the currents of holes and contacts that carry a tenth of the busiest or more: estimated.</param>
internal sealed record SolveAccuracy(double Loss, double Drop, double Outline, double HoleAndContact)
{
    /// <summary>Currents below this share of the busiest one are not what is looked for.</summary>
    private const double LeastShare = 0.1;

    /// <returns>Null where there are no results.</returns>
    public static SolveAccuracy? Of(IReadOnlyList<ConductionResult> results) => results.Count == 0 ? null : new SolveAccuracy(
        results.Max(result => result.LossBoundsW.RelativeWidth) / 2,
        results.Max(result => result.DropBoundsV.RelativeWidth) / 2,
        results.Max(result => result.Rounds[^1].OutlineShare) / 2,
        results.Max(result => Math.Max(
            WorstShare(result.Barrels.Select(barrel => (barrel.CurrentA, barrel.AccuracyA))),
            result.Terminals.Max(terminal => WorstShare(terminal.ContactCurrentsA.Zip(terminal.ContactAccuracyA))))));

    /// <summary>Per cent with two decimals, rounded up: a bound is never said to be closer than it is, nor to be nothing.</summary>
    public static string Text(double share) =>
        FormattableString.Invariant($"{Math.Max(0.01, Math.Ceiling(1e4 * share) / 100):0.00} %");

    private static double WorstShare(IEnumerable<(double CurrentA, double AccuracyA)> currents)
    {
        (double CurrentA, double AccuracyA)[] all = [.. currents.Where(each => each.CurrentA != 0)];
        double leastA = LeastShare * all.Select(each => Math.Abs(each.CurrentA)).DefaultIfEmpty().Max();
        return all.Where(each => Math.Abs(each.CurrentA) >= leastA).Select(each => each.AccuracyA / Math.Abs(each.CurrentA)).DefaultIfEmpty().Max();
    }
}

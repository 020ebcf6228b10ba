using CopperPath.Electrical;

namespace CopperPath.Judging;

/// <summary>What one item's range does by itself.</summary>
/// <param name="Item">The item.</param>
/// <param name="Change">Value with this item alone at its worse end, less the nominal value; not negative.</param>
/// <param name="Share">Its part of the changes of all items, 0 to 1.</param>
/// <param name="Words">What is so at that end, as the end of a sentence.</param>
public sealed record ToleranceShare(string Item, double Change, double Share, string Words);

/// <summary>A result over the range of what is not known, in its own unit.</summary>
/// <param name="Nominal">As everything is stated.</param>
/// <param name="Worst">With every item at its worse end; infinite where the board then runs away.</param>
/// <param name="WorstBounds">Proven bounds of the worst value, or null where it is an estimate of first order.</param>
/// <param name="Shares">The items, in the order of the brief's keys.</param>
public sealed record Spread(double Nominal, double Worst, Bracket? WorstBounds, IReadOnlyList<ToleranceShare> Shares)
{
    /// <summary>What a sentence says of the worst value: where most of it comes from; empty where nothing makes it worse.</summary>
    public string MostWords => Shares.Where(share => share.Change > 0).MaxBy(share => share.Change) is { } largest
        ? $", {(largest.Share > 0.5 ? "most" : "the largest part")} of it where {largest.Words}" : "";

    /// <summary>A spread from what a state makes of the value: each item at both its ends, then all at their worse ones.</summary>
    internal static Spread Of(
        BuildState nominal, IReadOnlyList<ToleranceItem> items, Func<BuildState, double> value, Func<BuildState, Bracket>? bounds = null)
    {
        double nominalValue = value(nominal);
        (RangeEnd End, double Change)[] changes = new (RangeEnd, double)[items.Count];
        BuildState worst = nominal;
        for (int i = 0; i < items.Count; i++)
        {
            double usual = value(items[i].Usual.Apply(nominal)) - nominalValue;
            double other = value(items[i].Other.Apply(nominal)) - nominalValue;
            changes[i] = other > usual ? (items[i].Other, other) : (items[i].Usual, usual);
            worst = changes[i].End.Apply(worst);
        }

        return new Spread(nominalValue, value(worst), bounds?.Invoke(worst), SharesOf(items, changes));
    }

    internal static IReadOnlyList<ToleranceShare> SharesOf(IReadOnlyList<ToleranceItem> items, IReadOnlyList<(RangeEnd End, double Change)> changes)
    {
        double sum = changes.Sum(change => Math.Max(0, change.Change));
        return [.. items.Zip(changes, (item, change) => (item, change.End, Change: Math.Max(0, change.Change)))
            .Select(one => new ToleranceShare(one.item.Name, one.Change, sum > 0 ? one.Change / sum : 0, one.End.Words))];
    }
}

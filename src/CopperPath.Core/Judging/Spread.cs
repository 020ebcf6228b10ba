using CopperPath.Electrical;

namespace CopperPath.Judging;

/// <summary>What one item's range does by itself.</summary>
/// <param name="Item">The item.</param>
/// <param name="Change">Value with this item alone at its worse end, less the nominal value; not negative.</param>
/// <param name="Share">Its part of the changes of all items, 0 to 1.</param>
public sealed record ToleranceShare(string Item, double Change, double Share);

/// <summary>A result under the ranges of the brief, in its own unit.</summary>
/// <param name="Nominal">As everything is stated.</param>
/// <param name="Worst">With every item at its worse end; infinite where the board then runs away.</param>
/// <param name="WorstBounds">Proven bounds of the worst value, or null where it is an estimate of first order.</param>
/// <param name="Shares">The items, in the order of the brief's keys.</param>
public sealed record Spread(double Nominal, double Worst, Bracket? WorstBounds, IReadOnlyList<ToleranceShare> Shares)
{
    /// <summary>A spread from what a state makes of the value: each item at both its ends, then all at their worse ones.</summary>
    internal static Spread Of(
        BuildState nominal, IReadOnlyList<ToleranceItem> items, Func<BuildState, double> value, Func<BuildState, Bracket>? bounds = null)
    {
        double nominalValue = value(nominal);
        double[] changes = new double[items.Count];
        BuildState worst = nominal;
        for (int i = 0; i < items.Count; i++)
        {
            double usual = value(items[i].Usual(nominal)) - nominalValue;
            double other = value(items[i].Other(nominal)) - nominalValue;
            changes[i] = Math.Max(0, Math.Max(usual, other));
            worst = other > usual ? items[i].Other(worst) : items[i].Usual(worst);
        }

        return new Spread(nominalValue, value(worst), bounds?.Invoke(worst), SharesOf(items, changes));
    }

    internal static IReadOnlyList<ToleranceShare> SharesOf(IReadOnlyList<ToleranceItem> items, double[] changes)
    {
        double sum = changes.Sum();
        return [.. items.Select((item, i) => new ToleranceShare(item.Name, changes[i], sum > 0 ? changes[i] / sum : 0))];
    }
}

using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Stretches that must not be one piece of copper and are: feed and return, a switch node and anything else, two nets the
/// brief calls by different names. Parts of one conductor's current, such as average and ripple, and an output that feeds
/// the next converter may share copper; where the brief points at two places for what may as well be shorted, the question
/// goes back to it.
/// </summary>
internal static class OneConductorRule
{
    public static IEnumerable<Finding> Judge(IReadOnlyList<SolvedNet> nets) => nets
        .SelectMany(net => net.Bound.Entries).Distinct()
        .GroupBy(net => net.Net, ReferenceEqualityComparer.Instance)
        .Select(conductor => Pairs([.. conductor]).OrderByDescending(pair => pair.IsCertain).FirstOrDefault())
        .OfType<Pair>().Select(FindingOf);

    /// <summary>One finding speaks for a conductor: of its first pair that is a short for certain, else of the first in doubt.</summary>
    private static IEnumerable<Pair> Pairs(IReadOnlyList<BoundNet> nets) =>
        from i in Enumerable.Range(0, nets.Count)
        from j in Enumerable.Range(i + 1, nets.Count - i - 1)
        let pair = Compare(nets[i], nets[j])
        where pair is not null
        select pair;

    private static Pair? Compare(BoundNet one, BoundNet other)
    {
        (NetReview a, NetReview b) = (one.Review, other.Review);
        bool isOneSelector = a.Selector == b.Selector;
        if (a.Selector is NetByName named && b.Selector is NetByName otherNamed && !isOneSelector)
        {
            return new Pair(one, other, $"the brief names them {named.Name} and {otherNamed.Name}", true);
        }

        (string? work, string? otherWork) = (WorkOf(a.Role), WorkOf(b.Role));
        if (work is not null && otherWork is not null && work != otherWork)
        {
            // A converter's output may feed the next one; then the brief can say so by one name or place for both.
            bool mayFeedTheNext = work is Supply or Output && otherWork is Supply or Output;
            return mayFeedTheNext && isOneSelector ? null
                : new Pair(one, other, $"one is {work}, the other {otherWork}", !mayFeedTheNext);
        }

        return isOneSelector ? null
            : work == SwitchNode ? new Pair(one, other, "both are switch nodes", a.Siblings is not null && a.Siblings == b.Siblings)
            : PartOnBothWays(a, b) is { } part ? new Pair(one, other, $"current leaves {part} by one and comes back to it by the other", false)
            : null;
    }

    private const string Supply = "a supply";
    private const string SwitchNode = "a switch node";
    private const string Output = "an output";

    private static string? WorkOf(NetRole role) => role switch
    {
        NetRole.Feed or NetRole.Input => Supply,
        NetRole.SwitchNode => SwitchNode,
        NetRole.Output => Output,
        NetRole.Return => "a return",
        _ => null,
    };

    /// <summary>A part (or a terminal's name) that feeds one stretch and takes from the other through contacts of its own for each.</summary>
    private static string? PartOnBothWays(NetReview a, NetReview b) => (
        from own in a.Terminals
        from others in b.Terminals
        where own.CurrentA * others.CurrentA < 0 && !own.Contacts.Any(contact => others.Contacts.Any(other => IsSame(contact, other)))
        from part in PartsOf(own).Intersect(PartsOf(others))
        select part).FirstOrDefault();

    private static IEnumerable<string> PartsOf(Terminal terminal) => terminal.Contacts
        .Select(contact => contact switch { PinContact pin => pin.Component, ComponentContact part => part.Component, _ => null })
        .OfType<string>().Append(terminal.Name);

    private static bool IsSame(Contact a, Contact b) => a with { Position = b.Position } == b;

    private static Finding FindingOf(Pair pair)
    {
        (NetReview a, NetReview b) = (pair.One.Review, pair.Other.Review);
        (int layer, PointNm at) = DropRule.PlaceOf(pair.Other.Terminals[0]);
        return new Finding(
            RuleCatalogue.OneConductor.Id, pair.IsCertain ? FindingLevel.BeyondLimit : FindingLevel.Undecided, a.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y), null,
            $"{a.Name} and {b.Name} are one piece of copper, and {pair.Why}"
                + (pair.IsCertain ? ": a short circuit, or the brief points at the wrong copper." : ": a short circuit, unless the brief means one conductor."),
            "Look for copper or a plated hole that joins the two"
                + (pair.IsCertain ? ", and at the places the brief names." : "; if they are one conductor by design, give both the same `net` or the same `at`."),
            RuleCatalogue.OneConductor.Evidence);
    }

    /// <param name="One">The stretch the brief has first.</param>
    /// <param name="Other">The one on the same copper.</param>
    /// <param name="Why">What sets the two apart, as half a sentence.</param>
    /// <param name="IsCertain">False where the brief may mean one conductor.</param>
    private sealed record Pair(BoundNet One, BoundNet Other, string Why, bool IsCertain);
}

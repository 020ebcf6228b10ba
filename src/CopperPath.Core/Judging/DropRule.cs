using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Judges the largest drop between a terminal where current enters and one where it leaves. Only a drop whose upper bound is
/// within the limit is. Where the bounds are as close as was asked for, any other is beyond it; where they are not and the
/// limit lies between them, <see cref="AccuracyRule"/> leaves it undecided.
/// </summary>
internal static class DropRule
{
    public static IEnumerable<Finding> Judge(SolvedNet net)
    {
        Bracket bounds = net.Conduction.DropBoundsV;
        if (net.Bound.Review.Limits.VoltageDropV is not { } limitV || bounds.Greatest <= limitV || IsOpen(net, limitV))
        {
            yield break;
        }

        TerminalResult highest = net.Conduction.Terminals.Where(t => t.Terminal.CurrentA > 0).MaxBy(t => t.PotentialV)!;
        TerminalResult lowest = net.Conduction.Terminals.Where(t => t.Terminal.CurrentA < 0).MinBy(t => t.PotentialV)!;
        (int layer, PointNm at) = PlaceOf(lowest.Terminal);
        bool isLikely = net.Conduction.DropV > limitV;
        double judgedV = isLikely ? net.Conduction.DropV : bounds.Greatest;
        yield return new Finding(
            RuleCatalogue.Drop.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y),
            new Measure("voltage drop", "V", judgedV, limitV),
            $"The copper {(isLikely ? "loses" : "may lose up to")} {QuantityText.Voltage(judgedV)} between {highest.Terminal.Name} and {lowest.Terminal.Name}; "
                + $"{QuantityText.Voltage(limitV)} is allowed."
                + (bounds.Least > limitV ? "" : $" The solve puts it between {QuantityText.Voltage(bounds.Least)} and {QuantityText.Voltage(bounds.Greatest)}."),
            "Mend the narrowest sections named for this net first; they make most of the drop.",
            "direct current, one copper temperature for the whole net");
    }

    /// <summary>Whether the limit lies between bounds that are farther apart than was asked for.</summary>
    internal static bool IsOpen(SolvedNet net, double limitV) => net.Conduction.Status == ConductionStatus.AccuracyNotReached
        && net.Conduction.DropBoundsV.Least <= limitV && net.Conduction.DropBoundsV.Greatest > limitV;

    internal static (int Layer, PointNm At) PlaceOf(BoundTerminal terminal)
    {
        Contact contact = terminal.Contacts[0];
        return contact.Areas.Count > 0
            ? (contact.Areas[0].Layer, BoxNm.Of(contact.Areas[0].Outline).Centre)
            : (1, contact.Barrels[0].Centre);
    }
}

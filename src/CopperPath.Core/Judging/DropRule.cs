using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Judges the largest drop between a terminal where current enters and one where it leaves.</summary>
internal static class DropRule
{
    public static IEnumerable<Finding> Judge(SolvedNet net)
    {
        if (net.Bound.Review.Limits.VoltageDropV is not { } limitV || net.Conduction.DropV <= limitV)
        {
            yield break;
        }

        TerminalResult highest = net.Conduction.Terminals.Where(t => t.Terminal.CurrentA > 0).MaxBy(t => t.PotentialV)!;
        TerminalResult lowest = net.Conduction.Terminals.Where(t => t.Terminal.CurrentA < 0).MinBy(t => t.PotentialV)!;
        (int layer, PointNm at) = PlaceOf(lowest.Terminal);
        yield return new Finding(
            RuleCatalogue.Drop.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y),
            new Measure("voltage drop", "V", net.Conduction.DropV, limitV),
            $"The copper loses {QuantityText.Voltage(net.Conduction.DropV)} between {highest.Terminal.Name} and {lowest.Terminal.Name}; "
                + $"{QuantityText.Voltage(limitV)} is allowed.",
            "Mend the narrowest sections named for this net first; they make most of the drop.",
            "direct current, one copper temperature for the whole net");
    }

    internal static (int Layer, PointNm At) PlaceOf(BoundTerminal terminal)
    {
        Contact contact = terminal.Contacts[0];
        return contact.Areas.Count > 0
            ? (contact.Areas[0].Layer, BoxNm.Of(contact.Areas[0].Outline).Centre)
            : (1, contact.Barrels[0].Centre);
    }
}

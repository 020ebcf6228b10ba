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
    private const string Assumption = "direct current, one copper temperature for the whole net";

    /// <param name="net">A solved net.</param>
    /// <param name="study">The range of what is not known.</param>
    public static IEnumerable<Finding> Judge(SolvedNet net, ToleranceStudy study)
    {
        Bracket bounds = net.Conduction.DropBoundsV;
        Spread drop = AtMost(study.Of(net)!.DropV, bounds.Greatest / net.Conduction.DropV);
        if (net.Bound.Review.Limits.VoltageDropV is not { } limitV || IsOpen(net, limitV))
        {
            yield break;
        }

        TerminalResult highest = net.Conduction.Terminals.Where(t => t.Terminal.CurrentA > 0).MaxBy(t => t.PotentialV)!;
        TerminalResult lowest = net.Conduction.Terminals.Where(t => t.Terminal.CurrentA < 0).MinBy(t => t.PotentialV)!;
        (int layer, PointNm at) = PlaceOf(lowest.Terminal);
        if (bounds.Greatest <= limitV)
        {
            if (drop.Worst > limitV)
            {
                yield return new Finding(
                    RuleCatalogue.Drop.Id, FindingLevel.WithinAsStated, net.Bound.Review.Name, layer,
                    Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y),
                    new Measure("voltage drop", "V", drop.Nominal, limitV) { Worst = drop.Worst },
                    $"Between {highest.Terminal.Name} and {lowest.Terminal.Name} the copper loses {RangeWords.Of(drop, limitV, QuantityText.Voltage)}",
                    "Widen the narrowest sections of this net, or state the copper and plating that are ordered.",
                    $"{Assumption}; {RangeWords.Assumption}");
            }

            yield break;
        }

        bool isLikely = net.Conduction.DropV > limitV;
        double judgedV = isLikely ? net.Conduction.DropV : bounds.Greatest;
        yield return new Finding(
            RuleCatalogue.Drop.Id, FindingLevel.BeyondLimit, net.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y),
            new Measure("voltage drop", "V", judgedV, limitV) { Worst = drop.Worst },
            $"The copper {(isLikely ? "loses" : "may lose up to")} {QuantityText.Voltage(judgedV)} between {highest.Terminal.Name} and {lowest.Terminal.Name}; "
                + $"{QuantityText.Voltage(limitV)} is allowed."
                + (bounds.Least > limitV ? "" : $" The solve puts it between {QuantityText.Voltage(bounds.Least)} and {QuantityText.Voltage(bounds.Greatest)}."),
            "Mend the narrowest sections named for this net first; they make most of the drop.",
            Assumption);
    }

    /// <summary>A drop at worst by its upper bound: proven where it can be, else as far beyond the estimate as the nominal bound is.</summary>
    private static Spread AtMost(Spread drop, double boundRatio) => drop with { Worst = drop.WorstBounds?.Greatest ?? (drop.Worst * boundRatio) };

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

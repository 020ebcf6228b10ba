using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Heats the worst section and the worst plated hole of a stretch by the stated overloads, no heat lost. The overload is
/// taken to divide over the copper as the reviewed current does.
/// </summary>
internal static class FaultRule
{
    private const double MeltingK = Units.ZeroCelsiusK + 1083;

    public static IEnumerable<Finding> Judge(ReviewBrief brief, IReadOnlyList<SolvedNet> nets, ConductorRating rating) =>
        from fault in brief.Faults
        from net in nets
        where net.Bound.Review.Name == fault.Stretch
        let worst = WorstOf(net, rating)
        where worst is not null
        select FindingOf(fault, net, worst, brief.ConductorK);

    private static Finding FindingOf(FaultCase fault, SolvedNet net, Place worst, double startK)
    {
        double sectionM2 = worst.SectionM2;
        double through = fault.SquaredCurrentSeconds * worst.CurrentShare * worst.CurrentShare;

        // Beyond melting the form means nothing: the value stops there, and the sentence says so.
        double reachedK = Math.Min(AdiabaticLimit.FinalK(sectionM2, through, startK), MeltingK);
        double scale = 1 / (worst.CurrentShare * worst.CurrentShare);
        double toLimit = fault.LimitK > startK ? scale * AdiabaticLimit.SquaredCurrentSeconds(sectionM2, startK, fault.LimitK) : 0;
        double toMelting = scale * AdiabaticLimit.SquaredCurrentSeconds(sectionM2, startK, MeltingK);
        bool isBeyond = reachedK > fault.LimitK;
        return new Finding(
            RuleCatalogue.Fault.Id, isBeyond ? FindingLevel.BeyondLimit : FindingLevel.Remark, net.Bound.Review.Name,
            worst.Layer, worst.XM, worst.YM, new Measure("temperature", "K", reachedK, fault.LimitK),
            $"{fault.Name}, {QuantityText.Current(fault.CurrentA)} for {QuantityText.Time(fault.TimeS)}, heats the worst {worst.What} "
                + $"of {QuantityText.Area(sectionM2)} from {QuantityText.Temperature(startK)} "
                + (reachedK >= MeltingK ? "until it melts" : $"to {QuantityText.Temperature(reachedK)}")
                + $"; {QuantityText.Temperature(fault.LimitK)} is allowed. "
                + $"The fault has {QuantityText.JouleIntegral(fault.SquaredCurrentSeconds)}; the limit is reached at {QuantityText.JouleIntegral(toLimit)}, melting at {QuantityText.JouleIntegral(toMelting)}.",
            isBeyond ? "Widen the section, or let a faster fuse or a current limit cut the fault short." : "Nothing to mend.",
            "adiabatic form of IEC 60949, from memory: no heat lost to board or neighbours, so on the safe side; "
                + "the overload divides over the copper as the reviewed current does");
    }

    /// <summary>The place with the most current for its section.</summary>
    private static Place? WorstOf(SolvedNet net, ConductorRating rating)
    {
        double enteringA = net.Bound.Terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA);
        IEnumerable<Place> sections = net.Sections.Where(section => section.WidthM > 0).Select(section => new Place(
            "section", section.Layer, section.AtXM, section.AtYM, rating.CopperSectionM2(section), section.CurrentA / enteringA));
        IEnumerable<Place> holes = net.Conduction.Barrels.Select(barrel => new Place(
            "plated hole", barrel.UpperLayer, Units.MetresFromNm(barrel.Barrel.Centre.X), Units.MetresFromNm(barrel.Barrel.Centre.Y),
            rating.BarrelSectionM2(barrel), Math.Abs(barrel.CurrentA) / enteringA));
        return sections.Concat(holes).MaxBy(place => place.CurrentShare / place.SectionM2);
    }

    private sealed record Place(string What, int Layer, double XM, double YM, double SectionM2, double CurrentShare);
}

using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Electrical;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Heats the worst section and the worst plated hole of a stretch by the stated overloads, no heat lost. The overload is
/// taken to divide over the copper as the reviewed current does.
/// </summary>
internal static class FaultRule
{
    private const double MeltingK = Units.ZeroCelsiusK + 1083;

    /// <param name="brief">Faults, and the copper's temperature before them.</param>
    /// <param name="nets">Solved nets.</param>
    /// <param name="stack">The build as stated.</param>
    /// <param name="ranges">What is not known.</param>
    public static IEnumerable<Finding> Judge(ReviewBrief brief, IReadOnlyList<SolvedNet> nets, Stackup stack, BoardRanges ranges) =>
        from fault in brief.Faults
        from net in nets
        where net.Bound.Review.Name == fault.Stretch
        let worst = WorstOf(net, ConductorRating.Shown(brief.Limits.JudgeBy, stack))
        where worst is not null
        select FindingOf(fault, net, worst, brief.ConductorK, SpreadOf(fault, net, brief, stack, ranges));

    /// <summary>The temperature reached in other builds, which have other worst places.</summary>
    private static Spread SpreadOf(FaultCase fault, SolvedNet net, ReviewBrief brief, Stackup stack, BoardRanges ranges) =>
        new NetResponse(net, brief, stack, ranges).SpreadOf(state => ReachedK(
            fault, WorstOf(net, ConductorRating.Shown(brief.Limits.JudgeBy, state.StackOf(brief, stack)))!, state.ConductorK(brief)));

    /// <summary>Beyond melting the form means nothing: the value stops there.</summary>
    private static double ReachedK(FaultCase fault, Place place, double startK) => Math.Min(
        AdiabaticLimit.FinalK(place.SectionM2, fault.SquaredCurrentSeconds * place.CurrentShare * place.CurrentShare, startK), MeltingK);

    private static Finding FindingOf(FaultCase fault, SolvedNet net, Place worst, double startK, Spread spread)
    {
        double sectionM2 = worst.SectionM2;
        double reachedK = spread.Nominal;
        double scale = 1 / (worst.CurrentShare * worst.CurrentShare);
        double toLimit = fault.LimitK > startK ? scale * AdiabaticLimit.SquaredCurrentSeconds(sectionM2, startK, fault.LimitK) : 0;
        double toMelting = scale * AdiabaticLimit.SquaredCurrentSeconds(sectionM2, startK, MeltingK);
        bool isBeyond = reachedK > fault.LimitK;
        bool isAsStated = !isBeyond && spread.Worst > fault.LimitK;
        return new Finding(
            RuleCatalogue.Fault.Id, isBeyond ? FindingLevel.BeyondLimit : isAsStated ? FindingLevel.WithinAsStated : FindingLevel.Remark, net.Bound.Review.Name,
            worst.Layer, worst.XM, worst.YM, new Measure("temperature", "K", reachedK, fault.LimitK) { Worst = spread.Worst },
            $"{fault.Name}, {QuantityText.Current(fault.CurrentA)} for {QuantityText.Time(fault.TimeS)}, heats the worst {worst.What} "
                + $"of {QuantityText.Area(sectionM2)} from {QuantityText.Temperature(startK)} "
                + (reachedK >= MeltingK ? "until it melts" : $"to {QuantityText.Temperature(reachedK)}")
                + $"; {QuantityText.Temperature(fault.LimitK)} is allowed. "
                + (isAsStated ? $"It is {RangeWords.AtWorst(spread, QuantityText.Temperature)}. " : "")
                + $"The fault has {QuantityText.JouleIntegral(fault.SquaredCurrentSeconds)}; the limit is reached at {QuantityText.JouleIntegral(toLimit)}, melting at {QuantityText.JouleIntegral(toMelting)}.",
            isBeyond || isAsStated ? "Widen the section, or let a faster fuse or a current limit cut the fault short." : "Nothing to mend.",
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

using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Electrical;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// Heats the worst section and the worst plated hole of a stretch by the stated overloads: no heat lost while there is no time for it, on
/// the board itself once there is. The overload is taken to divide over the copper as the reviewed current does.
/// </summary>
/// <remarks>
/// Heat has had time to leave once a layer of laminate that stores as much as the copper is warmed through: c d with c_c t = c d, in
/// d^2 / a = (c_c t)^2 / (k c) with the thickness t of the copper, 24 ms for 35 um, 96 ms for 70 um.
/// </remarks>
internal static class FaultRule
{
    private const double MeltingK = Units.ZeroCelsiusK + 1083;

    /// <param name="brief">Faults, and the copper's temperature before them.</param>
    /// <param name="nets">Solved nets.</param>
    /// <param name="stack">The build as stated.</param>
    /// <param name="study">The range of what is not known.</param>
    /// <param name="board">The board, to be taken through faults; null to take those as if no heat left the copper.</param>
    public static IEnumerable<Finding> Judge(ReviewBrief brief, IReadOnlyList<SolvedNet> nets, Stackup stack, ToleranceStudy study, BoardHeat? board) =>
        from fault in brief.Faults
        from net in nets
        where net.Bound.Review.Name == fault.Stretch
        let worst = WorstOf(net, ConductorRating.Shown(brief.Limits.JudgeBy, stack))
        where worst is not null
        let spread = SpreadOf(fault, net, brief, stack, study.Ranges)
        select OnBoard(brief, fault, net, worst, stack, board, RatioOf(net, spread, brief, study)) ?? FindingOf(fault, net, worst, brief.ConductorK, spread);

    /// <summary>How many times the stated rise it is at worst: as the steady rise of the stretch, or as without any heat leaving where there is none.</summary>
    private static double RatioOf(SolvedNet net, Spread adiabatic, ReviewBrief brief, ToleranceStudy study) =>
        study.Of(net)?.OwnRiseK is { Nominal: > 0 } own ? own.Worst / own.Nominal
            : adiabatic.Nominal > brief.ConductorK ? (adiabatic.Worst - brief.ConductorK) / (adiabatic.Nominal - brief.ConductorK) : 1;

    /// <summary>The board through a fault; null where heat has no time to leave, or no board to go to.</summary>
    private static Finding? OnBoard(ReviewBrief brief, FaultCase fault, SolvedNet net, Place worst, Stackup stack, BoardHeat? board, double ratio)
    {
        double storedM = worst.IsHole ? stack.PlatingM : stack.ThicknessM[worst.Layer - 1];
        double leavingS = TimeToLeaveS(storedM, BoardHeat.MaterialsOf(brief.Thermal.Laminate));
        if (fault.TimeS < leavingS || board is null || board.Own.Result.Status != ThermalStatus.Solved
            || board.Stretches.FirstOrDefault(stretch => ReferenceEquals(stretch.Conduction, net.Conduction)) is not { } stretch)
        {
            return null;
        }

        LoadedHeat heat = board.Through(stretch, fault.CurrentA / net.Bound.EnteringA, fault.TimeS);
        if (heat.Failure is not null)
        {
            return null;
        }

        HottestPlace hottest = HottestCopper.Of(net.Conduction, net.Bound.Net, new OwnRise(heat.Most, null));
        double reachedK = brief.AmbientK + hottest.RiseK;
        if (reachedK >= MeltingK)
        {
            return null;
        }

        double worstK = brief.AmbientK + (ratio * hottest.RiseK);
        FindingLevel level = reachedK > fault.LimitK ? FindingLevel.BeyondLimit
            : reachedK + hottest.EstimateK > fault.LimitK ? FindingLevel.Undecided
            : worstK + (ratio * hottest.EstimateK) > fault.LimitK ? FindingLevel.WithinAsStated : FindingLevel.Remark;
        return new Finding(
            RuleCatalogue.Fault.Id, level, net.Bound.Review.Name, hottest.Layer, hottest.XM, hottest.YM, new Measure("temperature", "K", reachedK, fault.LimitK) { Worst = worstK },
            $"{fault.Name}, {QuantityText.Current(fault.CurrentA)} for {QuantityText.Time(fault.TimeS)} on the warm board, heats the hottest copper of this stretch "
                + $"to {QuantityText.Temperature(reachedK)}, give or take {QuantityText.TemperatureDifference(hottest.EstimateK)}; {QuantityText.Temperature(fault.LimitK)} is allowed."
                + (level == FindingLevel.Undecided ? " Whether it is within can not be said."
                    : level == FindingLevel.WithinAsStated ? $" It may be {QuantityText.Temperature(worstK)} with everything that is not known at its worse end." : ""),
            level == FindingLevel.Remark ? "Nothing to mend." : "Widen the section, or let a faster fuse or a current limit cut the fault short.",
            $"solved in time on this board, for heat has time to leave the copper, {QuantityText.Time(leavingS)} here; "
                + "the overload divides over the copper as the reviewed current does, everything else as in the steady state");
    }

    /// <summary>Time in which as much laminate as stores what the copper stores is warmed through, seconds.</summary>
    /// <param name="copperM">Thickness of the copper, metres.</param>
    /// <param name="materials">Conductivities and capacities.</param>
    internal static double TimeToLeaveS(double copperM, ThermalMaterials materials) =>
        Math.Pow(materials.CopperJPerM3K * copperM, 2) / (materials.LaminateThroughWPerMK * materials.LaminateJPerM3K);

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
            Hole, barrel.UpperLayer, Units.MetresFromNm(barrel.Barrel.Centre.X), Units.MetresFromNm(barrel.Barrel.Centre.Y),
            rating.BarrelSectionM2(barrel), Math.Abs(barrel.CurrentA) / enteringA));
        return sections.Concat(holes).MaxBy(place => place.CurrentShare / place.SectionM2);
    }

    private sealed record Place(string What, int Layer, double XM, double YM, double SectionM2, double CurrentShare)
    {
        public bool IsHole => What == Hole;
    }

    private const string Hole = "plated hole";
}

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

    public static IEnumerable<Finding> Judge(ReviewBrief brief, IReadOnlyList<SolvedNet> nets, ConductorRating rating, Stackup stack, BoardHeat? board) =>
        from fault in brief.Faults
        from net in nets
        where net.Bound.Review.Name == fault.Stretch
        let worst = WorstOf(net, rating)
        where worst is not null
        select OnBoard(brief, fault, net, worst, stack, board) ?? FindingOf(fault, net, worst, brief.ConductorK);

    /// <summary>The board through a fault; null where heat has no time to leave, or no board to go to.</summary>
    private static Finding? OnBoard(ReviewBrief brief, FaultCase fault, SolvedNet net, Place worst, Stackup stack, BoardHeat? board)
    {
        double storedM = worst.IsHole ? stack.PlatingM : stack.ThicknessM[worst.Layer - 1];
        double leavingS = TimeToLeaveS(storedM, BoardHeat.MaterialsOf(brief.Thermal));
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

        FindingLevel level = reachedK > fault.LimitK ? FindingLevel.BeyondLimit
            : reachedK + hottest.EstimateK > fault.LimitK ? FindingLevel.Undecided : FindingLevel.Remark;
        return new Finding(
            RuleCatalogue.Fault.Id, level, net.Bound.Review.Name, hottest.Layer, hottest.XM, hottest.YM, new Measure("temperature", "K", reachedK, fault.LimitK),
            $"{fault.Name}, {QuantityText.Current(fault.CurrentA)} for {QuantityText.Time(fault.TimeS)} on the warm board, heats the hottest copper of this stretch "
                + $"to {QuantityText.Temperature(reachedK)}, give or take {QuantityText.TemperatureDifference(hottest.EstimateK)}; {QuantityText.Temperature(fault.LimitK)} is allowed."
                + (level == FindingLevel.Undecided ? " Whether it is within can not be said." : ""),
            level == FindingLevel.Remark ? "Nothing to mend." : "Widen the section, or let a faster fuse or a current limit cut the fault short.",
            $"solved in time on this board, for heat has time to leave the copper, {QuantityText.Time(leavingS)} here; "
                + "the overload divides over the copper as the reviewed current does, everything else as in the steady state");
    }

    /// <summary>Time in which as much laminate as stores what the copper stores is warmed through, seconds.</summary>
    /// <param name="copperM">Thickness of the copper, metres.</param>
    /// <param name="materials">Conductivities and capacities.</param>
    internal static double TimeToLeaveS(double copperM, ThermalMaterials materials) =>
        Math.Pow(materials.CopperJPerM3K * copperM, 2) / (materials.LaminateThroughWPerMK * materials.LaminateJPerM3K);

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

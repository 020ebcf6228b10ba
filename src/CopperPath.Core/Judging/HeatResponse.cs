using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Nets;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// The board's temperatures over the range of what is not known: solved again with everything at its worse end, on the cells before
/// the last halving, and with each item alone there, on wider cells. Current keeps its nominal pattern.
/// </summary>
/// <remarks>
/// Which end is the worse one is asked at the hottest copper. Where an item at that end helps another place, what it
/// helps by is added there again: the place is then given as if the item were as stated.
/// </remarks>
internal sealed class HeatResponse
{
    private readonly IReadOnlyList<ToleranceItem> _items;
    private readonly BoardHeat _board;
    private readonly OwnRise _roughly;
    private readonly (RangeEnd End, OwnRise Field)[] _alone;
    private readonly OwnRise _together;
    private readonly OwnRise _warmest;
    private readonly double _ambientK;
    private readonly double _warmestAmbientK;

    private HeatResponse(
        IReadOnlyList<ToleranceItem> items, BoardHeat board, OwnRise roughly, (RangeEnd, OwnRise)[] alone, OwnRise together, OwnRise warmest,
        double ambientK, double warmestAmbientK)
    {
        (_items, _board, _roughly, _alone, _together, _warmest) = (items, board, roughly, alone, together, warmest);
        (_ambientK, _warmestAmbientK) = (ambientK, warmestAmbientK);
    }

    /// <param name="brief">Surroundings and laminate.</param>
    /// <param name="stack">Nominal build.</param>
    /// <param name="ranges">What is not known.</param>
    /// <param name="board">The board, solved as stated.</param>
    /// <param name="hottest">Its hottest copper.</param>
    public static HeatResponse Of(ReviewBrief brief, Stackup stack, BoardRanges ranges, BoardHeat board, NetTemperatures hottest)
    {
        IReadOnlyList<ToleranceItem> items = ToleranceItem.OfHeat(ranges);
        BuildState nominal = BuildState.Nominal(brief, stack);
        OwnRise roughly = board.RoughlyUnder(nominal.ConditionsOf(brief, stack));
        (RangeEnd End, OwnRise Field)[] alone = new (RangeEnd, OwnRise)[items.Count];
        Parallel.For(0, items.Count, i =>
        {
            alone[i] = At(items[i].Usual);
            if (AtHottest(alone[i].Field) < AtHottest(roughly) && At(items[i].Other) is var other && AtHottest(other.Field) > AtHottest(alone[i].Field))
            {
                alone[i] = other;
            }
        });

        BuildState worst = alone.Aggregate(nominal, (state, item) => item.End.Apply(state));
        OwnRise together = items.Count == 0 ? board.OnFirst : board.Under(worst.ConditionsOf(brief, stack));
        BuildState warm = worst with { AmbientK = ranges.AmbientK.Most };
        OwnRise warmest = warm == worst ? together : board.Under(warm.ConditionsOf(brief, stack));
        return new HeatResponse(items, board, roughly, alone, together, warmest, brief.AmbientK, warm.AmbientK);

        (RangeEnd End, OwnRise Field) At(RangeEnd end) => (end, board.RoughlyUnder(end.Apply(nominal).ConditionsOf(brief, stack), roughly));

        double AtHottest(OwnRise field) => RiseAt(field, hottest.Layer, hottest.XM, hottest.YM, null);
    }

    /// <summary>What a stretch's own current adds to its hottest copper, and where that is at worst.</summary>
    /// <param name="net">The stretch.</param>
    /// <param name="peak">Its hottest copper as stated.</param>
    public (Spread Spread, HottestPlace At) OwnRiseOf(SolvedNet net, NetTemperatures peak)
    {
        HottestPlace nominal = new(peak.PeakK, peak.EstimateK, peak.Layer, peak.XM, peak.YM);
        Spread there = OwnRiseAt(nominal, net.Bound.Net);
        if (_together.Result.Status != ThermalStatus.Solved || _items.Count == 0)
        {
            return (there, nominal);
        }

        HottestPlace moved = HottestCopper.Of(net.Conduction, net.Bound.Net, _together);
        moved = moved with { RiseK = _board.Own.RiseK(moved.Layer, moved.XM, moved.YM, net.Bound.Net) };
        Spread elsewhere = OwnRiseAt(moved, net.Bound.Net);
        return elsewhere.Worst > there.Worst ? (elsewhere with { Nominal = there.Nominal }, moved) : (there, nominal);
    }

    /// <summary>The spread of a rise that was read on the finer cells: its own value, changed as the wider cells say.</summary>
    public Spread OwnRiseAt(HottestPlace place, Net net)
    {
        double scale = ScaleOf(Read(_roughly));
        (RangeEnd, double Change)[] changes = [.. _alone.Select(item => (item.End, (scale * Read(item.Field)) - place.RiseK))];
        return SpreadOf(place.RiseK, ScaleOf(Read(_board.OnFirst)) * Read(_together), changes);

        double ScaleOf(double riseK) => riseK > 0 ? place.RiseK / riseK : 1;

        double Read(OwnRise field) => RiseAt(field, place.Layer, place.XM, place.YM, net);
    }

    /// <summary>The temperature of the board's hottest place with all heat, kelvin, and where that is at worst.</summary>
    public (Spread Spread, HottestPlace At) Temperature()
    {
        HottestPlace fine = _board.Field.Hottest();
        double scale = ScaleOf(HottestK(_roughly));
        (RangeEnd, double Change)[] changes = [.. _alone.Select((item, i) => (item.End,
            (scale * HottestK(item.Field)) - fine.RiseK + (_items[i].Name == ToleranceItem.Ambient ? _warmestAmbientK - _ambientK : 0)))];
        Spread spread = SpreadOf(_ambientK + fine.RiseK, _warmestAmbientK + (ScaleOf(HottestK(_board.OnFirst)) * HottestK(_warmest)), changes);
        return (spread, _warmest.All.Result.Status == ThermalStatus.Solved && _items.Count > 0 ? _warmest.All.Hottest() : fine);

        double ScaleOf(double riseK) => riseK > 0 ? fine.RiseK / riseK : 1;
    }

    private Spread SpreadOf(double nominal, double together, (RangeEnd End, double Change)[] changes) =>
        new(nominal, _items.Count == 0 ? nominal : Math.Max(nominal, together - changes.Sum(change => Math.Min(0, change.Change))), null, Spread.SharesOf(_items, changes));

    private static double HottestK(OwnRise field) =>
        field.All.Result.Status == ThermalStatus.Solved ? field.All.Hottest().RiseK : double.PositiveInfinity;

    /// <summary>Infinite where there is no steady state.</summary>
    private static double RiseAt(OwnRise field, int layer, double xM, double yM, Net? net) =>
        field.Result.Status == ThermalStatus.Solved ? field.RiseK(layer, xM, yM, net) : double.PositiveInfinity;
}

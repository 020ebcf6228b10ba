using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// The board's own rises under the ranges: solved again for each item and for all together, at the places that are
/// hottest as everything is stated. Current keeps its nominal pattern.
/// </summary>
internal sealed class HeatResponse
{
    private readonly IReadOnlyList<ToleranceItem> _items;
    private readonly OwnRise _nominal;
    private readonly OwnRise[] _alone;
    private readonly OwnRise _together;

    private HeatResponse(
        IReadOnlyList<ToleranceItem> items, OwnRise nominal, OwnRise[] alone, OwnRise together, OwnRise warmest) =>
        (_items, _nominal, _alone, _together, Warmest) = (items, nominal, alone, together, warmest);

    /// <summary>All at their worse ends, and ambient at its highest.</summary>
    public OwnRise Warmest { get; }

    /// <param name="brief">Ranges.</param>
    /// <param name="stack">Nominal build.</param>
    /// <param name="items">What has a range.</param>
    /// <param name="board">The board, solved as stated.</param>
    /// <param name="hottest">Its hottest copper.</param>
    public static HeatResponse Of(
        ReviewBrief brief, Stackup stack, IReadOnlyList<ToleranceItem> items, BoardHeat board, NetTemperatures hottest)
    {
        BuildState nominal = BuildState.Nominal(brief, stack);
        double nominalK = RiseAt(board.OnFirst, hottest);
        OwnRise[] alone = new OwnRise[items.Count];
        bool[] isOther = new bool[items.Count];
        Parallel.For(0, items.Count, i =>
        {
            OwnRise usual = Under(items[i].Usual(nominal));
            if (RiseAt(usual, hottest) >= nominalK)
            {
                alone[i] = usual;
                return;
            }

            OwnRise other = Under(items[i].Other(nominal));
            (alone[i], isOther[i]) = RiseAt(other, hottest) > RiseAt(usual, hottest) ? (other, true) : (usual, false);
        });

        BuildState worst = nominal;
        for (int i = 0; i < items.Count; i++)
        {
            worst = isOther[i] ? items[i].Other(worst) : items[i].Usual(worst);
        }

        OwnRise together = Under(worst);
        BuildState warm = worst with { AmbientK = brief.Tolerance!.AmbientK?.Most ?? brief.AmbientK };
        return new HeatResponse(items, board.OnFirst, alone, together, warm == worst ? together : Under(warm));

        OwnRise Under(BuildState state) => board.Under(state.ConditionsOf(brief, stack));
    }

    /// <summary>The spread of a peak that was solved on the finer cells: its own value, changed as the wider cells say.</summary>
    public Spread SpreadOf(NetTemperatures peak)
    {
        double scale = peak.PeakK / RiseAt(_nominal, peak);
        double[] changes = [.. _alone.Select(field => Math.Max(0, (scale * RiseAt(field, peak)) - peak.PeakK))];
        return new Spread(peak.PeakK, scale * RiseAt(_together, peak), null, Spread.SharesOf(_items, changes));
    }

    /// <summary>Rise at a place in the warmest state with all heat, likewise, kelvin.</summary>
    /// <param name="peak">The place.</param>
    /// <param name="nominal">All heat as stated, on the finer cells.</param>
    public double WarmestRiseK(NetTemperatures peak, TemperatureField nominal) => nominal.RiseK(peak.Layer, peak.XM, peak.YM)
        / _nominal.All.RiseK(peak.Layer, peak.XM, peak.YM) * (Warmest.Result.Status == ThermalStatus.Solved ? Warmest.All.RiseK(peak.Layer, peak.XM, peak.YM) : double.PositiveInfinity);

    /// <summary>Infinite where there is no steady state.</summary>
    private static double RiseAt(OwnRise field, NetTemperatures place) =>
        field.Result.Status == ThermalStatus.Solved ? field.RiseK(place.Layer, place.XM, place.YM) : double.PositiveInfinity;
}

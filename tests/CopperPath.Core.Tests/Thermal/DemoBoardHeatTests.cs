using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>The demo board's rises: the same whatever the cells within what these leave, hottest where the fault is.</summary>
public sealed class DemoBoardHeatTests(ITestOutputHelper output)
{
    /// <summary>Even cells of this size.</summary>
    private const double EvenCellM = 0.5e-3;

    /// <summary>What the two may differ by, a rise's share: even cells of half a millimetre come out low by up to 2 %.</summary>
    private const double Share = 0.03;

    /// <summary>On the mended board no copper is narrower than the even cells.</summary>
    [Fact]
    public void TheCellsDoNotShowInTheRises()
    {
        Review review = Check("revision-b");
        OwnRise chosen = review.Own.ShouldNotBeNull();
        OwnRise even = BoardHeat.Solve(
            review.Board!.Nets!, review.Board.Profile, review.Board.Bounds, review.Stack!,
            review.Brief!.Thermal with { CellM = EvenCellM, Losses = review.PartsHeat!.Losses }, review.Brief.AmbientK, SharedHeat.StretchesOf(review.Nets, null)).Own;

        foreach (SolvedNet net in review.Nets)
        {
            NetTemperatures onChosen = NetTemperatures.Of(net, chosen), onEven = NetTemperatures.Of(net, even);
            output.WriteLine(FormattableString.Invariant(
                $"{net.Bound.Review.Name} | peak {onChosen.PeakK:F2} +- {onChosen.EstimateK:F2} K, on even cells {onEven.PeakK:F2} +- {onEven.EstimateK:F2} K | mean {onChosen.MeanK:F2} K, {onEven.MeanK:F2} K"));
            onChosen.PeakK.ShouldBe(onEven.PeakK, Share * onEven.PeakK, net.Bound.Review.Name);
            onChosen.MeanK.ShouldBe(onEven.MeanK, Share * onEven.MeanK, net.Bound.Review.Name);
        }
    }

    /// <summary>What the copper adds is most where the feed's neck was planted, and stands well beyond the limit and its own estimate.</summary>
    [Fact]
    public void ThePlantedNeckIsTheHottestCopperByItsOwnLoss()
    {
        Review review = Check("revision-a");

        NetTemperatures hottest = review.Nets.Select(net => NetTemperatures.Of(net, review.Own!)).MaxBy(net => net.PeakK)!;

        hottest.Layer.ShouldBe(1);
        hottest.XM.ShouldBeInRange(25e-3, 29.9e-3);
        hottest.YM.ShouldBeInRange(85e-3, 85.4e-3);
        (hottest.PeakK - hottest.EstimateK).ShouldBeGreaterThan(1.5 * review.Brief!.Limits.TemperatureRiseK);
    }

    private static Review Check(string revision) =>
        Analysis.Check(Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", $"{revision}.yaml"));
}

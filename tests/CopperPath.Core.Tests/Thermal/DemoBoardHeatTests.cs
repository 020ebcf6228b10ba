using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>The demo board's rises: the same whatever the cells within what these leave, hottest where the fault is.</summary>
public sealed class DemoBoardHeatTests(ITestOutputHelper output)
{
    /// <summary>Even cells of this size put two across the neck of revision A.</summary>
    private const double EvenCellM = 0.5e-3;

    /// <summary>No estimate excuses more than this.</summary>
    private const double MostK = 0.75;

    [Theory]
    [InlineData("revision-a")]
    [InlineData("revision-b")]
    public void TheCellsDoNotShowInTheRises(string revision)
    {
        Review review = Analysis.Check(Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", $"{revision}.yaml"));
        OwnRise chosen = review.Own.ShouldNotBeNull();
        OwnRise even = BoardHeat.Solve(
            review.Board!.Nets!, review.Board.Profile, review.Board.Bounds, review.Stack!,
            review.Brief!.Thermal with { CellM = EvenCellM, Losses = review.PartsHeat!.Losses }, review.Brief.AmbientK, SharedHeat.StretchesOf(review.Nets, null)).Own;

        foreach (SolvedNet net in review.Nets)
        {
            NetTemperatures onChosen = NetTemperatures.Of(net, chosen), onEven = NetTemperatures.Of(net, even);
            output.WriteLine(FormattableString.Invariant(
                $"{revision} | {net.Bound.Review.Name} | peak {onChosen.PeakK:F2} +- {onChosen.EstimateK:F2} K, on even cells {onEven.PeakK:F2} +- {onEven.EstimateK:F2} K | mean {onChosen.MeanK:F2} K, {onEven.MeanK:F2} K"));
            double mayDifferK = Math.Max(0.02 * onEven.PeakK, Math.Min(onChosen.EstimateK, MostK));
            onChosen.PeakK.ShouldBe(onEven.PeakK, mayDifferK, net.Bound.Review.Name);
            onChosen.MeanK.ShouldBe(onEven.MeanK, 0.02 * onEven.MeanK, net.Bound.Review.Name);
        }

        if (revision == "revision-a")
        {
            ThePlantedNeckIsTheHottestPlace(review, even);
            ThePlantedNeckIsTheHottestPlace(review, chosen);
        }
    }

    /// <summary>The finding of the planted neck and the hottest copper of the board lie within a neck's length of each other.</summary>
    private static void ThePlantedNeckIsTheHottestPlace(Review review, OwnRise field)
    {
        Finding neck = review.Findings.First(finding => finding.Rule == RuleCatalogue.Neck.Id);
        NetTemperatures hottest = review.Nets.Select(net => NetTemperatures.Of(net, field)).MaxBy(net => net.PeakK)!;
        hottest.Layer.ShouldBe(neck.Layer);
        Math.Abs(hottest.XM - neck.XM).ShouldBeLessThan(3e-3);
        Math.Abs(hottest.YM - neck.YM).ShouldBeLessThan(3e-3);
    }
}

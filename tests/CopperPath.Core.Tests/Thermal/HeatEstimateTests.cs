using System.Globalization;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// The printed estimates of what is judged (the hottest place, what the own current adds most, the busiest hole) against a solve four times finer,
/// on boards drawn at random (<see cref="FinerSolve"/>). The boards themselves are solved with few nodes, so that there is something to estimate.
/// </summary>
public sealed class HeatEstimateTests(ITestOutputHelper output)
{
    /// <summary>Nodes a board's own solve should have at most; its first check is made however many it takes.</summary>
    private const int FewNodes = 40_000;

    [Theory]
    [InlineData(3)]
    [InlineData(21)]
    public void AnEstimateHoldsWhatAFinerSolveChanges(int scene) =>
        Of(scene, referenceNodes: 300_000).ShouldNotBeNull().ShouldAllBe(held => held.IsHeld);

    /// <summary>
    /// Of 200 boards, every reading of 19 in 20 lies within its estimate. Boards that get hotter than is solved are passed over.
    /// COPPERPATH_SOAK_SEED and COPPERPATH_SOAK_COUNT take another range.
    /// </summary>
    [Fact]
    [Trait("Category", "Soak")]
    public void NineteenOfTwentyHold()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is "1", "a soak; set COPPERPATH_SOAK=1");
        int first = Number("COPPERPATH_SOAK_SEED", 0), count = Number("COPPERPATH_SOAK_COUNT", 200);
        List<IReadOnlyList<Held>> scenes = [];
        for (int scene = first; scenes.Count < count; scene++)
        {
            if (Of(scene, referenceNodes: 1_000_000) is { } readings)
            {
                scenes.Add(readings);
            }
        }

        List<Held> all = [.. scenes.SelectMany(scene => scene)];
        int held = scenes.Count(scene => scene.All(reading => reading.IsHeld));
        double[] ratios = [.. all.Select(reading => reading.EstimateK / reading.OffK).Order()];
        double median = ratios[ratios.Length / 2];
        output.WriteLine(FormattableString.Invariant(
            $"{held} of {count} scenes held, {all.Count(reading => reading.IsHeld)} of {all.Count} readings; estimate over what it is off: median {median:F2}, least {ratios[0]:F2}"));

        held.ShouldBeGreaterThanOrEqualTo((int)Math.Ceiling(0.95 * count));
        median.ShouldBeLessThan(5);

        static int Number(string name, int otherwise) =>
            int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int value) ? value : otherwise;
    }

    private List<Held>? Of(int number, int referenceNodes)
    {
        Review review = RandomHeatScenes.Solve(number);
        if (FinerSolve.Of(review, FewNodes, referenceNodes) is not ({ } own, { } reference))
        {
            output.WriteLine($"scene {number}: hotter than is solved");
            return null;
        }

        List<Held> held = [Compare("hottest place", at => at.All.Result.RiseK.Max())];
        foreach (SolvedNet net in review.Nets)
        {
            HottestPlace copper = HottestCopper.Of(net.Conduction, net.Bound.Net, own);
            held.Add(Compare("own rise", at => at.RiseK(copper.Layer, copper.XM, copper.YM, net.Bound.Net)));
            foreach (BarrelCurrent hole in BarrelCurrent.BusiestOfEachHole(net.Conduction.Barrels).OrderByDescending(hole => Math.Abs(hole.CurrentA)).Take(1))
            {
                held.Add(Compare("hole", at => at.All.HottestOfHoleK(hole.Barrel)));
            }
        }

        return held;

        Held Compare(string name, Func<OwnRise, double> reading)
        {
            Held compared = new(reading(own), own.EstimateK(reading), reading(reference));
            output.WriteLine(FormattableString.Invariant(
                $"scene {number}, {name}: {compared.RiseK:F3} K, estimate {compared.EstimateK:F3} K, off by {compared.RiseK - compared.ReferenceK:F3} K{(compared.IsHeld ? "" : ", not held")}"));
            return compared;
        }
    }

    private sealed record Held(double RiseK, double EstimateK, double ReferenceK)
    {
        public double OffK => Math.Abs(RiseK - ReferenceK);

        public bool IsHeld => OffK <= EstimateK;
    }
}

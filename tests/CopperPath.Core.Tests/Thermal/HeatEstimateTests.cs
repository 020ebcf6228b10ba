using System.Globalization;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// The printed estimates of what is judged (the hottest place, what the own current adds most, the busiest hole) against a solve four times finer,
/// on boards drawn at random. Cells are a quarter as wide wherever temperature changes enough for it to count, as far as a solve of a
/// million nodes reaches, and levels near copper a quarter as far apart; the boards themselves are solved with few nodes, so that there is something to estimate.
/// </summary>
public sealed class HeatEstimateTests(ITestOutputHelper output)
{
    /// <summary>Nodes a board's own solve should have at most; its first check is made however many it takes.</summary>
    private const int FewNodes = 40_000;

    /// <summary>Cells are split twice where temperature changes from one to the next by this many times what is wanted, or more where that is too many.</summary>
    private const double LeastChange = 0.25;

    [Theory]
    [InlineData(3)]
    [InlineData(21)]
    public void AnEstimateHoldsWhatAFinerSolveChanges(int scene) =>
        Of(scene, referenceNodes: 300_000).ShouldAllBe(held => held.IsHeld);

    /// <summary>COPPERPATH_SOAK_SEED and COPPERPATH_SOAK_COUNT take another range of scenes.</summary>
    [Fact]
    [Trait("Category", "Soak")]
    public void NineteenOfTwentyHold()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is "1", "a soak; set COPPERPATH_SOAK=1");
        int first = Number("COPPERPATH_SOAK_SEED", 0), count = Number("COPPERPATH_SOAK_COUNT", 200);
        List<Held> all = [.. Enumerable.Range(first, count).SelectMany(scene => Of(scene, referenceNodes: 1_000_000))];
        double[] ratios = [.. all.Select(held => held.EstimateK / held.OffK).Order()];
        double held = all.Count(h => h.IsHeld) / (double)all.Count;
        output.WriteLine(FormattableString.Invariant(
            $"{all.Count} readings, {held:P1} held; estimate over what it is off: median {ratios[ratios.Length / 2]:F2}, least {ratios[0]:F2}"));

        held.ShouldBeGreaterThan(0.95);
        ratios[ratios.Length / 2].ShouldBeLessThan(5);

        static int Number(string name, int otherwise) =>
            int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int value) ? value : otherwise;
    }

    private List<Held> Of(int number, int referenceNodes)
    {
        Review review = RandomHeatScenes.Solve(number);
        HeatScene scene = new(review.Board!.Nets!, review.Board.Profile, review.Board.Bounds, review.Stack!,
            review.Brief!.Thermal with { Losses = review.PartsHeat!.Losses }, SharedHeat.StretchesOf(review.Nets, null));
        HeatConditions nominal = new(review.Stack!, review.Brief.AmbientK);
        OwnRise own = RefinedHeat.Solve(scene, nominal, FewNodes).Own;
        own.Result.Status.ShouldBe(ThermalStatus.Solved);
        HeatModel finer = new(scene, Finer(scene, own.All, referenceNodes), halvings: 3);
        OwnRise reference = new(
            finer.Solve(nominal, own.All, 1e-6),
            own.WithoutCopperLoss is null ? null : finer.Solve(nominal with { CurrentScale = 0 }, own.WithoutCopperLoss, 1e-6));
        reference.Result.Status.ShouldBe(ThermalStatus.Solved);

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

    private static CellTree Finer(HeatScene scene, TemperatureField field, int mostNodes)
    {
        TreeCells cells = (TreeCells)field.Network.Cells;
        double[] change = new double[cells.Count];
        double[] rise = field.Result.RiseK;
        foreach (CellFace face in cells.Faces)
        {
            for (int p = 0; p < cells.Planes.Count; p++)
            {
                (double a, double b) = (rise[(face.Low * cells.Planes.Count) + p], rise[(face.High * cells.Planes.Count) + p]);
                double times = Math.Abs(a - b) / Math.Max(RefinedHeat.WantedK, RefinedHeat.WantedShare * Math.Max(a, b));
                (change[face.Low], change[face.High]) = (Math.Max(change[face.Low], times), Math.Max(change[face.High], times));
            }
        }

        for (double least = LeastChange; ; least *= 1.4)
        {
            CellTree tree = cells.Tree.Copy();
            for (int column = 0; column < cells.Count; column++)
            {
                if (change[column] > least)
                {
                    int cell = cells.CellOf(column);
                    tree.Split(cell);
                    for (int quarter = 0; quarter < 4; quarter++)
                    {
                        tree.Split(tree.Child(cell, quarter));
                    }
                }
            }

            if (least > change.Max() || (long)tree.LeafCount * scene.LevelsFor(tree, halvings: 3).Count < mostNodes)
            {
                return tree;
            }
        }
    }

    private sealed record Held(double RiseK, double EstimateK, double ReferenceK)
    {
        public double OffK => Math.Abs(RiseK - ReferenceK);

        public bool IsHeld => OffK <= EstimateK;
    }
}

using CopperPath.Core.Tests.Electrical;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Judging;

/// <summary>What a solve says of itself is looked at: what was asked for and not reached ends in no pass where a limit hangs on it.</summary>
public sealed class EvidenceTests
{
    private static readonly Lazy<Review> s_clean = new(() => new BuckBoard { Sections = "tolerance: as stated\n" }.Check());

    /// <summary>An L: its inner corner keeps the bounds apart on any mesh.</summary>
    private static Plate Corner() => new Plate().Copper(1, [(0, 0), (24, 0), (24, 24), (20, 24), (20, 4), (0, 4)])
        .Terminal("west", 1, Plate.Box(0, 0, 4, 4)).Terminal("north", -1, Plate.Box(20, 20, 24, 24));

    [Theory]
    [InlineData(1, -2)]
    [InlineData(0, 0)]
    [InlineData(double.NaN, 1)]
    public void CurrentsThatDoNotAddUpHaveNoSolution(double inA, double outA)
    {
        Plate bar = new Plate().Rectangle(0, 0, 20, 5).Terminal("in", inA, Plate.Box(0, 0, 2, 5)).Terminal("out", outA, Plate.Box(18, 0, 20, 5));
        ConductionResult result = ConductionSolver.Solve(bar.Net, bar.Terminals, [], bar.Stack, SolveDemand.Default);

        result.Status.ShouldBe(ConductionStatus.CurrentsUnbalanced);
        result.HasFields.ShouldBeFalse();
        result.Explanation.ShouldNotBeNull().ShouldContain("add up to");
    }

    [Fact]
    public void AccuracyThatWasNotReachedIsNoPlainSolution()
    {
        ConductionResult ended = Corner().Solve(SolveDemand.Default with { Accuracy = 1e-6, RoundLimit = 2 });

        ended.Status.ShouldBe(ConductionStatus.AccuracyNotReached);
        ended.DropBoundsV.RelativeWidth.ShouldBeGreaterThan(1e-6);
        ended.Explanation.ShouldNotBeNull().ShouldContain("0.0001 % was asked for");
        Corner().Solve().Status.ShouldBe(ConductionStatus.Solved);
    }

    [Fact]
    public void AMeshAtItsLimitOfVerticesSaysSo()
    {
        SolveDemand demand = SolveDemand.Default with { StartingMesh = new(0.1e-3) { VertexLimit = 200 } };

        ConductionResult reached = Corner().Solve(demand);
        reached.Status.ShouldBe(ConductionStatus.Solved);
        reached.CoarseLayers.ShouldBe([1]);
        ConductionResult ended = Corner().Solve(demand with { Accuracy = 1e-4, RoundLimit = 1 });
        ended.Explanation.ShouldNotBeNull().ShouldContain("layer 1 ended at its limit of vertices");
    }

    [Theory]
    [InlineData("current")]
    [InlineData("power")]
    [InlineData("residual")]
    public void BooksThatDoNotBalanceAreNoSolution(string what)
    {
        ConductionResult whole = Corner().Solve();
        ConductionResult spoilt = what switch
        {
            "current" => whole with { CurrentBalanceRatio = 1e-4 },
            "power" => whole with { PowerBalanceRatio = 1e-4 },
            _ => whole with { RelativeResidual = double.NaN },
        };

        ConductionSolver.Judged(whole, SolveDemand.Default).Status.ShouldBe(ConductionStatus.Solved);
        ConductionResult judged = ConductionSolver.Judged(spoilt, SolveDemand.Default);
        judged.Status.ShouldBe(ConductionStatus.BooksDoNotBalance);
        VerdictOf(net => net with { Conduction = judged }).ShouldBe(Verdict.CouldNotJudge);
    }

    /// <summary>A drop is within its limit when its upper bound is. What lies between the bounds depends on what was asked for.</summary>
    [Theory]
    [InlineData(ConductionStatus.Solved, 0.1, Verdict.BeyondLimits)]
    [InlineData(ConductionStatus.Solved, 0.9, Verdict.BeyondLimits)]
    [InlineData(ConductionStatus.Solved, 1.1, Verdict.WithinLimits)]
    [InlineData(ConductionStatus.AccuracyNotReached, -0.1, Verdict.BeyondLimits)]
    [InlineData(ConductionStatus.AccuracyNotReached, 0.1, Verdict.CouldNotJudge)]
    [InlineData(ConductionStatus.AccuracyNotReached, 0.9, Verdict.CouldNotJudge)]
    [InlineData(ConductionStatus.AccuracyNotReached, 1.1, Verdict.WithinLimits)]
    public void ADropIsJudgedByItsUpperBound(ConductionStatus status, double limitBetweenBounds, Verdict expected) =>
        VerdictOf(net =>
        {
            Bracket bounds = net.Conduction.DropBoundsV;
            double limitV = bounds.Least + (limitBetweenBounds * (bounds.Greatest - bounds.Least));
            return Limited(net with { Conduction = net.Conduction with { Status = status } }, limits => limits with { VoltageDropV = limitV });
        }).ShouldBe(expected);

    /// <summary>Where no limit lies within what is open, missing the accuracy asked for is a remark.</summary>
    [Fact]
    public void AccuracyMissedWhereNothingHangsOnItIsARemark()
    {
        IReadOnlyList<Finding> findings = FindingsOf(net => net with
        {
            Conduction = net.Conduction with { Status = ConductionStatus.AccuracyNotReached, Explanation = "told to" },
        });

        findings.ShouldContain(finding => finding.Rule == "accuracy");
        findings.ShouldAllBe(finding => finding.Level == FindingLevel.Remark);
    }

    /// <summary>A hole that is within the limit by less than its current is known is judged by the most it may carry.</summary>
    [Fact]
    public void AHoleIsJudgedByTheMostItMayCarry()
    {
        Review review = s_clean.Value;
        ConductorRating rating = ConductorRating.Shown(review.Brief!.Limits.JudgeBy, review.Stack!);
        (SolvedNet busy, BarrelCurrent worst) = review.Nets.SelectMany(net => net.Conduction.Barrels.Select(barrel => (net, barrel)))
            .MaxBy(each => rating.BarrelRiseK(each.barrel));
        double riseK = rating.BarrelRiseK(worst), mostK = rating.BarrelRiseK(worst.AtMost());
        mostK.ShouldBeGreaterThan(riseK);

        IEnumerable<string> Rules(double limitK) => BarrelRule
            .Judge(Limited(busy, limits => limits with { TemperatureRiseK = limitK }), rating, review.Own!, review.Tolerance!).Select(finding => finding.Rule);
        Rules((riseK + mostK) / 2).ShouldBe(["barrel"]);
        Rules(mostK * 1.01).ShouldBeEmpty();
    }

    [Fact]
    public void TemperaturesThatDidNotSettleOrBalanceAreNoPass()
    {
        Review review = s_clean.Value;
        TemperatureField heat = review.Heat!;
        Verdict With(ThermalResult result) => Judge.VerdictOf(Judge.Findings(
            review.Brief!, review.Nets, review.Stack!, new OwnRise(heat with { Result = result }, null), review.PartsHeat!, review.Tolerance!, []), inputIsUncertain: false);

        With(heat.Result).ShouldBe(Verdict.WithinLimits);
        With(heat.Result with { Status = ThermalStatus.NotConverged }).ShouldBe(Verdict.CouldNotJudge);
        With(heat.Result with { Balance = heat.Result.Balance with { JouleW = 1.001 * heat.Result.Balance.JouleW } }).ShouldBe(Verdict.CouldNotJudge);
        With(heat.Result with { Balance = heat.Result.Balance with { SunkW = double.NaN } }).ShouldBe(Verdict.CouldNotJudge);
    }

    /// <summary>The clean board with its first net spoilt, judged anew.</summary>
    private static IReadOnlyList<Finding> FindingsOf(Func<SolvedNet, SolvedNet> spoil)
    {
        Review review = s_clean.Value;
        SolvedNet[] nets = [spoil(review.Nets[0]), .. review.Nets.Skip(1)];
        return Judge.Findings(review.Brief!, nets, review.Stack!, review.Own!, review.PartsHeat!, review.Tolerance!, []);
    }

    private static Verdict VerdictOf(Func<SolvedNet, SolvedNet> spoil) => Judge.VerdictOf(FindingsOf(spoil), inputIsUncertain: false);

    private static SolvedNet Limited(SolvedNet net, Func<CopperPath.Brief.NetLimits, CopperPath.Brief.NetLimits> change) => net with
    {
        Bound = net.Bound with { Review = net.Bound.Review with { Limits = change(net.Bound.Review.Limits) } },
    };
}

using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>A limit that lies within what the cells leave open is not judged: neither a pass nor a finding beyond it.</summary>
public sealed class StraddledLimitTests
{
    [Fact]
    public void ARiseNearItsLimitIsNotJudged()
    {
        Review free = Neck(200, 200);
        free.Diagnostics.Where(diagnostic => diagnostic.Severity == CopperPath.Diagnostics.Severity.Error).ShouldBeEmpty();
        NetTemperatures own = NetTemperatures.Of(free.Nets.Single(), free.Own!);
        own.EstimateK.ShouldBeInRange(1e-3 * own.PeakK, 0.1 * own.PeakK);

        Levels(Neck(own.PeakK - (own.EstimateK / 2), 200), "heat").ShouldBe([FindingLevel.BeyondLimit]);
        Review near = Neck(own.PeakK + (own.EstimateK / 2), 200);
        Levels(near, "heat").ShouldBe([FindingLevel.Undecided]);
        near.Verdict.ShouldBe(Verdict.CouldNotJudge);
        Levels(Neck(own.PeakK + (2 * own.EstimateK), 200), "heat").ShouldBeEmpty();
    }

    [Fact]
    public void ATemperatureNearItsLimitIsNotJudged()
    {
        Review free = Neck(200, 200);
        free.Diagnostics.Where(diagnostic => diagnostic.Severity == CopperPath.Diagnostics.Severity.Error).ShouldBeEmpty();
        CopperPath.Thermal.HottestPlace hottest = free.Heat!.Hottest();
        double celsius = free.Brief!.AmbientK + hottest.RiseK - CopperPath.Quantities.Units.ZeroCelsiusK;

        Levels(Neck(200, celsius - (hottest.EstimateK / 2)), "temperature").ShouldBe([FindingLevel.BeyondLimit]);
        Levels(Neck(200, celsius + (hottest.EstimateK / 2)), "temperature").ShouldBe([FindingLevel.Undecided]);
        Levels(Neck(200, celsius + (2 * hottest.EstimateK)), "temperature").ShouldBeEmpty();
    }

    /// <summary>Over the range too: within it is only what is with its estimate, which grows with the value.</summary>
    [Fact]
    public void AValueNearItsLimitAtWorstIsWithinAsStatedOnly()
    {
        Review review = Neck(200, 200, "");
        SolvedNet net = review.Nets.Single();
        NetTolerance range = review.Tolerance!.Nets.Single();
        double worstK = range.OwnRiseK!.Worst;
        double estimateK = worstK / range.OwnRiseK.Nominal * range.Own!.EstimateK;
        estimateK.ShouldBeInRange(1e-3 * worstK, 0.1 * worstK);

        RiseLevels(worstK - (estimateK / 2)).ShouldBe([FindingLevel.WithinAsStated]);
        RiseLevels(worstK + (estimateK / 2)).ShouldBe([FindingLevel.WithinAsStated]);
        RiseLevels(worstK + (2 * estimateK)).ShouldBeEmpty();

        CopperPath.Thermal.HottestPlace hottest = review.Heat!.Hottest();
        double hottestK = review.Tolerance.TemperatureK!.Worst;
        double offK = (hottestK - review.Brief!.AmbientK) / hottest.RiseK * hottest.EstimateK;
        TemperatureLevels(hottestK - (offK / 2)).ShouldBe([FindingLevel.WithinAsStated]);
        TemperatureLevels(hottestK + (offK / 2)).ShouldBe([FindingLevel.WithinAsStated]);
        TemperatureLevels(hottestK + (2 * offK)).ShouldBeEmpty();

        FindingLevel[] RiseLevels(double limitK)
        {
            CopperPath.Brief.NetReview limited = net.Bound.Review with { Limits = net.Bound.Review.Limits with { TemperatureRiseK = limitK } };
            return [.. HeatRule.Judge([net with { Bound = net.Bound with { Review = limited } }], review.Own!, review.Tolerance).Select(finding => finding.Level)];
        }

        FindingLevel[] TemperatureLevels(double limitK) => [.. TemperatureRule.Judge(
            review.Brief with { Limits = review.Brief.Limits with { TemperatureK = limitK } }, review.Heat, review.PartsHeat!, review.Tolerance)
            .Select(finding => finding.Level)];
    }

    private static FindingLevel[] Levels(Review review, string rule) =>
        [.. review.Findings.Where(finding => finding.Rule == rule).Select(finding => finding.Level)];

    /// <summary>A neck of 0.5 mm, 10 mm long, between pours, with 5 A.</summary>
    private static Review Neck(double riseK, double temperatureC, string tolerance = "tolerance: as stated")
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 30, 30).Rectangle(1, 29, 14.75, 41, 15.25).Rectangle(1, 40, 0, 70, 30);
        string brief = board.WriteBrief($$"""
              - name: Feed
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - { name: on, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 30 mm] }, enters: 5 A }
                  - { name: off, rectangle: { layer: top, from: [68 mm, 0 mm], to: [70 mm, 30 mm] }, takes: rest }
            thermal: { laminate: { below: 1.5 mm } }
            {{tolerance}}
            """);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace(
            "200 K", FormattableString.Invariant($"{riseK} K\n  temperature: {temperatureC} degC"), StringComparison.Ordinal));
        return Analysis.Check(brief);
    }
}

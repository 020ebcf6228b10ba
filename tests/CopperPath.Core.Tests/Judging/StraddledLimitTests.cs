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

    private static FindingLevel[] Levels(Review review, string rule) =>
        [.. review.Findings.Where(finding => finding.Rule == rule).Select(finding => finding.Level)];

    /// <summary>A neck of 0.5 mm, 10 mm long, between pours, with 5 A.</summary>
    private static Review Neck(double riseK, double temperatureC)
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 30, 30).Rectangle(1, 29, 14.75, 41, 15.25).Rectangle(1, 40, 0, 70, 30);
        string brief = board.WriteBrief("""
              - name: Feed
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - { name: on, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 30 mm] }, enters: 5 A }
                  - { name: off, rectangle: { layer: top, from: [68 mm, 0 mm], to: [70 mm, 30 mm] }, takes: rest }
            thermal: { laminate: { below: 1.5 mm } }
            """);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace(
            "200 K", FormattableString.Invariant($"{riseK} K\n  temperature: {temperatureC} degC"), StringComparison.Ordinal));
        return Analysis.Check(brief);
    }
}

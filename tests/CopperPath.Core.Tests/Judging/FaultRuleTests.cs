using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>Overloads of a bar of 10 mm x 35 um by the adiabatic form of IEC 60949 (from memory), evaluated by hand.</summary>
public sealed class FaultRuleTests
{
    /// <summary>1000 A for 10 ms from 20 degC: 254.5 exp((100 / (226 x 0.35))^2) - 234.5 = 1024 degC.</summary>
    [Fact]
    public void AnOverloadBeyondItsLimitIsFound()
    {
        Finding finding = Judged("{ name: short, stretch: Bar, current: 1000 A, time: 10 ms, limit: 160 degC }");

        finding.Level.ShouldBe(FindingLevel.BeyondLimit);
        double reachedC = (254.5 * Math.Exp(Math.Pow(100 / (226 * 0.35), 2))) - 234.5;
        finding.Measure!.Value.ShouldBe(reachedC + 273.15, 5);

        // (226 x 0.35)^2 ln(394.5 / 254.5) = 2743 A²s to 160 °C.
        finding.Sentence.ShouldContain("2740 A²s");
    }

    /// <summary>1000 uF charged to 12 V in 5 ms: 2.4 A for 5 ms, 0.0288 A²s.</summary>
    [Fact]
    public void InrushOfABankFollowsFromItsRamp()
    {
        Finding finding = Judged("{ name: inrush, stretch: Bar, capacitance: 1000 uF, voltage: 12 V, ramp: 5 ms, limit: 130 degC }");

        finding.Level.ShouldBe(FindingLevel.Remark);
        finding.Sentence.ShouldContain("0.0288 A²s");
    }

    private static Finding Judged(string fault)
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        Review review = Analysis.Check(board.WriteBrief($$"""
              - name: Bar
                at: { layer: top, x: 25 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, enters: 1 A }
                  - { name: right, rectangle: { layer: top, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 1 A }
            faults:
              - {{fault}}
            """));
        return review.Findings.Single(finding => finding.Rule == RuleCatalogue.Fault.Id);
    }
}

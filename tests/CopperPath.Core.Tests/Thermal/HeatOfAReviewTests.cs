using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>The whole path, from Gerber text and a brief to temperatures.</summary>
public sealed class HeatOfAReviewTests
{
    /// <summary>
    /// A bar of 10 mm x 35 um with 10 A and films of 10 W/m2K on both faces: q = 492.60 W/m2 at 20 degC, growing by
    /// 0.00393 per kelvin, so q / (20 - 0.00393 q) = 27.27 K everywhere.
    /// </summary>
    [Fact]
    public void BarWithTwoFilmsHasTheExactRise()
    {
        Review review = Check("10 A", "top: { film: 10 W/m2K, emissivity: 0 }, bottom: { film: 10 W/m2K, emissivity: 0 }");
        TemperatureField heat = review.Heat.ShouldNotBeNull();
        double exact = 492.60 / (20 - (0.00393 * 492.60));

        heat.Result.Balance.ErrorRatio.ShouldBeLessThan(1e-8);
        NetTemperatures bar = NetTemperatures.Of(review.Nets[0], review.Own!);
        bar.MeanK.ShouldBe(exact, exact * 5e-3);
        bar.PeakK.ShouldBe(exact, exact * 5e-3);
        heat.Result.Balance.JouleW.ShouldBe(review.Nets[0].Conduction.LossW * (1 + (0.00393 * exact)), exact * 1e-3);
    }

    /// <summary>A loss of 0.2 W on the bar adds its share: 0.2 W over 10 mm x 50 mm x 20 W/m2K is 20 K on average.</summary>
    [Fact]
    public void ComponentLossesHeatTheBoard()
    {
        Review review = Check("1 mA", "top: { film: 10 W/m2K, emissivity: 0 }, bottom: { film: 10 W/m2K, emissivity: 0 }, "
            + "losses: { name: Q1, rectangle: { layer: top, from: [0 mm, 0 mm], to: [50 mm, 10 mm] }, power: 0.2 W }");
        NetTemperatures.Of(review.Nets[0], new OwnRise(review.Heat!, null)).MeanK.ShouldBe(20, 0.02);
    }

    /// <summary>
    /// The part heats a pad on the far side that only a plated hole joins to the bar: no current flows in the pad and it has
    /// no mesh, but it is the hottest copper of the net.
    /// </summary>
    [Fact]
    public void APadWithoutCurrentIsHotCopperOfItsNet()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 50, 10).Rectangle(2, 30, 0, 50, 10).PlatedSlot(32, 5, 32, 5, 0.5);
        Review review = Analysis.Check(board.WriteBrief(Bar("1 A")
            + "thermal: { losses: { name: Q1, rectangle: { layer: bottom, from: [47 mm, 0 mm], to: [50 mm, 10 mm] }, power: 1 W } }"));
        SolvedNet bar = review.Nets[0];

        bar.Conduction.Sheets.Select(sheet => sheet.Layer).ShouldBe([1]);
        NetTemperatures heat = NetTemperatures.Of(bar, new OwnRise(review.Heat.ShouldNotBeNull(), null));
        heat.Layer.ShouldBe(2);
        heat.PeakK.ShouldBeGreaterThanOrEqualTo(review.Heat.RiseK(2, 50e-3, 5e-3));
    }

    [Fact]
    public void APlaceBeyondTheBoardIsNamed()
    {
        Review review = Check("1 A", "losses: { name: Q1, rectangle: { layer: top, from: [40 mm, 0 mm], to: [60 mm, 10 mm] }, power: 1 W }");
        review.Diagnostics.ShouldContain(diagnostic => diagnostic.Code == "HEA003");
        review.Verdict.ShouldBe(Verdict.CouldNotJudge);
    }

    [Fact]
    public void RunawayIsAFinding()
    {
        Review review = Check("200 A", "top: { film: 10 W/m2K, emissivity: 0 }, bottom: { film: 10 W/m2K, emissivity: 0 }");
        review.Findings.Single(finding => finding.Rule == RuleCatalogue.Heat.Id).Sentence.ShouldContain("runaway");
    }

    private static Review Check(string current, string thermal)
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        return Analysis.Check(board.WriteBrief(Bar(current) + $"thermal: {{ {thermal} }}"));
    }

    /// <summary>The bar of 50 mm x 10 mm on the top, its whole ends the contacts.</summary>
    private static string Bar(string current) => $$"""
              - name: Bar
                at: { layer: top, x: 25 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }, enters: {{current}} }
                  - { name: right, rectangle: { layer: top, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: {{current}} }

            """;
}

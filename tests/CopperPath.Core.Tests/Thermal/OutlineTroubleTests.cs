using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// Outlines as they come: frames around the board, copper beyond it, pieces nothing cools. A bar of 50 x 10 mm takes 0.2 W over two
/// films of 10 W/m2K: 20 K on average over 10 cm2, less where heat is given over a larger board.
/// </summary>
public sealed class OutlineTroubleTests
{
    private const double AloneK = 20;

    [Fact]
    public void ASecondFrameAroundTheBoardChangesNothing()
    {
        Review plain = Bar([(0, 0, 50, 10)]);
        Review framed = Bar([(0, 0, 50, 10), (-30, -30, 120, 40)]);

        MeanK(plain).ShouldBe(AloneK, 0.01 * AloneK);
        MeanK(framed).ShouldBe(MeanK(plain), 1e-6);
        framed.Heat!.Remarks.Single().ShouldContain("150 x 70 mm");
        framed.Heat!.Remarks.Single().ShouldContain("taken as a frame");
        plain.Heat!.Remarks.ShouldBeEmpty();
    }

    /// <summary>A title block beside the board inside a sheet's frame.</summary>
    [Fact]
    public void AFrameRoundTheBoardAndItsTitleChangesNothing()
    {
        Review framed = Bar([(0, 0, 50, 10), (70, 0, 110, 8), (-30, -30, 120, 40)]);

        framed.Heat!.Remarks.Count.ShouldBe(2);
        framed.Heat.Remarks[0].ShouldContain("taken as a frame");
        framed.Heat.Remarks[1].ShouldContain("40 x 8 mm holds no copper");
        MeanK(framed).ShouldBe(AloneK, 0.01 * AloneK);
    }

    /// <summary>The bar's end lies outside: it gives heat away all the same.</summary>
    [Fact]
    public void CopperBeyondTheOutlineGivesHeatAway() => MeanK(Bar([(0, 0, 49, 10)])).ShouldBe(AloneK, 0.01 * AloneK);

    /// <summary>Half of the bar lies outside: the files are not of one board, which is said with the layer and the share.</summary>
    [Fact]
    public void CopperFarBeyondTheOutlineIsRefused()
    {
        Review review = Bar([(0, 0, 25, 10)], errors: 1);

        review.Verdict.ShouldBe(Verdict.CouldNotJudge);
        review.Diagnostics.ShouldContain(diagnostic => diagnostic.Code == "SET022");
    }

    /// <summary>A cut-out in a board is no frame: the board holds more copper than its cut-out.</summary>
    [Fact]
    public void ACutOutIsNoFrame()
    {
        Review review = Bar([(0, 0, 50, 30), (10, 15, 40, 25)]);

        review.Heat!.Remarks.ShouldBeEmpty();
        MeanK(review).ShouldBeLessThan(AloneK);
    }

    /// <summary>0.3 W on faces that give nothing: no steady state, for want of a way out. It is no runaway.</summary>
    [Fact]
    public void APieceThatNothingCoolsIsNamedForThat()
    {
        const string Insulated = "top: { film: 0 W/m2K, emissivity: 0 }, bottom: { film: 0 W/m2K, emissivity: 0 }";
        Review review = Bar([(0, 0, 50, 10)], Insulated);

        Finding finding = review.Findings.Single(finding => finding.Rule == RuleCatalogue.Heat.Id);
        finding.Sentence.ShouldContain("nothing takes heat away");
        finding.Sentence.ShouldNotContain("runaway");
        review.Verdict.ShouldNotBe(Verdict.WithinLimits);
    }

    /// <summary>
    /// 300 W in the same bar is beyond all materials, 0.3 W is not, whatever the outline: "runaway" is for copper whose loss grows faster than
    /// heat leaves, I^2 R growth over h A, and a part's heat does not grow.
    /// </summary>
    [Theory]
    [InlineData("0.3 W", ThermalStatus.Solved)]
    [InlineData("300 W", ThermalStatus.TooHot)]
    public void ThePartsHeatIsNoRunaway(string power, ThermalStatus status)
    {
        foreach ((double, double, double, double)[] outline in new (double, double, double, double)[][] { [(0, 0, 50, 10)], [(0, 0, 50, 10), (-30, -30, 120, 40)], [(0, 0, 49, 10)] })
        {
            Bar(outline, power: power).Heat!.Result.Status.ShouldBe(status, outline.Length.ToString(CultureInfo.InvariantCulture));
        }
    }

    private static double MeanK(Review review) => NetTemperatures.Of(review.Nets.Single(), new OwnRise(review.Heat.ShouldNotBeNull(), null)).MeanK;

    /// <summary>The bar under an outline of rectangles, millimetres, with a part's heat at its left.</summary>
    private static Review Bar(
        (double X0, double Y0, double X1, double Y1)[] outline,
        string faces = "top: { film: 10 W/m2K, emissivity: 0 }, bottom: { film: 10 W/m2K, emissivity: 0 }", string power = "0.2 W", int errors = 0)
    {
        using SyntheticBoard board = new(1);
        string brief = board.Rectangle(1, 0, 0, 50, 10).WriteBrief($$"""
              - name: Bar
                at: { layer: top, x: 25 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, enters: 1 mA }
                  - { name: right, rectangle: { layer: top, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, takes: rest }
            thermal: { {{faces}}, laminate: { below: 0.5 mm }, losses: { name: Q1, rectangle: { layer: top, from: [0 mm, 0 mm], to: [20 mm, 10 mm] }, power: {{power}} } }
            """);
        string lines = string.Concat(outline.Select(box =>
            $"{SyntheticBoard.At(box.X0, box.Y0)}D02*\n{SyntheticBoard.At(box.X1, box.Y0)}D01*\n{SyntheticBoard.At(box.X1, box.Y1)}D01*\n{SyntheticBoard.At(box.X0, box.Y1)}D01*\n{SyntheticBoard.At(box.X0, box.Y0)}D01*\n"));
        File.WriteAllText(Path.Combine(board.Folder, "profile.gbr"),
            $"%TF.FileFunction,Profile,NP*%\n%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,0.05*%\nG01*\nD10*\n{lines}M02*\n");
        Review review = Analysis.Check(brief);
        review.Diagnostics.Where(diagnostic => diagnostic.Severity == CopperPath.Diagnostics.Severity.Error).Select(diagnostic => diagnostic.ToString()).Count().ShouldBe(errors, string.Join('\n', review.Diagnostics));
        return review;
    }
}

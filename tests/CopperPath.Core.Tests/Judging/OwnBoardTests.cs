using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>
/// What charts for one long isolated conductor miss or blame without cause, judged by the board itself. Charts' values by the fit of
/// docs/capacity.md.
/// </summary>
public sealed class OwnBoardTests(ITestOutputHelper output)
{
    /// <summary>The neck of 2.40 mm at 8 A, kelvin.</summary>
    private const double FitK = 53.5;

    private const string Laminate = "thermal: { laminate: { below: 1 mm } }\n";

    /// <summary>
    /// 8 A in a neck of 2.40 mm x 35 um between pours: 53.5 K by the fit at every length. The own rise grows with the length, and falls short
    /// of the fit even at 80 mm. A fin between two bodies of one temperature, its own loss P' a metre shed by g, rises by P' / g (1 - 1 / cosh(L / 2 s)) above them.
    /// </summary>
    [Fact]
    public void AShortNeckIsCoolerThanALongOne()
    {
        double[] lengthsMm = [0.5, 5, 20, 80];
        double[] peaksK = [.. lengthsMm.Select(length =>
        {
            using SyntheticBoard board = new(1);
            double right = 40 + length;
            board.Rectangle(1, 0, 0, 40, 40).Rectangle(1, 39.9, 18.8, right + 0.1, 21.2).Rectangle(1, right, 0, right + 40, 40);
            return Peak(board, Path(1, 0, 1, right + 40, 1, 40, 8), 200, $"neck of {length} mm");
        })];

        peaksK.ShouldBe(peaksK.Order());
        peaksK[0].ShouldBeLessThan(0.25 * FitK);
        peaksK[^1].ShouldBeInRange(0.5 * FitK, FitK);
    }


    /// <summary>Four traces of 4 mm one under another, each carrying a quarter: each alone 11.6 K by the fit, together about four times the heat in one place.</summary>
    [Fact]
    public void TracesStackedOnFourLayersHeatEachOther()
    {
        double oneK = Stack(1), fourK = Stack(4);

        fourK.ShouldBeGreaterThan(2.5 * oneK);
        fourK.ShouldBeGreaterThan(1.5 * 11.6);

        double Stack(int used)
        {
            using SyntheticBoard board = new(4);
            for (int layer = 1; layer <= 4; layer++)
            {
                // No two layers are alike.
                board.Rectangle(layer, -20 - (25 * layer), 0, -25 * layer, 20);
                if (layer <= used)
                {
                    board.Rectangle(layer, 0, 18, 120, 22);
                }
            }

            board.SpareHole(-10, 0).SpareHole(-10, 30);
            string nets = string.Concat(Enumerable.Range(1, used).Select(layer => Path(layer, 0, 18, 120, layer, 22, 4)));
            return Peak(board, nets, 200, $"{used} traces of 4 A");
        }
    }

    /// <summary>A pour of which two thirds are hatched away has a third of the copper along its current: about three times the loss, and the board sees it.</summary>
    [Fact]
    public void AHatchedPourIsWarmerThanASolidOne()
    {
        double solidK = Pour(false), hatchedK = Pour(true);

        (hatchedK / solidK).ShouldBeInRange(2.2, 4);

        double Pour(bool isHatched)
        {
            using SyntheticBoard board = new(1);
            if (isHatched)
            {
                board.Rectangle(1, 0, 0, 5, 30).Rectangle(1, 75, 0, 80, 30);
                for (int k = 0; k < 10; k++)
                {
                    board.Rectangle(1, 5, (3 * k) + 1, 75, (3 * k) + 2);
                }
            }
            else
            {
                board.Rectangle(1, 0, 0, 80, 30);
            }

            return Peak(board, Path(1, 0, 0, 80, 1, 30, 15), 200, isHatched ? "hatched" : "solid");
        }
    }

    /// <summary>A plane crossed by a row of clearances has its current in the webs between them: the row is warmer than the whole plane.</summary>
    [Fact]
    public void AFarmOfClearancesWarmsAPlane()
    {
        double wholeK = Plane(0), perforatedK = Plane(0.2);

        perforatedK.ShouldBeGreaterThan(1.3 * wholeK);

        double Plane(double webMm)
        {
            using SyntheticBoard board = new(1);
            board.Rectangle(1, 0, 0, 60, 20);
            if (webMm > 0)
            {
                string holes = string.Concat(
                    from column in Enumerable.Range(0, 8)
                    from row in Enumerable.Range(0, 20)
                    select $"{SyntheticBoard.At(26 + column, 0.5 + row)}D03*\n");
                board.Draw(1, string.Create(CultureInfo.InvariantCulture, $"%LPC*%\n%ADD50C,{1 - webMm}*%\nD50*\n{holes}%LPD*%"));
            }

            return Peak(board, Path(1, 0, 0, 60, 1, 20, 15), 200, webMm > 0 ? "perforated" : "whole");
        }
    }

    /// <summary>
    /// 20 A into a disc of 0.5 mm in a pour of 35 um: no neck has less width than the circle round it, and the copper there is warmer than
    /// 10 mm away by I^2 rho / (8 pi^2 k t^2) ln^2(10 / 0.25), radial current and heat without losses (from first principles), 2.5 K; a
    /// limit between the two is found to be passed there.
    /// </summary>
    [Fact]
    public void CopperThatClosesRoundASmallContactIsHot()
    {
        NetTemperatures peak = Check(200, out Review free);
        double awayK = new[] { (20, 30), (40, 30), (30, 20), (30, 40) }.Average(at => free.Own!.RiseK(1, at.Item1 * 1e-3, at.Item2 * 1e-3));
        double exactK = 400 * 1.7241e-8 / (8 * Math.PI * Math.PI * 385 * 35e-6 * 35e-6) * Math.Pow(Math.Log(10 / 0.25), 2);
        output.WriteLine(FormattableString.Invariant($"contact {peak.PeakK:F2} K, 10 mm away {awayK:F2} K; {exactK:F2} K between them by the formula"));

        (peak.PeakK - awayK).ShouldBe(exactK, 0.12 * exactK);
        Check(peak.PeakK - (exactK / 2), out Review limited);
        limited.Verdict.ShouldBe(Verdict.BeyondLimits);
        Finding finding = limited.Findings.Single(finding => finding.Rule == RuleCatalogue.Heat.Id);
        finding.XM.ShouldBe(30e-3, 1e-3);
        finding.YM.ShouldBe(30e-3, 1e-3);

        static NetTemperatures Check(double limitK, out Review review)
        {
            using SyntheticBoard board = new(1);
            board.Rectangle(1, 0, 0, 60, 60);
            review = Analysis.Check(Brief(board, """
                  - name: Pour
                    at: { layer: top, x: 1 mm, y: 1 mm }
                    terminals:
                      - { name: small, circle: { layer: top, x: 30 mm, y: 30 mm, diameter: 0.5 mm }, enters: 20 A }
                      - { name: rim, rectangle: { layer: top, from: [0 mm, 0 mm], to: [60 mm, 1 mm] }, takes: rest }

                """ + Laminate, limitK));
            return NetTemperatures.Of(review.Nets.Single(), review.Own!);
        }
    }

    /// <summary>300 x 250 mm, eight layers, a neck of 0.2 x 3 mm at 10 A: beyond 30 K; a sum over coarse cells said 8.5 K.</summary>
    [Fact]
    public void ANeckOnALargeBoardIsFound()
    {
        using SyntheticBoard board = LargeBoard();
        board.Rectangle(1, 125, 115, 148.5, 135).Rectangle(1, 148.5, 124.9, 151.5, 125.1).Rectangle(1, 151.5, 115, 175, 135);
        Review review = Analysis.Check(Brief(board, Path(1, 125, 115, 175, 1, 135, 10), 30));

        review.Verdict.ShouldBe(Verdict.BeyondLimits);
        Finding neck = review.Findings.First(finding => finding.Rule == RuleCatalogue.Heat.Id);
        output.WriteLine(neck.Sentence);
        neck.XM.ShouldBe(150e-3, 2e-3);
        neck.YM.ShouldBe(125e-3, 1e-3);
    }

    /// <summary>1 W on a pad of 1.5 mm outside every reviewed net ends beyond the limit of the laminate, with its place.</summary>
    [Fact]
    public void APartOutsideTheReviewedNetsIsFound()
    {
        using SyntheticBoard board = LargeBoard();
        board.Rectangle(1, 149.25, 124.25, 150.75, 125.75);
        Review review = Analysis.Check(Brief(board, Path(8, 0, 0, 300, 8, 250, 0.001)
            + "thermal: { losses: { name: Q1, rectangle: { layer: top, from: [149.25 mm, 124.25 mm], to: [150.75 mm, 125.75 mm] }, power: 1 W } }\n", 30));

        review.Verdict.ShouldBe(Verdict.BeyondLimits);
        Finding hottest = review.Findings.Single(finding => finding.Rule == RuleCatalogue.Temperature.Id);
        output.WriteLine(hottest.Sentence);
        hottest.XM.ShouldBe(150e-3, 1.5e-3);
        hottest.YM.ShouldBe(125e-3, 1.5e-3);
        hottest.Layer.ShouldBe(1);
    }

    private static SyntheticBoard LargeBoard()
    {
        SyntheticBoard board = new(8);
        for (int layer = 2; layer <= 8; layer++)
        {
            board.Rectangle(layer, 0, 0, 300, 250);
        }

        return board.Rectangle(1, 4.5, 4.5, 5.5, 5.5).PlatedSlot(5, 5, 5, 5, 0.3);
    }

    private double Peak(SyntheticBoard board, string nets, double limitK, string scene)
    {
        Review review = Analysis.Check(Brief(board, nets + Laminate, limitK));
        review.Diagnostics.Where(diagnostic => diagnostic.Severity == CopperPath.Diagnostics.Severity.Error).Select(diagnostic => diagnostic.ToString()).ShouldBeEmpty();
        NetTemperatures peak = review.Nets.Select(net => NetTemperatures.Of(net, review.Own.ShouldNotBeNull())).MaxBy(net => net.PeakK)!;
        output.WriteLine(FormattableString.Invariant($"{scene}: {peak.PeakK:F2} K, give or take {peak.EstimateK:F2} K"));
        return peak.PeakK;
    }

    private static string Brief(SyntheticBoard board, string nets, double limitK)
    {
        string brief = board.WriteBrief(nets);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("200 K", FormattableString.Invariant($"{limitK} K"), StringComparison.Ordinal)
            .Replace("[1.5 mm", "[0.2 mm", StringComparison.Ordinal).Replace(", 1.5 mm", ", 0.2 mm", StringComparison.Ordinal));
        return brief;
    }

    /// <summary>A current from the left end of copper to its right end, both contacts 1 mm long.</summary>
    private static string Path(int layer, double x0, double y0, double x1, int name, double y1, double currentA) => string.Create(CultureInfo.InvariantCulture, $$"""
              - name: Path {{name}}
                at: { layer: {{layer}}, x: {{x0 + 1.5}} mm, y: {{y0 + 1.5}} mm }
                terminals:
                  - { name: left, rectangle: { layer: {{layer}}, from: [{{x0}} mm, {{y0}} mm], to: [{{x0 + 1}} mm, {{y1}} mm] }, enters: {{currentA}} A }
                  - { name: right, rectangle: { layer: {{layer}}, from: [{{x1 - 1}} mm, {{y0}} mm], to: [{{x1}} mm, {{y1}} mm] }, takes: rest }

            """);
}

using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Judging;

/// <summary>Nominal, worst and shares, against what Ohm's and Joule's laws give by hand. Copper 35 um as stated.</summary>
public sealed class ToleranceTests
{
    /// <summary>
    /// A bar of L/W squares: R = rho L / (W t), so drop grows by 35/31 with the copper, 1.1 with the current, and with ambient
    /// as copper does (IEC 60028: 0.00393 per kelvin of the value at 20 degC); loss by the square of the current. The worst
    /// case is exact, not an estimate.
    /// </summary>
    [Fact]
    public void WorstOfABarIsExact()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        string brief = board.WriteBrief($"{Between(Bar)}\n{Only("copper: 31..38 um, ambient: 10..45 degC, current: -10..10 %")}");
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("conductor temperature: 20 degC\n", "", StringComparison.Ordinal));
        Review review = Analysis.Check(brief);
        NetTolerance bar = review.Tolerance.ShouldNotBeNull().Nets.Single();
        double conductorK = review.Brief!.ConductorK;
        double warmer = CopperMaterial.Iacs.ResistivityOhmM(conductorK + 45 + 273.15 - review.Brief.AmbientK) / CopperMaterial.Iacs.ResistivityOhmM(conductorK);

        bar.DropV.Worst.ShouldBe(bar.DropV.Nominal * 35 / 31 * 1.1 * warmer, 1e-9 * bar.DropV.Worst);
        bar.LossW.Worst.ShouldBe(bar.LossW.Nominal * 35 / 31 * 1.21 * warmer, 1e-9 * bar.LossW.Worst);
        bar.DropV.WorstBounds!.RelativeWidth.ShouldBeLessThan(1e-9);

        double[] alone = [(35.0 / 31) - 1, warmer - 1, 0.1];
        bar.DropV.Shares.Select(share => share.Item).ShouldBe(["copper of layer 1", "ambient", "current"]);
        for (int i = 0; i < alone.Length; i++)
        {
            bar.DropV.Shares[i].Share.ShouldBe(alone[i] / alone.Sum(), 1e-9);
        }
    }

    /// <summary>
    /// Two like bars on two layers between the same two contacts: conductances add, so with one of them half as thick the
    /// loss is 2/1.5 of the nominal one, exactly the bound that holds the potentials; the one that holds the currents is 1.5.
    /// </summary>
    [Fact]
    public void OneOfTwoParallelBarsLiesBetweenTheBoundsOfThomsonAndDirichlet()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 50, 10).Rectangle(2, 0, 0, 50, 10).PlatedSlot(25, 2, 25, 2, 0.3);
        Review review = Check(board, BothLayers, "copper: [17.5..35 um, 35..35 um]");
        Spread loss = review.Tolerance!.Nets.Single().LossW;

        (loss.WorstBounds!.Least / loss.Nominal).ShouldBe(4.0 / 3, 1e-3);
        (loss.WorstBounds.Greatest / loss.Nominal).ShouldBe(1.5, 1e-3);
        loss.Shares.Select(share => share.Item).ShouldBe(["copper of layer 1"]);
    }

    /// <summary>Current that crosses from layer to layer through holes: a second solve of the thin build lies within the bounds of the first.</summary>
    [Fact]
    public void ASecondSolveOfTheWorstBuildLiesWithinTheBounds()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 30, 10).Rectangle(2, 20, 0, 50, 10);
        foreach (double y in (double[])[2, 4, 6, 8])
        {
            board.PlatedSlot(25, y, 25, y, 0.3);
        }

        Review stated = Check(board, TwoLayers, "copper: [28..40 um, 33..37 um], plating: 18..30 um");
        Spread drop = stated.Tolerance!.Nets.Single().DropV;
        string brief = board.WriteBrief(Between(TwoLayers));
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("[35 um, 35 um]", "[28 um, 33 um]", StringComparison.Ordinal)
            .Replace("plating: 25 um", "plating: 18 um", StringComparison.Ordinal));
        ConductionResult thin = Analysis.Check(brief).Nets.Single().Conduction;

        thin.DropV.ShouldBeInRange(0.995 * drop.WorstBounds!.Least, 1.005 * drop.WorstBounds.Greatest);
        drop.WorstBounds.RelativeWidth.ShouldBeLessThan(0.05);
        drop.Worst.ShouldBe(thin.DropV, 0.02 * thin.DropV);
        drop.Shares.Single(share => share.Item == "plating").Share.ShouldBeInRange(0.01, 0.9);
    }

    /// <summary>
    /// The part of each layer in the drop between the highest and the lowest of three terminals: bars in series, so the drop
    /// is I1 R1 + I2 R2 and a layer's thickness acts on its own term only.
    /// </summary>
    [Fact]
    public void WithThreeTerminalsEveryLayerActsOnItsOwnPartOfTheDrop()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        Review review = Check(board, """
            - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }, enters: 10 A }
            - { name: tap, rectangle: { layer: top, from: [25 mm, 0 mm], to: [25.05 mm, 10 mm] }, leaves: 4 A }
            - { name: right, rectangle: { layer: top, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }, takes: rest }
            """, "copper: -20..20 %");
        Spread drop = review.Tolerance!.Nets.Single().DropV;

        drop.WorstBounds.ShouldBeNull();
        drop.Worst.ShouldBe(drop.Nominal / 0.8, 1e-9 * drop.Worst);
        ConductorPart copper = review.Nets.Single().Conduction.Parts.Single();
        copper.DropV.ShouldBe(drop.Nominal, 1e-3 * drop.Nominal);
    }

    /// <summary>
    /// A bar that two films alone cool: rise q / (2 h - 0.00393 q) with q the loss per area at 20 degC, so current 10 % up and films
    /// 20 % down are one division.
    /// </summary>
    [Fact]
    public void OwnRiseOfABarIsExact()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        Review review = Check(board, Bar, "film: -20..20 %, current: -10..10 %",
            "thermal: { top: { film: 10 W/m2K, emissivity: 0 }, bottom: { film: 10 W/m2K, emissivity: 0 } }");
        Spread own = review.Tolerance!.Nets.Single().OwnRiseK.ShouldNotBeNull();

        own.Nominal.ShouldBe(Exact(1, 1), 5e-3 * Exact(1, 1));
        own.Worst.ShouldBe(Exact(0.8, 1.1), 5e-3 * Exact(0.8, 1.1));
        (ChangeOf("stated film") / ChangeOf("current")).ShouldBe(
            (Exact(0.8, 1) - Exact(1, 1)) / (Exact(1, 1.1) - Exact(1, 1)), 0.01);

        double ChangeOf(string item) => own.Shares.Single(share => share.Item == item).Change;

        static double Exact(double film, double current) =>
            492.60 * current * current / ((20 * film) - (0.00393 * 492.60 * current * current));
    }

    /// <summary>Screening follows the published relation with the ends put in: here IPC-2152-style, dT as I^2 / Th.</summary>
    [Fact]
    public void ScreeningRiseIsTheRelationAtTheEnds()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        Spread rise = Check(board, Bar, "copper: 31..38 um, current: -10..10 %").Tolerance!.Nets.Single().SectionRiseK.ShouldNotBeNull();

        rise.Worst.ShouldBe(rise.Nominal * 1.21 * 35 / 31, 1e-9 * rise.Worst);
    }

    /// <summary>Taken as stated, worst is nominal, and the review says so.</summary>
    [Fact]
    public void AsStatedNothingHasARange()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        Review review = Analysis.Check(board.WriteBrief($"{Between(Bar)}\ntolerance: as stated"));

        review.Tolerance.ShouldNotBeNull().Ranges.HasAny.ShouldBeFalse();
        review.Tolerance.Nets.Single().Spreads.ShouldAllBe(one => one.Spread.Worst == one.Spread.Nominal && one.Spread.Shares.Count == 0);
        review.StatedDefaults.ShouldContain("range: none, the brief takes everything as stated");
    }

    private const string Bar = """
        - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }, enters: 10 A }
        - { name: right, rectangle: { layer: top, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 10 A }
        """;

    private const string BothLayers = """
        - name: left
          rectangle: [{ layer: top, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }, { layer: bottom, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }]
          enters: 10 A
        - name: right
          rectangle: [{ layer: top, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }, { layer: bottom, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }]
          leaves: 10 A
        """;

    private const string TwoLayers = """
        - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }, enters: 10 A }
        - { name: right, rectangle: { layer: bottom, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 10 A }
        """;

    private static Review Check(SyntheticBoard board, string terminals, string ranges, string more = "") =>
        Analysis.Check(board.WriteBrief($"{Between(terminals)}\n{Only(ranges)}\n{more}"));

    /// <summary>The ranges named, and none for anything else.</summary>
    private static string Only(string ranges) => "tolerance: { " + ranges + string.Concat(new[] { "copper", "plating", "dielectric", "laminate", "film" }
        .Where(key => !ranges.Contains($"{key}:", StringComparison.Ordinal)).Select(key => $", {key}: 0..0 %")) + " }";

    private static string Between(string terminals) => $"""
          - name: Bar
            at: {"{ layer: top, x: 12 mm, y: 5 mm }"}
            terminals:
              {terminals.ReplaceLineEndings("\n      ")}
        """;
}

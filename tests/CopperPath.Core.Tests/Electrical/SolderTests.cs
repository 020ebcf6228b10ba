using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Solder in the openings of the mask conducts in parallel with the copper under it: exact for a bar, whose stretches
/// are resistances in series. Resistivities: copper 17.241 nohm m (IEC 60028), tin-silver-copper 130 nohm m, both from memory.
/// </summary>
public sealed class SolderTests
{
    private const double CopperS = SyntheticBoard.CopperMm * 1e-3 / 1.7241e-8;
    private const double SolderS = 50e-6 / 1.3e-7;

    [Fact]
    public void AnOpeningAcrossABarIsAStretchOfTwoParallelConductors()
    {
        ConductionResult result = Solve("  solder on exposed copper: 50 um\n", mask: (20, -1, 30, 11));

        // 40 mm of bar 10 mm wide between the contacts, 10 mm of it tinned.
        double expected = (3 / CopperS) + (1 / (CopperS + SolderS));
        result.ResistanceOhm!.Value.ShouldBe(expected, expected * 1e-9);
        result.LossW.ShouldBe(4 * expected, 4 * expected * 1e-9);
    }

    [Fact]
    public void ALengthwiseOpeningIsAWiderConductorBesideTheBareOne()
    {
        ConductionResult result = Solve("  solder on exposed copper: 50 um\n", mask: (-1, 0, 51, 4));

        double expected = 4 / ((0.6 * CopperS) + (0.4 * (CopperS + SolderS)));
        result.ResistanceOhm!.Value.ShouldBe(expected, expected * 1e-9);
    }

    [Fact]
    public void ABoundedTrueValueLiesBetweenAllBareAndAllTinned()
    {
        ConductionResult result = Solve("  solder on exposed copper: 50 um\n", mask: (22, 3, 31, 8));

        Bracket bounds = result.ResistanceBoundsOhm.ShouldNotBeNull();
        bounds.Greatest.ShouldBeLessThan(4 / CopperS);
        bounds.Least.ShouldBeGreaterThan(4 / (CopperS + SolderS));
        bounds.RelativeWidth.ShouldBeLessThanOrEqualTo(0.01);
    }

    /// <summary>
    /// The outline of the board, drawn in the mask file as many programs do, is a thin opening around all others and takes
    /// nothing from them: with it lies as much solder on the bar as without. Frames within frames, each beside the copper.
    /// </summary>
    [Theory]
    [InlineData("")]
    [InlineData(Frame)]
    [InlineData(Frame + OuterFrame)]
    public void AnOutlineDrawnInTheMaskTakesNothingFromTheOpeningsInIt(string outline)
    {
        ConductionResult result = Solve("  solder on exposed copper: 50 um\n", mask: (20, -1, 30, 11), outline);

        double expected = (3 / CopperS) + (1 / (CopperS + SolderS));
        result.ResistanceOhm!.Value.ShouldBe(expected, expected * 1e-9);
    }

    /// <summary>What the outline's line runs over is bare: 0.2 mm of the bar's 10 mm, twice, between the contacts.</summary>
    [Fact]
    public void TheLineItselfIsAnOpening()
    {
        ConductionResult result = Solve("  solder on exposed copper: 50 um\n", mask: (20, -1, 30, 11),
            "%ADD10R,0.2X0.2*%\nD10*\nX10000000Y-2000000D02*\nX40000000Y-2000000D01*\nX40000000Y12000000D01*\nX10000000Y12000000D01*\nX10000000Y-2000000D01*\n");

        double expected = (2.96 / CopperS) + (1.04 / (CopperS + SolderS));
        result.ResistanceOhm!.Value.ShouldBe(expected, expected * 1e-9);
    }

    /// <summary>A frame that leaves mask inside it: what it closes around is covered, but for the opening in that.</summary>
    [Fact]
    public void AnOpeningInACoveredPartOfAnOpeningCounts()
    {
        // Clear from 22 to 28 mm inside the opening from 20 to 30 mm, and open again from 24 to 26 mm.
        ConductionResult result = Solve("  solder on exposed copper: 50 um\n", mask: (20, -3, 30, 13),
            Box("C", 22, -2, 28, 12) + Box("D", 24, -1, 26, 11));

        double expected = (3.4 / CopperS) + (0.6 / (CopperS + SolderS));
        result.ResistanceOhm!.Value.ShouldBe(expected, expected * 1e-9);
    }

    [Fact]
    public void WithoutAWordInTheBriefNoSolderCounts() =>
        Solve("", mask: (20, -1, 30, 11)).ResistanceOhm!.Value.ShouldBe(4 / CopperS, 4 / CopperS * 1e-9);

    private const string Frame =
        "%ADD10C,0.2*%\nD10*\nX-2000000Y-2000000D02*\nX52000000Y-2000000D01*\nX52000000Y12000000D01*\nX-2000000Y12000000D01*\nX-2000000Y-2000000D01*\n";

    private const string OuterFrame =
        "X-5000000Y-5000000D02*\nX55000000Y-5000000D01*\nX55000000Y15000000D01*\nX-5000000Y15000000D01*\nX-5000000Y-5000000D01*\n";

    private static string Box(string polarity, double x0, double y0, double x1, double y1) =>
        $"%LP{polarity}*%\nG36*\n{SyntheticBoard.At(x0, y0)}D02*\n{SyntheticBoard.At(x1, y0)}D01*\n{SyntheticBoard.At(x1, y1)}D01*\n"
            + $"{SyntheticBoard.At(x0, y1)}D01*\n{SyntheticBoard.At(x0, y0)}D01*\nG37*\n";

    private static ConductionResult Solve(string solder, (double X0, double Y0, double X1, double Y1) mask, string more = "")
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        string brief = board.WriteBrief("""
              - name: Test piece
                at: { layer: top, x: 1.5 mm, y: 1.5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }, enters: 2 A }
                  - { name: right, rectangle: { layer: top, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 2 A }
            """);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("ambient:", solder + "ambient:", StringComparison.Ordinal));
        string corner(double x, double y, string code) => SyntheticBoard.At(x, y) + code + "*";
        File.WriteAllText(Path.Combine(board.Folder, "mask.gbr"),
            "%TF.FileFunction,Soldermask,Top*%\n%TF.FilePolarity,Negative*%\n%FSLAX46Y46*%\n%MOMM*%\nG01*\nG36*\n"
            + corner(mask.X0, mask.Y0, "D02") + corner(mask.X1, mask.Y0, "D01") + corner(mask.X1, mask.Y1, "D01")
            + corner(mask.X0, mask.Y1, "D01") + corner(mask.X0, mask.Y0, "D01") + "G37*\n" + more + "M02*\n");
        Review review = Analysis.Check(brief);
        review.Diagnostics.ShouldNotContain(d => d.Severity == CopperPath.Diagnostics.Severity.Error);
        return review.Nets.ShouldHaveSingleItem().Conduction;
    }
}

using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Exact results of plane conduction, run from Gerber text to resistance. Sheet resistance at 20 degrees Celsius from
/// IEC 60028 (annealed copper, 1.7241e-8 ohm m; value from memory).
/// </summary>
public sealed class ExactResistanceTests
{
    private const double ResistivityOhmM = 1.7241e-8;
    private const double SheetOhm = ResistivityOhmM / (SyntheticBoard.CopperMm * 1e-3);

    [Fact]
    public void StraightBarIsResistivityTimesLengthOverSection()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        ConductionResult result = Solve(board, Rectangle("left", 0, 0, 5, 10, "enters: 2 A"), Rectangle("right", 45, 0, 50, 10, "leaves: 2 A"));

        result.ResistanceOhm!.Value.ShouldBe(SheetOhm * 4, SheetOhm * 4 * 1e-9);
        result.LossW.ShouldBe(4 * SheetOhm * 4, 4 * SheetOhm * 4 * 1e-9);
    }

    /// <summary>Right-angle corner: 1 - (2/pi) ln 2 squares beyond its two arms (Hall, Thin Solid Films 1 (1968) 277; from memory).</summary>
    [Fact]
    public void RightAngleCornerAddsLessThanASquare()
    {
        using SyntheticBoard board = new(1);
        board.Region(1, (0, 0), (24, 0), (24, 24), (20, 24), (20, 4), (0, 4));
        ConductionResult result = Solve(board, Rectangle("west", 0, 0, 4, 4, "enters: 1 A"), Rectangle("north", 20, 20, 24, 24, "leaves: 1 A"));

        double squares = 4 + 4 + 1 - (2 / Math.PI * Math.Log(2));
        (result.ResistanceOhm!.Value / SheetOhm).ShouldBe(squares, squares * 2e-3);
    }

    /// <summary>Radial flow between radii a and b: ln(b/a) / (2 pi) squares (exact, polar coordinates).</summary>
    [Fact]
    public void AnnulusIsLogarithmOfItsRadii()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, "%TO.P,E,1*%").Draw(1, HalfRing(10, 12, 1)).Draw(1, "%TO.P,E,2*%").Draw(1, HalfRing(10, 12, -1)).Draw(1, "%TD*%");
        board.Draw(1, "%ADD10C,21*%D10*X0Y0D03*");
        ConductionResult result = Solve(board,
            "      - { name: hub, circle: { layer: top, x: 0 mm, y: 0 mm, diameter: 4 mm }, enters: 1 A }",
            "      - { name: rim, pins: [E.1, E.2], leaves: 1 A }");

        double squares = Math.Log(10.0 / 2) / (2 * Math.PI);
        (result.ResistanceOhm!.Value / SheetOhm).ShouldBe(squares, squares * 2e-3);
    }

    /// <summary>
    /// Five barrels between two strips, each bay of strip half a barrel: exact ladder values by linear algebra,
    /// recomputed here by solving the ladder. Plated slots across the whole width make the strips one-dimensional.
    /// </summary>
    [Theory]
    [InlineData(true, 1.31818182)]
    [InlineData(false, 0.61818182)]
    public void FiveBarrelLadderMatchesExactNetwork(bool oppositeEnds, double expectedBarrels)
    {
        const double width = 10;
        const double drill = 0.6;
        const double wall = drill + (2 * SyntheticBoard.PlatingMm);
        double sectionMm2 = ((2 * (width + 2)) + (Math.PI * (drill + SyntheticBoard.PlatingMm))) * SyntheticBoard.PlatingMm;
        double barrelLengthMm = SyntheticBoard.DielectricMm + SyntheticBoard.CopperMm;
        double barrelOhm = ResistivityOhmM * barrelLengthMm / sectionMm2 * 1e3;
        double bayMm = 0.5 * barrelOhm / SheetOhm * width;
        double pitch = bayMm + wall;

        using SyntheticBoard board = new(2);
        board.Rectangle(1, -5, 0, (4 * pitch) + 5, width).Rectangle(2, -5, 0, (4 * pitch) + 5, width);
        for (int i = 0; i < 5; i++)
        {
            board.PlatedSlot(i * pitch, -1, i * pitch, width + 1, drill);
        }

        (double from, double to) = oppositeEnds ? (4 * pitch, (4 * pitch) + 5) : (-5, 0);
        ConductionResult result = Solve(board,
            Rectangle("top", -5, 0, 0, width, "enters: 10 A"), Rectangle("foot", from, 0, to, width, "leaves: 10 A", "bottom"));

        (result.ResistanceOhm!.Value / barrelOhm).ShouldBe(expectedBarrels, expectedBarrels * 2e-3);
        result.Barrels.Sum(barrel => barrel.CurrentA).ShouldBe(10, 1e-8);
        double worstShare = oppositeEnds ? 0.318182 : 0.618182;
        result.Barrels.Max(barrel => Math.Abs(barrel.CurrentA)).ShouldBe(10 * worstShare, 10 * worstShare * 2e-3);
    }

    [Fact]
    public void TerminalsWithoutCopperBetweenThemAreAFindingNotANumber()
    {
        // Two squares that touch at one corner: one conductor by name, no section to carry a current.
        using SyntheticBoard board = new(1);
        board.Draw(1, "%TO.N,SUPPLY*%").Rectangle(1, 0, 0, 5, 5).Rectangle(1, 10, 0, 15, 5);
        string brief = board.WriteBrief("""
              - name: Split supply
                net: SUPPLY
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 5 mm] }, enters: 1 A }
                  - { name: right, rectangle: { layer: top, from: [14 mm, 0 mm], to: [15 mm, 5 mm] }, leaves: 1 A }
            """);
        Review review = Analysis.Check(brief);

        review.Verdict.ShouldBe(Verdict.BeyondLimits);
        review.Findings.ShouldHaveSingleItem().Rule.ShouldBe(RuleCatalogue.Open.Id);
    }

    private static ConductionResult Solve(SyntheticBoard board, params string[] terminals)
    {
        string brief = board.WriteBrief($$"""
              - name: Test piece
                at: { layer: top, x: 1.5 mm, y: 1.5 mm }
                terminals:
            {{string.Join("\n", terminals)}}
            """);
        Review review = Analysis.Check(brief);

        // Slots right across a strip are no holes with lands, and the cross-check says so.
        review.Diagnostics.ShouldNotContain(d => d.Severity == CopperPath.Diagnostics.Severity.Error && !d.Code.StartsWith("SET", StringComparison.Ordinal));
        ConductionResult result = review.Nets.ShouldHaveSingleItem().Conduction;
        result.Status.ShouldBe(ConductionStatus.Solved, result.Explanation);
        result.CurrentBalanceRatio.ShouldBeLessThan(1e-9);
        result.PowerBalanceRatio.ShouldNotBeNull().ShouldBeLessThan(1e-8);
        return result;
    }

    private static string Rectangle(string name, double x0, double y0, double x1, double y1, string current, string layer = "top") =>
        string.Create(CultureInfo.InvariantCulture,
            $"      - {{ name: {name}, rectangle: {{ layer: {layer}, from: [{x0} mm, {y0} mm], to: [{x1} mm, {y1} mm] }}, {current} }}");

    private static string HalfRing(double inner, double outer, int side)
    {
        // Counter-clockwise along the outer arc, back clockwise along the inner one; side -1 is the lower half.
        string ArcTo(string code, double fromX, double toX) => string.Create(CultureInfo.InvariantCulture,
            $"{code}*{SyntheticBoard.At(toX, 0)}I{Math.Round(-fromX * 1e6):0}J0D01*");
        double sign = side;
        return $"G36*{SyntheticBoard.At(sign * outer, 0)}D02*{ArcTo("G03", sign * outer, -sign * outer)}"
            + $"G01*{SyntheticBoard.At(-sign * inner, 0)}D01*{ArcTo("G02", -sign * inner, sign * inner)}"
            + $"G01*{SyntheticBoard.At(sign * outer, 0)}D01*G37*";
    }
}

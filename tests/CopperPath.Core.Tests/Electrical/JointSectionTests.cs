using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>Cuts through all copper that carries a current together, of sections known by construction.</summary>
public sealed class JointSectionTests
{
    private const double SheetM = SyntheticBoard.CopperMm * 1e-3;

    /// <summary>Three rows of clearances through a plane 20 mm wide: the cut runs from hole to hole, through 20 mm less 14 of 1.1 mm.</summary>
    [Fact]
    public void ClearancesInARowLeaveWhatIsBetweenThem()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 40, 20);
        for (int row = -1; row <= 1; row++)
        {
            for (int k = 0; k < 14; k++)
            {
                Clear(board, 20 + (1.4 * row), 0.9 + (1.4 * k), 1.1);
            }
        }

        SolvedParts solved = Solve(board, West(20), East(38, 20), 10);

        JointSection worst = Worst(solved);
        worst.CurrentA.ShouldBe(10, 1e-2);
        worst.SectionM2(solved.Stack).ShouldBe(4.6e-3 * SheetM, 0.01 * 4.6e-3 * SheetM);
        worst.PieceCount.ShouldBe(15);
        worst.LengthM.ShouldBeInRange(2.8e-3, 4.5e-3); // Three rows, 2.8 mm from the first to the last.
        solved.Joint.Necks.Count.ShouldBe(1);
        solved.Joint.Least!.SectionM2(solved.Stack).ShouldBe(4.6e-3 * SheetM, 0.01 * 4.6e-3 * SheetM);
    }

    /// <summary>Four traces of 4 mm, stacked and joined at their ends by slots: one conductor of four times the section.</summary>
    [Fact]
    public void StackedTracesAreOneConductor()
    {
        using SyntheticBoard board = new(4);
        for (int layer = 1; layer <= 4; layer++)
        {
            board.Rectangle(layer, 0, 0, 60, 4);
        }

        board.PlatedSlot(1, 0.6, 1, 3.4, 0.8).PlatedSlot(59, 0.6, 59, 3.4, 0.8);
        SolvedParts solved = Solve(board, West(4), East(58, 4), 20);

        JointSection worst = Worst(solved);
        worst.Layers.Count.ShouldBe(4);
        worst.CurrentA.ShouldBe(20, 1e-2);
        worst.SectionM2(solved.Stack).ShouldBe(16e-3 * SheetM, 1e-3 * 16e-3 * SheetM);

        // As one trace of 4 mm x 140 um (5.5 mil) by the fit of docs/capacity.md: 215.3 * 20^2 / (157.5^1.15 * 5.51) = 46.5 K, thicker than its range.
        ConductorRating fit = new(ChartRelation.Ipc2152, solved.Stack);
        fit.JointRiseK(worst).ShouldBe(46.5, 0.2);
        fit.CanJudge(worst).ShouldBeFalse();
    }

    /// <summary>A pour of 13 mm with windows of 2 x 2 mm: five webs of 1 mm are left of it.</summary>
    [Fact]
    public void AHatchedPourIsItsWebs()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 13);
        for (int column = 0; column < 8; column++)
        {
            for (int row = 0; row < 4; row++)
            {
                double x = 14 + (3 * column), y = 1 + (3 * row);
                board.Draw(1, "%LPC*%").Rectangle(1, x, y, x + 2, y + 2).Draw(1, "%LPD*%");
            }
        }

        SolvedParts solved = Solve(board, West(13), East(48, 13), 10);

        JointSection worst = Worst(solved);
        worst.PieceCount.ShouldBe(5);
        worst.SectionM2(solved.Stack).ShouldBe(5e-3 * SheetM, 2e-3 * 5e-3 * SheetM);
    }

    /// <summary>20 A into a disc of 0.5 mm: all of it crosses the rim, pi times the diameter.</summary>
    [Fact]
    public void ASmallContactIsCutAllRound()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 40, 20);
        SolvedParts solved = Solve(board, "{ name: west, circle: { layer: top, x: 10 mm, y: 10 mm, diameter: 0.5 mm }, enters: 20 A }", East(38, 20), 20);

        JointSection worst = Worst(solved);
        worst.IsClosed.ShouldBeTrue();
        worst.CurrentA.ShouldBe(20, 2e-2);
        double rimM2 = Math.PI * 0.5e-3 * SheetM;
        worst.SectionM2(solved.Stack).ShouldBe(rimM2, 0.01 * rimM2);
        solved.Joint.Least!.SectionM2(solved.Stack).ShouldBe(rimM2, 0.01 * rimM2);
    }

    /// <summary>
    /// Two plates of copper on two layers, the upper cut right through and bridged by holes to the lower: a line between the two layers
    /// crosses walls of holes, one beside the gap the lower plate alone. The least section is that of the holes, pi (d + t) t each.
    /// </summary>
    [Fact]
    public void HolesCountWithTheirWalls()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 20, 10).Rectangle(2, 10, 0, 40, 10);
        for (int k = 0; k < 5; k++)
        {
            board.PlatedSlot(15, 1 + (2 * k), 15, 1 + (2 * k), 0.3);
        }

        SolvedParts solved = Solve(board, West(10), East(38, 10).Replace("top", "bottom", StringComparison.Ordinal), 5);

        double wallM2 = Math.PI * (0.3e-3 + (SyntheticBoard.PlatingMm * 1e-3)) * SyntheticBoard.PlatingMm * 1e-3;
        JointSection least = solved.Joint.Least!;
        least.Holes.Count.ShouldBe(5);
        least.Layers.ShouldBeEmpty();
        least.CurrentA.ShouldBe(5, 5e-3);
        least.SectionM2(solved.Stack).ShouldBe(5 * wallM2, 1e-6 * wallM2);

        // Holes are judged by themselves: what is joint lies in the layers.
        solved.Joint.Necks.ShouldAllBe(neck => neck.Layers.Sum(layer => layer.CurrentA) > neck.CurrentA / 2);
    }

    /// <summary>
    /// Three webs of 1 mm between two pours, far apart (12 mm) and so for themselves: no joint section sums them, each is a cut of its
    /// layer with a third of the current. The least section of the stretch has all three.
    /// </summary>
    [Fact]
    public void WebsFarApartAreCutByThemselves()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 15, 30).Rectangle(1, 25, 0, 40, 30);
        foreach (double y in (double[])[3, 15, 27])
        {
            board.Rectangle(1, 14, y - 0.5, 26, y + 0.5);
        }

        SolvedParts solved = Solve(board, West(30), East(38, 30), 9);

        solved.Joint.Necks.ShouldNotContain(neck => neck.SectionM2(solved.Stack) < 3.2e-3 * SheetM);
        solved.Joint.Least!.SectionM2(solved.Stack).ShouldBe(3e-3 * SheetM, 1e-3 * 3e-3 * SheetM);
        solved.Joint.Least.PieceCount.ShouldBe(3);
        Section[] webs = [.. solved.Net.Sections.Where(section => section.WidthM < 1.01e-3)];
        webs.ShouldNotBeEmpty();
        webs.ShouldAllBe(section => Math.Abs(section.CurrentA - 3) < 0.1);

        // A web is 10 mm long.
        solved.Net.NeckLengthM(webs.MinBy(section => Math.Abs(section.AtXM - 20e-3))!).ShouldBe(10e-3, 0.5e-3);
    }

    /// <summary>A trace of 1 mm round two corners, 12 + 10 + 12 mm along its middle line, is one neck that long.</summary>
    [Fact]
    public void ANeckIsFollowedRoundCorners()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(1, 9, 4.5, 22.5, 5.5).Rectangle(1, 21.5, 4.5, 22.5, 15.5)
            .Rectangle(1, 21.5, 14.5, 35, 15.5).Rectangle(1, 34, 10, 44, 20);
        SolvedParts solved = Solve(board, West(10), "{ name: east, rectangle: { layer: top, from: [42 mm, 10 mm], to: [44 mm, 20 mm] }, takes: rest }", 3);

        Section middle = solved.Net.Sections.Where(section => section.WidthM < 1.01e-3).MinBy(section => Math.Abs(section.AtYM - 10e-3))!;

        solved.Net.NeckLengthM(middle).ShouldBe(34e-3, 1.5e-3);
    }

    private static void Clear(SyntheticBoard board, double x, double y, double diameter) =>
        board.Draw(1, FormattableString.Invariant($"%LPC*%%ADD10C,{diameter}*%D10*{SyntheticBoard.At(x, y)}D03*%LPD*%"));

    private static string West(double width) =>
        FormattableString.Invariant($"{{ name: west, rectangle: {{ layer: top, from: [0 mm, 0 mm], to: [2 mm, {width} mm] }}, enters: ");

    private static string East(double from, double width) =>
        FormattableString.Invariant($"{{ name: east, rectangle: {{ layer: top, from: [{from} mm, 0 mm], to: [{from + 2} mm, {width} mm] }}, takes: rest }}");

    private static SolvedParts Solve(SyntheticBoard board, string west, string east, double currentA)
    {
        string brief = board.WriteBrief(FormattableString.Invariant($$"""
              - name: Test piece
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - {{(west.EndsWith('}') ? west : $"{west}{currentA} A }}")}}
                  - {{east}}
            thermal: { laminate: { below: 1.5 mm } }
            """));
        Review review = Analysis.Check(brief);
        return new SolvedParts(review.Nets.ShouldHaveSingleItem(string.Join('\n', review.Diagnostics)), review.Stack!);
    }

    private static JointSection Worst(SolvedParts solved) => solved.Joint.Necks[0];

    private sealed record SolvedParts(SolvedNet Net, Stackup Stack)
    {
        public JointSections Joint => Net.Joint;
    }
}

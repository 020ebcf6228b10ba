using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// The two bounds of loss and drop against exact resistances, and what theory says of the bounds themselves
/// (W. Prager and J. L. Synge, Q. Appl. Math. 5, 1947; from memory).
/// </summary>
public sealed class ProvenBoundsTests
{
    private const double SheetOhm = 1.7241e-8 / (SyntheticBoard.CopperMm * 1e-3);

    /// <summary>An L of two arms of four squares and its corner: 9 - (2/pi) ln 2 squares (Hall 1968; from memory).</summary>
    private const string Corner = """
          - name: Test piece
            at: { layer: top, x: 1.5 mm, y: 1.5 mm }
            terminals:
              - { name: west, rectangle: { layer: top, from: [0 mm, 0 mm], to: [4 mm, 4 mm] }, enters: 1 A }
              - { name: north, rectangle: { layer: top, from: [20 mm, 20 mm], to: [24 mm, 24 mm] }, leaves: 1 A }
        """;

    private static readonly double s_cornerOhm = SheetOhm * (9 - (2 / Math.PI * Math.Log(2)));

    [Theory]
    [InlineData("1 %")]
    [InlineData("0.1 %")]
    [InlineData("0.02 %")]
    public void TheTrueResistanceLiesInsideBoundsAsCloseAsAsked(string accuracy)
    {
        ConductionResult result = SolveCorner(accuracy);

        Bracket bounds = result.ResistanceBoundsOhm.ShouldNotBeNull();
        s_cornerOhm.ShouldBeInRange(bounds.Least, bounds.Greatest);
        bounds.RelativeWidth.ShouldBeLessThanOrEqualTo(double.Parse(accuracy[..^2], CultureInfo.InvariantCulture) / 100);
        result.ResistanceOhm.ShouldBe(bounds.Middle);
    }

    [Fact]
    public void RefinementNeverWidensTheBounds()
    {
        IReadOnlyList<RefinementRound> rounds = SolveCorner("0.02 %").Rounds;

        rounds.Count.ShouldBeGreaterThan(2);
        for (int i = 1; i < rounds.Count; i++)
        {
            rounds[i].UnknownCount.ShouldBeGreaterThan(rounds[i - 1].UnknownCount);
            rounds[i].LossBoundsW.Least.ShouldBeGreaterThanOrEqualTo(rounds[i - 1].LossBoundsW.Least);
            rounds[i].LossBoundsW.Greatest.ShouldBeLessThanOrEqualTo(rounds[i - 1].LossBoundsW.Greatest);
        }
    }

    /// <summary>
    /// With refinement where the error is, the bounds close at least as one over the number of unknowns, corner or not
    /// (W. Dorfler, SIAM J. Numer. Anal. 33, 1996; from memory); uniform refinement would only manage its 2/3 power.
    /// </summary>
    [Fact]
    public void BoundsCloseInProportionToTheUnknowns()
    {
        IReadOnlyList<RefinementRound> rounds = SolveCorner("0.01 %").Rounds;

        double[] products = [.. rounds.Select(round => round.UnknownCount * round.LossBoundsW.RelativeWidth)];
        products[^1].ShouldBeLessThan(1.2 * products[1]);
        rounds[^1].LossBoundsW.RelativeWidth.ShouldBeLessThan(rounds[0].LossBoundsW.RelativeWidth / 30);
    }

    /// <summary>
    /// Three terminals on a bar: drops are lengths over section (exact). The potentials of a bar are linear, so the
    /// bounds meet.
    /// </summary>
    [Fact]
    public void TheDropBetweenThreeTerminalsIsBoundedToo()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 60, 10);
        ConductionResult result = Solve(board, """
              - name: Test piece
                at: { layer: top, x: 1.5 mm, y: 1.5 mm }
                terminals:
                  - { name: feed, rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }, enters: 3 A }
                  - { name: middle, rectangle: { layer: top, from: [25 mm, 0 mm], to: [30 mm, 10 mm] }, leaves: 1 A }
                  - { name: end, rectangle: { layer: top, from: [55 mm, 0 mm], to: [60 mm, 10 mm] }, leaves: 2 A }
            """);

        double expectedV = SheetOhm * ((3 * 2) + (2 * 2.5));
        result.DropV.ShouldBe(expectedV, expectedV * 1e-9);
        expectedV.ShouldBeInRange(result.DropBoundsV.Least * (1 - 1e-9), result.DropBoundsV.Greatest * (1 + 1e-9));
    }

    /// <summary>Bounds of the drop on ever finer meshes hold the same true value: each pair must overlap, the last lie inside all.</summary>
    [Fact]
    public void BoundsOfADropAgreeWithThoseOfFinerMeshes()
    {
        Bracket[] bounds = [.. new[] { "10 %", "1 %", "0.1 %", "0.02 %" }.Select(accuracy => SolveTee(accuracy).DropBoundsV)];

        for (int i = 1; i < bounds.Length; i++)
        {
            bounds[i].RelativeWidth.ShouldBeLessThan(bounds[i - 1].RelativeWidth);
            bounds[^1].Middle.ShouldBeInRange(bounds[i - 1].Least, bounds[i - 1].Greatest);
        }
    }

    private static ConductionResult SolveTee(string accuracy)
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 40, 4).Rectangle(1, 18, 0, 22, 20);
        return Solve(board, """
              - name: Test piece
                at: { layer: top, x: 1.5 mm, y: 1.5 mm }
                terminals:
                  - { name: west, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 4 mm] }, enters: 3 A }
                  - { name: east, rectangle: { layer: top, from: [38 mm, 0 mm], to: [40 mm, 4 mm] }, leaves: 1 A }
                  - { name: north, rectangle: { layer: top, from: [18 mm, 18 mm], to: [22 mm, 20 mm] }, leaves: 2 A }
            """, accuracy);
    }

    private static ConductionResult SolveCorner(string accuracy)
    {
        using SyntheticBoard board = new(1);
        board.Region(1, (0, 0), (24, 0), (24, 24), (20, 24), (20, 4), (0, 4));
        return Solve(board, Corner, accuracy);
    }

    private static ConductionResult Solve(SyntheticBoard board, string net, string accuracy = "1 %")
    {
        string brief = board.WriteBrief(net);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("limits:", $"accuracy: {accuracy}\nlimits:", StringComparison.Ordinal));
        ConductionResult result = Analysis.Check(brief).Nets.ShouldHaveSingleItem().Conduction;
        result.Status.ShouldBe(ConductionStatus.Solved, result.Explanation);
        return result;
    }
}

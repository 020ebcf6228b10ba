using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>What a chart relation for one long isolated conductor says never fails a board that is judged by itself.</summary>
public sealed class JudgeByTests
{
    /// <summary>
    /// 6 A in a strip of 3 mm x 35 um, 6 mm long, between pours. As one long conductor: 23 K by the fit of docs/capacity.md,
    /// 13 K by IPC-2221 (I = 0.048 dT^0.44 A^0.725, from memory). Between its pours it stays below 2 K. One neck is one finding,
    /// whichever relations see it.
    /// </summary>
    [Theory]
    [InlineData("board", "")]
    [InlineData("ipc-2152", "23")]
    [InlineData("ipc-2221", "13")]
    [InlineData("all", "23")]
    public void ChartsJudgeOnlyWhereTheyAreChosen(string rule, string risesK)
    {
        Finding[] findings = [.. ShortStrip(rule, "6 A").Findings];

        findings.ShouldAllBe(finding => finding.Rule == "neck");
        string.Join(' ', findings.Select(finding => Math.Round(finding.Measure!.Value))).ShouldBe(risesK);
    }

    /// <summary>The fit's range ends at a rise of 100 K: 13 A in the strip would be 109 K.</summary>
    [Fact]
    public void ChartsDoNotJudgeOutsideTheirRange() =>
        ShortStrip("ipc-2152", "13 A").Findings.ShouldNotContain(finding => finding.Rule == "neck" && finding.Measure!.Value > 100);

    /// <summary>Copper alone, with nothing to carry it, has temperatures too: its pours shed the heat of the strip as they do on laminate.</summary>
    [Fact]
    public void CopperWithoutLaminateHasTemperatures()
    {
        double onLaminateK = ShortStrip("board", "6 A").Heat!.Hottest().RiseK;
        Review bare = ShortStrip("board", "6 A", "");

        bare.Heat!.Result.Explanation.ShouldBe("");
        bare.Heat.Hottest().RiseK.ShouldBe(onLaminateK, 0.5 * onLaminateK);
    }

    private static Review ShortStrip(string judgeBy, string current, string thermal = "thermal: { laminate: { below: 1.5 mm } }")
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 40, 40).Rectangle(1, 39, 18.5, 47, 21.5).Rectangle(1, 46, 0, 86, 40);
        string brief = board.WriteBrief($$"""
              - name: Feed
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - { name: on, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 40 mm] }, enters: {{current}} }
                  - { name: off, rectangle: { layer: top, from: [84 mm, 0 mm], to: [86 mm, 40 mm] }, takes: rest }
            {{thermal}}
            tolerance: as stated
            """);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("200 K", $"5 K\n  judge by: {judgeBy}", StringComparison.Ordinal));
        return Analysis.Check(brief);
    }

    /// <summary>
    /// A neck of 0.5 mm, 30 mm long, is too warm on the board and by both charts: one finding, with what all three say of it.
    /// </summary>
    [Fact]
    public void OneNeckIsOneFindingWhoeverSeesIt()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 30, 30).Rectangle(1, 29, 14.75, 61, 15.25).Rectangle(1, 60, 0, 90, 30);

        Finding only = FindingsOf(board, 88, "3 A").ShouldHaveSingleItem();

        only.Rule.ShouldBe("heat");
        only.Sentence.ShouldContain("the IPC-2221 relation puts the rise at ");
        only.Sentence.ShouldContain("the IPC-2152-style fit says ");
        only.Sentence.ShouldContain("the neck is ");
    }

    /// <summary>
    /// A hatched pour of 13 mm: five webs of 1 mm in eight rows carry 8 A. Each web alone passes the fit (5.9 K); together they are one
    /// conductor of 5 mm (23.0 K), and one finding though forty webs are alike.
    /// </summary>
    [Fact]
    public void AHatchIsOneFindingOfAllItsWebs()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 13);
        for (int web = 0; web < 32; web++)
        {
            (double x, double y) = (14 + (3 * (web / 4)), 1 + (3 * (web % 4)));
            board.Draw(1, "%LPC*%").Rectangle(1, x, y, x + 2, y + 2).Draw(1, "%LPD*%");
        }

        Finding only = FindingsOf(board, 48, "8 A", "ipc-2152").Where(finding => finding.Rule == "neck").ShouldHaveSingleItem();

        only.Measure!.Value.ShouldBe(23.0, 0.1);
        only.Sentence.ShouldContain("8.00 A runs through copper of 0.175 mm² in 5 pieces side by side on layer 1");
    }

    private static IReadOnlyList<Finding> FindingsOf(SyntheticBoard board, double eastMm, string current, string judgeBy = "all", double limitK = 15)
    {
        string brief = board.WriteBrief(FormattableString.Invariant($$"""
              - name: Feed
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - { name: on, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 13 mm] }, enters: {{current}} }
                  - { name: off, rectangle: { layer: top, from: [{{eastMm}} mm, 0 mm], to: [{{eastMm + 2}} mm, 13 mm] }, takes: rest }
            thermal: { laminate: { below: 1.5 mm } }
            """));
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("200 K", $"{limitK} K\n  judge by: {judgeBy}", StringComparison.Ordinal));
        return Analysis.Check(brief).Findings;
    }

    /// <summary>Copper that is warm in one place gives one finding, in two places two, hottest first.</summary>
    [Fact]
    public void EachHotRegionIsOneFinding()
    {
        const double LimitK = 20;
        using SyntheticBoard board = new(1);

        // Pours of 30 x 30 mm joined by necks of 0.5 mm and 0.6 mm, 10 mm long.
        board.Rectangle(1, 0, 0, 30, 30).Rectangle(1, 29, 14.75, 41, 15.25).Rectangle(1, 40, 0, 70, 30)
            .Rectangle(1, 69, 14.7, 81, 15.3).Rectangle(1, 80, 0, 110, 30);
        string brief = board.WriteBrief("""
              - name: Feed
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - { name: on, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 30 mm] }, enters: 5 A }
                  - { name: off, rectangle: { layer: top, from: [108 mm, 0 mm], to: [110 mm, 30 mm] }, takes: rest }
            thermal: { laminate: { below: 1.5 mm } }
            """);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("200 K", $"{LimitK} K", StringComparison.Ordinal));

        Finding[] hot = [.. Analysis.Check(brief).Findings.Where(finding => finding.Rule == "heat")];

        hot.Length.ShouldBe(2, string.Join('\n', hot.Select(finding => $"{finding.Sentence} {finding.Extent}")));
        hot[0].XM.ShouldBe(35e-3, 2e-3);
        hot[1].XM.ShouldBe(75e-3, 2e-3);
        hot[0].Measure!.Value.ShouldBeGreaterThan(hot[1].Measure!.Value);
        hot[1].Measure!.Value.ShouldBeGreaterThan(LimitK);
        hot[0].Sentence.ShouldContain("5.00 A passes copper 0.500 mm wide");
    }
}

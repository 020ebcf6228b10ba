using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>
/// Stretches the brief tells apart on one piece of copper, and copper with two names. What counts as a short follows from
/// the parts of a converter: between any two of supply, switch node, output and return stands a part (common practice, no source).
/// </summary>
public sealed class ShortedStretchTests
{
    /// <summary>Two bars of 20 mm, one above the other, over a plane; the bridge joins them.</summary>
    private static SyntheticBoard Bars(bool isBridged, string upperName = "", string lowerName = "", string bridgeNames = "")
    {
        SyntheticBoard board = new(2);
        board.Rectangle(2, 0, 0, 20, 25).Draw(1, Named(upperName)).Rectangle(1, 0, 10, 20, 15).Draw(1, Named(lowerName)).Rectangle(1, 0, 0, 20, 5).SpareHole(22, 12);
        return isBridged ? board.Draw(1, Named(bridgeNames)).Rectangle(1, 9, 4, 11, 11) : board;
    }

    private static string Named(string name) => name.Length > 0 ? $"%TO.N,{name}*%" : "%TD*%";

    private static string Stretch(string name, string selector, string role, double y, string left = "left") => FormattableString.Invariant($$"""
          - name: {{name}}
            {{selector}}
            role: {{role}}
            terminals:
              - { name: {{left}}, rectangle: { layer: top, from: [0 mm, {{y}} mm], to: [2 mm, {{y + 5}} mm] }, enters: 5 A }
              - { name: right of {{name}}, rectangle: { layer: top, from: [18 mm, {{y}} mm], to: [20 mm, {{y + 5}} mm] }, takes: rest }

        """);

    private const string Upper = "at: { layer: top, x: 1 mm, y: 12 mm }";
    private const string Lower = "at: { layer: top, x: 1 mm, y: 2 mm }";

    private static Review Check(SyntheticBoard board, params string[] stretches)
    {
        using (board)
        {
            return Analysis.Check(board.WriteBrief(string.Concat(stretches)));
        }
    }

    [Theory]
    [InlineData("feed", "return")]
    [InlineData("output", "return")]
    [InlineData("input", "switch node")]
    [InlineData("switch node", "output")]
    public void CopperBetweenStretchesOfDifferentWorkIsAShort(string role, string otherRole)
    {
        Review whole = Check(Bars(isBridged: false), Stretch("One", Upper, role, 10), Stretch("Two", Lower, otherRole, 0));
        Review shorted = Check(Bars(isBridged: true), Stretch("One", Upper, role, 10), Stretch("Two", Lower, otherRole, 0));

        whole.Verdict.ShouldBe(Verdict.WithinLimits);
        shorted.Verdict.ShouldBe(Verdict.BeyondLimits);
        Finding finding = shorted.Findings[0];
        finding.Rule.ShouldBe("one-conductor");
        shorted.Findings.Skip(1).ShouldAllBe(other => other.Level == FindingLevel.Remark);
        finding.Sentence.ShouldContain("One and Two are one piece of copper");
    }

    [Fact]
    public void OneNetUnderTwoRolesIsAShortHoweverItIsNamed() =>
        Check(Bars(isBridged: true), Stretch("One", Upper, "feed", 10), Stretch("Two", Upper, "return", 0)).Verdict.ShouldBe(Verdict.BeyondLimits);

    [Fact]
    public void PartsOfOneConductorsCurrentAreNoShort()
    {
        Check(Bars(isBridged: true), Stretch("One", Upper, "feed", 10), Stretch("Two", Lower, "input", 0)).Findings.ShouldBeEmpty();
        Check(Bars(isBridged: true), Stretch("One", Upper, "return", 10), Stretch("Two", Lower, "return", 0)).Findings.ShouldBeEmpty();
        Check(Bars(isBridged: true), Stretch("One", Upper, "output", 10), Stretch("Two", Upper, "feed", 0)).Verdict.ShouldBe(Verdict.WithinLimits);
    }

    /// <summary>An output that feeds the next converter looks just like one shorted to the supply.</summary>
    [Fact]
    public void AnOutputAtOnePlaceAndASupplyAtAnotherIsAQuestion() =>
        Check(Bars(isBridged: true), Stretch("One", Upper, "output", 10), Stretch("Two", Lower, "feed", 0)).Verdict.ShouldBe(Verdict.CouldNotJudge);

    /// <summary>A connector's feed and its return, both called feed: current comes back to the part it came from.</summary>
    [Fact]
    public void OutAndBackThroughOnePieceOfCopperDoesNotPass()
    {
        string back = Stretch("Two", Lower, "feed", 0, "connector").Replace("enters: 5 A", "leaves: 5 A", StringComparison.Ordinal);
        Check(Bars(isBridged: false), Stretch("One", Upper, "feed", 10, "connector"), back).Verdict.ShouldBe(Verdict.WithinLimits);

        Review shorted = Check(Bars(isBridged: true), Stretch("One", Upper, "feed", 10, "connector"), back);
        shorted.Verdict.ShouldBe(Verdict.CouldNotJudge);
        shorted.Findings.ShouldHaveSingleItem().Sentence.ShouldContain("connector");
    }

    [Fact]
    public void TwoNetsOfTheBriefOnOnePieceOfCopperAreAShort()
    {
        Review shorted = Check(Bars(isBridged: true, "VIN", "GND"), Stretch("One", "net: VIN", "other", 10), Stretch("Two", "net: GND", "other", 0));

        shorted.Findings.Select(finding => finding.Rule).ShouldBe(["one-conductor", "two-names", "two-names"]);
        shorted.Verdict.ShouldBe(Verdict.CouldNotJudge);
    }

    [Fact]
    public void TwoNamesOnAReviewedConductorDoNotPassAndOthersDo()
    {
        SyntheticBoard board = Bars(isBridged: true, "VIN", "GND");
        board.Draw(1, Named("SPARE")).Rectangle(1, 0, 20, 20, 25);
        Finding finding;
        using (board)
        {
            Review reviewed = Analysis.Check(board.WriteBrief(Stretch("One", Upper, "feed", 10)));
            reviewed.Verdict.ShouldBe(Verdict.CouldNotJudge);
            finding = reviewed.Findings.ShouldHaveSingleItem();
            Analysis.Check(board.WriteBrief(Stretch("Other", "net: SPARE", "feed", 20))).Verdict.ShouldBe(Verdict.WithinLimits);
        }

        finding.Rule.ShouldBe("two-names");
        finding.Sentence.ShouldContain("GND, VIN");
    }

    /// <summary>An object that carries both names ties the nets on purpose (Gerber layer format, attribute .N; from memory).</summary>
    [Fact]
    public void NetsTiedByAnObjectWithBothNamesAreNoContradiction()
    {
        Review tied = Check(Bars(isBridged: true, "AGND", "GND", "AGND,GND"), Stretch("One", "net: AGND", "return", 10));

        tied.Verdict.ShouldBe(Verdict.WithinLimits);
        tied.Diagnostics.ShouldNotContain(diagnostic => diagnostic.Code == "NET002");
    }
}

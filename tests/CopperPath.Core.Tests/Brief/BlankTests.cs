using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Brief;

/// <summary>A guess is read like any value and is never taken for one that somebody confirmed.</summary>
public sealed class BlankTests
{
    [Fact]
    public void AGuessIsWorkedWithAndListed()
    {
        BriefReading reading = Read("{ guess: 40 degC, candidates: [25 degC, 55 degC], because: it is summer }");

        ReviewBrief brief = reading.Brief.ShouldNotBeNull();
        brief.AmbientK.ShouldBe(313.15, 1e-9);
        Blank blank = brief.Blanks.ShouldHaveSingleItem();
        blank.ShouldSatisfyAllConditions(
            () => blank.Key.ShouldBe("ambient"),
            () => blank.Guess.ShouldBe("40 degC"),
            () => blank.Candidates.ShouldBe(["25 degC", "55 degC"]),
            () => blank.Because.ShouldBe("it is summer"),
            () => blank.Position.ShouldBe(new SourcePosition("b.yaml", 3, 10)));
        reading.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "b.yaml:3:10: error BRF060: found a guess for `ambient`: 40 degC (it is summer); expected a value somebody confirms, such as 25 degC, 55 degC");
    }

    [Fact]
    public void AnyValueMayBeABlankAndIsNamedByItsWayFromTheTop()
    {
        ReviewBrief brief = Read("40 degC", "{ guess: feed }", "enters: { guess: { guess: 1 A } }").Brief.ShouldNotBeNull();

        brief.Nets[0].Role.ShouldBe(NetRole.Feed);
        brief.Nets[0].Terminals[0].CurrentA.ShouldBe(1);
        brief.Blanks.Select(blank => blank.Key).ShouldBe(
            ["nets: 'N': role", "nets: 'N': terminals: 'a': enters", "nets: 'N': terminals: 'a': enters"]);
    }

    [Theory]
    [InlineData("{ candidates: [40 degC] }", "BRF012")]
    [InlineData("{ guess: 40 degC, candidate: [25 degC] }", "BRF010")]
    [InlineData("{ guess: }", "BRF014")]
    [InlineData("{ guess: 40 }", "BRF020")]
    public void AFaultyBlankIsAFault(string ambient, string code)
    {
        BriefReading reading = Read(ambient);

        reading.Brief.ShouldBeNull();
        reading.Diagnostics.ShouldContain(d => d.Code == code && d.Position.Line == 3);
    }

    /// <summary>Whatever the findings: what nobody confirmed is not judged.</summary>
    [Fact]
    public void NothingThatRestsOnAGuessPasses()
    {
        Judge.VerdictOf([], inputIsUncertain: true).ShouldBe(Verdict.CouldNotJudge);
        Judge.VerdictOf([], inputIsUncertain: false).ShouldBe(Verdict.WithinLimits);
    }

    [Theory]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("~")]
    [InlineData("[{ name: N, net: N }]")]
    [InlineData("[{ name: N, net: N, terminals: [] }]")]
    [InlineData("[{ name: N, net: N, terminals: [{ name: a, pins: [A.1], enters: 0 A }, { name: b, pins: [B.1], leaves: 0 A }] }]")]
    [InlineData("[{ name: N, net: N, terminals: [{ name: a, pins: [A.1], enters: 0 A }, { name: b, pins: [B.1], takes: rest }] }]")]
    public void ABriefThatReviewsNothingIsNoBrief(string nets)
    {
        BriefReading reading = BriefReader.Read("b.yaml", $"""
            copperpath: 1
            board: {"{ name: B, files: f }"}
            ambient: 40 degC
            limits: {"{ temperature rise: 30 K }"}
            nets: {nets}
            """);

        reading.Brief.ShouldBeNull();
        reading.Diagnostics.ShouldContain(d => d.Severity == Severity.Error && d.Position.Line == 5);
    }

    private static BriefReading Read(string ambient, string role = "feed", string current = "enters: 1 A") => BriefReader.Read("b.yaml", $$"""
        copperpath: 1
        board: { name: B, files: f }
        ambient: {{ambient}}
        limits: { temperature rise: 30 K }
        nets:
          - name: N
            net: N
            role: {{role}}
            terminals:
              - { name: a, pins: [A.1], {{current}} }
              - { name: b, pins: [B.1], takes: rest }
        """.ReplaceLineEndings("\n"));
}

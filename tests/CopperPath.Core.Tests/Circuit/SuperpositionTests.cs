using CopperPath.Core.Tests.Gallery;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Circuit;

/// <summary>
/// Several entries of one conductor. Conduction is linear, so the field of two direct currents is the sum of their fields (superposition,
/// any text on circuit theory): two of 12 A over the same copper are 24 A.
/// </summary>
public sealed class SuperpositionTests
{
    [Fact]
    public void TwoOfTwelveAmperesAreOneOfTwentyFour()
    {
        Review two = Check(Entry("One", "left", "right", 12) + Entry("Two", "left", "right", 12));
        Review one = Check(Entry("Whole", "left", "right", 24));
        SolvedNet sum = two.Nets.ShouldHaveSingleItem();

        sum.Bound.Review.Name.ShouldBe("One + Two");
        sum.Bound.EnteringA.ShouldBe(24, 1e-12);
        (Bracket lossW, Bracket wholeW) = (sum.Conduction.LossBoundsW, one.Nets[0].Conduction.LossBoundsW);
        lossW.Least.ShouldBeLessThanOrEqualTo(wholeW.Greatest);
        lossW.Greatest.ShouldBeGreaterThanOrEqualTo(wholeW.Least);
        sum.Conduction.LossW.ShouldBe(one.Nets[0].Conduction.LossW, 1e-6 * wholeW.Greatest);
        two.Own!.All.Hottest().RiseK.ShouldBe(one.Own!.All.Hottest().RiseK, 1e-6);
        two.StatedDefaults.ShouldContain(line => line.Contains("'One' and 'Two' flow at the same time"));
    }

    /// <summary>The miss: a neck that 12 A keep within its limit and 24 A do not, with each of two entries within by itself.</summary>
    [Fact]
    public void ANeckWithinForEachOfTwoEntriesIsBeyondForBoth()
    {
        const string Limit = "limits: { temperature rise: 15 K }";
        Review alone = Check(Entry("One", "left", "right", 12, Limit));
        Review both = Check(Entry("One", "left", "right", 12, Limit) + Entry("Two", "left", "far", 12, Limit));

        alone.Findings.ShouldNotContain(finding => finding.Rule == RuleCatalogue.Heat.Id);
        both.Findings.ShouldContain(finding => finding.Rule == RuleCatalogue.Heat.Id && finding.Level == FindingLevel.BeyondLimit);
        both.Nets[0].Sections.Max(section => section.CurrentA).ShouldBe(24, 1);
    }

    /// <summary>From the left to the right and back from the right over another way: what is left flows between the ends that differ.</summary>
    [Fact]
    public void OppositeCurrentsCancel()
    {
        Review sum = Check(Entry("There", "left", "right", 12) + Entry("Back", "right", "far", 12));
        Review rest = Check("""
              - name: Rest
                at: { layer: top, x: 5 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, enters: 12 A }
                  - { name: right, rectangle: { layer: top, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, enters: 0 A }
                  - { name: far, rectangle: { layer: top, from: [49 mm, 11 mm], to: [50 mm, 12 mm] }, takes: rest }

            """);

        sum.Nets[0].Conduction.Terminals.Single(terminal => terminal.Terminal.Name == "right").Terminal.CurrentA.ShouldBe(0);
        sum.Nets[0].Conduction.LossBoundsW.Least.ShouldBeLessThanOrEqualTo(rest.Nets[0].Conduction.LossBoundsW.Greatest);
        sum.Nets[0].Conduction.LossBoundsW.Greatest.ShouldBeGreaterThanOrEqualTo(rest.Nets[0].Conduction.LossBoundsW.Least);
    }

    [Fact]
    public void CurrentsThatLeaveNothingAreRefused() => Check(Entry("There", "left", "right", 12) + Entry("Back", "right", "left", 12))
        .Diagnostics.ShouldContain(diagnostic => diagnostic.Code == "CIR019" && diagnostic.Severity == Severity.Error);

    /// <summary>One of two at a time: each is solved alone, and no place is heated by both. Over the same copper that is the heat of one.</summary>
    [Fact]
    public void AlternativesAreJudgedOneByOne()
    {
        Review either = Check(Entry("Winter", "left", "right", 12, "alternative: winter") + Entry("Summer", "left", "right", 10, "alternative: summer"));
        Review worse = Check(Entry("Winter", "left", "right", 12));

        either.Nets.Select(net => net.Bound.EnteringA).ShouldBe([12, 10]);
        either.Own!.All.Result.Balance.JouleW.ShouldBe(worse.Own!.All.Result.Balance.JouleW, 1e-3 * worse.Nets[0].Conduction.LossW);
        either.StatedDefaults.ShouldContain(line => line.Contains("alternatives of which one flows at a time: 'Winter'; or 'Summer'"));
    }

    /// <summary>What states no alternative flows in each of them.</summary>
    [Fact]
    public void AnEntryWithoutAWordFlowsInEveryAlternative()
    {
        Review review = Check(Entry("Always", "left", "right", 2)
            + Entry("Winter", "left", "right", 12, "alternative: winter") + Entry("Summer", "left", "far", 10, "alternative: summer"));

        review.Nets.Select(net => (net.Bound.Review.Name, net.Bound.EnteringA)).ShouldBe([("Always + Winter", 14), ("Always + Summer", 12)]);
    }

    /// <summary>RMS values add by their squares: 12 A direct and 12 A alternating heat as two times 12 A squared, not as 24 A squared.</summary>
    [Fact]
    public void AnAlternatingEntryAddsInHeat()
    {
        Review review = Check(Entry("Direct", "left", "right", 12) + Entry("Ripple", "left", "right", 12, "flow: alternating"));
        Review one = Check(Entry("Direct", "left", "right", 12));

        review.Nets.Count.ShouldBe(2);
        double scaled = review.Own!.All.Result.Balance.JouleW / one.Own!.All.Result.Balance.JouleW;
        scaled.ShouldBeInRange(2, 2.2);
    }

    /// <summary>The same place with another beside it, a place that overlaps, one that touches.</summary>
    [Theory]
    [InlineData("[{ layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, { layer: top, from: [0 mm, 11 mm], to: [1 mm, 12 mm] }]")]
    [InlineData("{ layer: top, from: [0 mm, 0 mm], to: [2 mm, 10 mm] }")]
    [InlineData("{ layer: top, from: [1 mm, 0 mm], to: [2 mm, 10 mm] }")]
    public void ContactsTouchedInTwoWaysAreRefused(string place) => Check(Entry("One", "left", "right", 12) + $$"""
          - name: Two
            at: { layer: top, x: 5 mm, y: 5 mm }
            terminals:
              - { name: ends, rectangle: {{place}}, enters: 3 A }
              - { name: right, rectangle: { layer: top, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, takes: rest }

        """).Diagnostics.ShouldContain(diagnostic => diagnostic.Code == "CIR018" && diagnostic.Found.Contains("rectangle"));

    private static string Entry(string name, string from, string to, double currentA, string more = "role: other") => FormattableString.Invariant($$"""
          - name: {{name}}
            at: { layer: top, x: 5 mm, y: 5 mm }
            {{more}}
            terminals:
              - { name: {{from}}, rectangle: {{Place(from)}}, enters: {{currentA}} A }
              - { name: {{to}}, rectangle: {{Place(to)}}, takes: rest }

        """);

    private static string Place(string name) => name switch
    {
        "left" => "{ layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }",
        "right" => "{ layer: top, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }",
        _ => "{ layer: top, from: [49 mm, 11 mm], to: [50 mm, 12 mm] }",
    };

    /// <summary>Two pours joined by a neck of 6 mm, over a plane; the right one with an arm.</summary>
    private static Review Check(string nets)
    {
        using SyntheticBoard board = new(2);
        board.Region(1, (0, 0), (20, 0), (20, 2), (30, 2), (30, 0), (50, 0), (50, 12), (40, 12), (40, 10), (30, 10), (30, 8), (20, 8), (20, 10), (2, 10), (2, 12), (0, 12))
            .Rectangle(2, 0, 0, 50, 12).SpareHole(25, 11);
        return Analysis.Check(board.WriteBrief(nets + """
            accuracy: 10 %
            thermal: { cell: 1 mm, top: { film: 60 W/m2K }, bottom: { film: 60 W/m2K } }
            """));
    }
}

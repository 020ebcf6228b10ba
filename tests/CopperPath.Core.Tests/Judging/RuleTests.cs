using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>Every rule has one board that trips it and one that does not: the clean board, and that board with one thing spoilt.</summary>
public sealed class RuleTests
{
    private static readonly Lazy<Review> s_clean = new(() => new BuckBoard { Sections = "sensitive nets: { name: feedback, net: FB }\n" }.Check());

    /// <summary>What is spoilt, by the rule that must see it.</summary>
    private static readonly Dictionary<string, BuckBoard> s_spoilt = new()
    {
        ["neck"] = new() { SecondOutputWidthMm = 0.6, Limits = "  judge by: ipc-2152\n" },
        ["drop"] = new() { SecondOutputWidthMm = 0.6 },
        ["barrel"] = new() { LandVias = 3, LoadA = 40, RiseK = 20, Limits = "  judge by: ipc-2152\n" },
        ["swing-area"] = new() { ExtraSwitchNodeMm = 10 },
        ["swing-least"] = new() { ExtraSwitchNodeMm = 10 },
        ["return-slot"] = new() { Slot = (2, 18) },
        ["phase-count"] = new() { ClaimedPhases = 8 },
        ["pin-rating"] = new() { PinRatingA = 0.5 },
        ["sharing-contacts"] = new() { PinContact = "joined", SecondPinMm = 1.3, Limits = "  sharing ratio: 1.05\n" },
        ["sharing-phases"] = new() { Limits = "  sharing ratio: 1.1\n" },
        ["sharing-vias"] = new() { Limits = "  sharing ratio: 1.3\n" },
        ["sensitive-distance"] = new() { FeedbackGapMm = 0.5, Sections = "sensitive nets: { name: feedback, net: FB }\n" },
        ["hot-loop"] = new() { CapacitorShiftMm = 8, Limits = "  hot loop ratio: 1.4\n" },
        ["capacitor-vias"] = new() { CapacitorVias = 1 },
        ["capacitor-distance"] = new() { CapacitorSpreadMm = 9, Limits = "  capacitor distance ratio: 2\n" },
        ["heat"] = new() { SecondOutputWidthMm = 0.6, LoadA = 26 },
        ["temperature"] = new() { Sections = "thermal: { losses: { name: hot part, circle: { layer: top, x: 40 mm, y: 10 mm, diameter: 6 mm }, power: 8 W } }\n" },
        ["fault"] = new() { Sections = "faults: { name: short, stretch: Input, current: 200 A, time: 100 ms }\n" },
        ["bank-drop"] = new() { Limits = "  bank drop: 1 mV\n" },
    };

    public static TheoryData<string> Spoilt => [.. s_spoilt.Keys];

    [Fact]
    public void TheCleanBoardTripsNoRule()
    {
        s_clean.Value.Findings.Select(finding => $"{finding.Rule}: {finding.Sentence}").ShouldBeEmpty();
        s_clean.Value.Verdict.ShouldBe(Verdict.WithinLimits);
    }

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void EachSpoiltBoardTripsItsRule(string rule)
    {
        Review review = s_spoilt[rule].Check();

        Finding finding = review.Findings.First(candidate => candidate.Rule == rule);
        finding.Sentence.ShouldNotBeNullOrWhiteSpace();
        finding.Advice.ShouldNotBeNullOrWhiteSpace();
        Measure measure = finding.Measure.ShouldNotBeNull(finding.Sentence);
        double.IsFinite(measure.Value).ShouldBeTrue();
        measure.Value.ShouldNotBe(measure.Limit);
    }

    /// <summary>Class letters of designators: IEEE 315, from memory. Each phase has two parts from output to return.</summary>
    [Theory]
    [InlineData('C', "4 power capacitors have ", "C112 (1)")]
    [InlineData('R', "2 power capacitors have ", "C111 (1)")]
    public void WhatItsDesignatorCallsAResistorIsNoCapacitor(char letter, string start, string named)
    {
        Review review = new BuckBoard { CapacitorVias = 1, LastOutputPart = letter }.Check();

        string sentence = review.Findings.Single(finding => finding.Rule == "capacitor-vias").Sentence;
        sentence.ShouldStartWith(start);
        sentence.ShouldContain(named);
        sentence.ShouldNotContain("R112");
        sentence.ShouldNotContain("guessed");
    }

    [Fact]
    public void EveryRuleHasABoardThatTripsIt() =>
        RuleCatalogue.All.Select(rule => rule.Id).ShouldBe(s_spoilt.Keys.Concat(["open", "one-conductor", "two-names", "accuracy"]), ignoreOrder: true);

    [Fact]
    public void CopperThatDoesNotReachATerminalIsOpen()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 20, 5);
        Review review = Analysis.Check(board.WriteBrief("""
              - name: Bar
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - { name: on, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 5 mm] }, enters: 1 A }
                  - { name: off, rectangle: { layer: top, from: [30 mm, 0 mm], to: [32 mm, 5 mm] }, takes: rest }
            """));

        review.Findings.ShouldHaveSingleItem().Rule.ShouldBe("open");
    }

    /// <summary>A limit without a published source gives remarks until the brief states it.</summary>
    [Fact]
    public void DefaultsRemarkAndStatedLimitsJudge()
    {
        FindingLevel LevelOf(string limits) => new BuckBoard { ExtraSwitchNodeMm = 10, Limits = limits }.Check()
            .Findings.First(finding => finding.Rule == "swing-least").Level;

        LevelOf("  bank drop: 40 mV\n").ShouldBe(FindingLevel.Remark);
        LevelOf("  least area ratio: 4\n").ShouldBe(FindingLevel.BeyondLimit);
    }

    [Fact]
    public void SlotsOpenToTheEdgeAreFoundAndSlotsBesideThePathAreNot()
    {
        new BuckBoard { Slot = (-9, 18) }.Check().Findings.ShouldContain(finding => finding.Rule == "return-slot");
        new BuckBoard { Slot = (36.2, 45) }.Check().Findings.ShouldNotContain(finding => finding.Rule == "return-slot");
    }

    [Fact]
    public void WaivedFindingsStayInTheReportAndNoLongerCount()
    {
        BuckBoard board = new()
        {
            PinRatingA = 0.5,
            Sections = $$"""
                waivers:
                  - { rule: pin-rating, net: Input, reason: short test only, by: lead engineer, fingerprint: {{BuckBoard.OwnFingerprint}} }
                  - { rule: neck, net: Output, reason: none needed, by: lead engineer, fingerprint: {{BuckBoard.OwnFingerprint}} }
                  - { rule: no-such-rule, net: Output, reason: none, by: lead engineer }

                """,
        };
        Review review = board.Check();

        review.Findings.ShouldHaveSingleItem().Waiver.ShouldNotBeNull().By.ShouldBe("lead engineer");
        review.Verdict.ShouldBe(Verdict.WithinLimits);
        review.Diagnostics.Select(d => d.Code).Where(code => code.StartsWith("JDG", StringComparison.Ordinal)).ShouldBe(["JDG001", "JDG002"], ignoreOrder: true);
    }

    [Fact]
    public void ThePhaseCountSaysWhatTheCopperHas()
    {
        Finding finding = s_spoilt["phase-count"].Check().Findings.Single(candidate => candidate.Rule == "phase-count");

        finding.Measure!.Value.ShouldBe(2);
        finding.Measure.Limit.ShouldBe(8);
        finding.Sentence.ShouldContain("claims 8 phases; the copper has 2 separate switch nodes");
    }

    /// <summary>Parallel plates, C = eps0 eps_r A / d, with the drawn area of the node over the whole plane.</summary>
    [Fact]
    public void SwitchNodeNumbersAreThoseOfParallelPlates()
    {
        SwitchNodeFacts node = s_clean.Value.SwitchNodes[0];

        node.AreaM2.ShouldBe(15.5e-3 * 5e-3, 1e-9);
        double capacitanceF = 8.8541878128e-12 * 4.3 * (15.5e-3 * 5e-3) / 0.2e-3;
        node.CapacitanceF.ShouldBe(capacitanceF, capacitanceF * 1e-6);
        node.DisplacementA!.Value.ShouldBe(capacitanceF * 12 / 5e-9, 1e-6);
        node.SwitchingLossW!.Value.ShouldBe(capacitanceF * 144 * 500e3, 1e-6);
    }

    [Fact]
    public void TheCatalogueIsTheDocumentation()
    {
        string file = Path.Combine(SharedData.ProjectRoot, "docs", "rules.md");
        if (Environment.GetEnvironmentVariable("COPPERPATH_WRITE_DOCS") == "1")
        {
            string head = File.ReadAllText(file).Split("\n## ")[0].TrimEnd('\n');
            File.WriteAllText(file, $"{head}\n\n{RuleCatalogue.ToMarkdown()}");
        }

        string page = File.ReadAllText(file).ReplaceLineEndings("\n");

        page.ShouldEndWith(RuleCatalogue.ToMarkdown());
    }
}

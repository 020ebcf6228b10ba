using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>
/// Three steps of a verdict: within over the whole range of what is not known, within as stated only, beyond. For each limited
/// quantity one board and limits before, between and after its nominal and worst values.
/// </summary>
public sealed class RangeVerdictTests
{
    /// <summary>1 oz/ft2 and 35 um of foil: 24.9 + 0.7 (55.7 - 24.9) / 34.3 um are left of it inside or unplated (IPC-6012; from memory).</summary>
    private const double LeastShare = (24.9 + (0.7 * (55.7 - 24.9) / 34.3)) / 35;

    /// <summary>
    /// A bar that two stated films alone cool: rise q / (2 h - 0.00393 q), q = I^2 rho / (t W^2) at 20 degC. Films 15 % down and copper
    /// at its least are one division; the laminate has no part in it.
    /// </summary>
    [Fact]
    public void OwnRiseOfABarOverItsRange()
    {
        Spread own = Bar("").Tolerance!.Nets.Single().OwnRiseK.ShouldNotBeNull();

        own.Nominal.ShouldBe(ExactK(1, 1), 5e-3 * ExactK(1, 1));
        own.Worst.ShouldBe(ExactK(0.85, LeastShare), 5e-3 * ExactK(0.85, LeastShare));
        ChangeOf(own, "stated film").ShouldBe(ExactK(0.85, 1) - ExactK(1, 1), 0.02 * ExactK(1, 1));
        ChangeOf(own, "copper").ShouldBe(ExactK(1, LeastShare) - ExactK(1, 1), 0.02 * ExactK(1, 1));
        ChangeOf(own, "conductivity of laminate").ShouldBe(0, 1e-3);
    }

    /// <summary>Still air: h as dT^(1/4) (McAdams; from memory), so for little heat a film of 0.75 gives a rise of 0.75^-0.8.</summary>
    [Fact]
    public void StillAirIsAQuarterWeaker()
    {
        Spread own = Bar("", "3 A", "{ emissivity: 0 }").Tolerance!.Nets.Single().OwnRiseK.ShouldNotBeNull();

        (ChangeOf(own, "film of still air") / own.Nominal).ShouldBe(Math.Pow(0.75, -0.8) - 1, 0.012);
    }

    /// <summary>
    /// Heat of a bar on the one face, a film of 10 kW/m2K on the other: q d / k through 1.5 mm of laminate, where k may be 0.25
    /// instead of 0.3 W/mK and d a tenth larger.
    /// </summary>
    [Fact]
    public void LaminateConductsLessAndIsThicker()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 50, 10).Rectangle(2, 0, 0, 50, 10);
        Review review = Check(board, "10 A", "", "thermal: { top: { film: 0 W/m2K, emissivity: 0 }, bottom: { film: 10000 W/m2K, emissivity: 0 } }");
        Spread own = review.Tolerance!.Nets.Single().OwnRiseK.ShouldNotBeNull();

        const double AcrossK = 492.60 * 1.5e-3 / 0.3;
        ChangeOf(own, "conductivity of laminate").ShouldBe(AcrossK * ((0.3 / 0.25) - 1), 0.02 * AcrossK);
        ChangeOf(own, "thickness of laminate").ShouldBe(0.1 * AcrossK, 0.02 * AcrossK);
    }

    /// <summary>A hole of 18 um instead of 25 um: a second solve says what it adds to the drop. The middle of the bounds is low for parts in a row.</summary>
    [Fact]
    public void PlatingIsAtItsLeast()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 30, 10).Rectangle(2, 20, 0, 50, 10).PlatedSlot(25, 5, 25, 5, 0.3);
        const string Ends = """
            - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, enters: 10 A }
                  - { name: right, rectangle: { layer: bottom, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 10 A }
            """;
        Spread drop = Check(board, Ends, "", "").Tolerance!.Nets.Single().DropV;
        string brief = board.WriteBrief(Nets(Ends));
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("plating: 25 um", "plating: 18 um", StringComparison.Ordinal));
        double thinV = Analysis.Check(brief).Nets.Single().Conduction.DropV;

        ChangeOf(drop, "plating").ShouldBeInRange(0.8 * (thinV - drop.Nominal), 1.02 * (thinV - drop.Nominal));
    }

    [Fact]
    public void OwnRiseHasThreeSteps() =>
        ShouldStep("heat", "temperature rise: 200 K", k => $"temperature rise: {k} K", ExactK(1, 1), ExactK(0.85, LeastShare));

    [Fact]
    public void TemperatureHasThreeSteps() =>
        ShouldStep("temperature", "temperature rise: 200 K", k => $"temperature rise: 200 K\n  temperature: {20 + k} degC", ExactK(1, 1), ExactK(0.85, LeastShare));

    /// <summary>R = rho L / (W t): 492.6 uohm per square, 499 squares in hundredths.</summary>
    [Fact]
    public void DropHasThreeSteps() =>
        ShouldStep("drop", "temperature rise: 200 K", mv => $"temperature rise: 200 K\n  voltage drop: {mv} mV", 4.99 * 4.926, 4.99 * 4.926 / LeastShare);

    /// <summary>254.5 exp((I / (226 A))^2 t) - 234.5 degC (IEC 60949; from memory), A 10 mm of 35 um or of its least, 500 A for 10 ms: too short for heat to leave.</summary>
    [Fact]
    public void AFaultHasThreeSteps() =>
        ShouldStep("fault", "nets:", c => $"faults: {{ name: short, stretch: Bar, current: 500 A, time: 10 ms, limit: {c} degC }}\nnets:",
            FaultC(0.35), FaultC(0.35 * LeastShare), belowIsRemark: true);

    /// <summary>The IPC-2152-style fit of docs/capacity.md goes as 1 / t at one width and current.</summary>
    [Fact]
    public void ANeckByChartHasThreeSteps()
    {
        // Well cooled, so that the board's own rise is no finding in the same place.
        double nominalK = Bar("").Tolerance!.Nets.Single().SectionRiseK!.Nominal;
        ShouldStep("neck", "temperature rise: 200 K", k => $"temperature rise: {k} K\n  judge by: ipc-2152", nominalK, nominalK / LeastShare,
            films: "{ film: 100 W/m2K, emissivity: 0 }");
    }

    [Fact]
    public void AHoleByChartHasThreeSteps()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 30, 10).Rectangle(2, 20, 0, 50, 10).PlatedSlot(25, 5, 25, 5, 0.3);
        const string Ends = """
            - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, enters: 1.5 A }
                  - { name: right, rectangle: { layer: bottom, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 1.5 A }
            """;
        Spread hole = Check(board, Ends, "", "").Tolerance!.Nets.Single().HoleRiseK.ShouldNotBeNull();
        (hole.Worst / hole.Nominal).ShouldBeInRange(1.3, 1.5);

        FindingLevel? LevelAt(double limitK)
        {
            string brief = board.WriteBrief(Nets(Ends));
            File.WriteAllText(brief, File.ReadAllText(brief).Replace(
                "rise: 200 K", string.Create(CultureInfo.InvariantCulture, $"rise: {limitK} K\n  judge by: ipc-2152"), StringComparison.Ordinal));
            return Analysis.Check(brief).Findings.FirstOrDefault(finding => finding.Rule == "barrel")?.Level;
        }

        LevelAt(0.9 * hole.Nominal).ShouldBe(FindingLevel.BeyondLimit);
        LevelAt((hole.Nominal + hole.Worst) / 2).ShouldBe(FindingLevel.WithinAsStated);
        LevelAt(1.2 * hole.Worst).ShouldBeNull();
    }

    [Fact]
    public void ADropOfABankIsJudgedOverTheRange()
    {
        Measure beyond = Of("1 mV").Measure!;
        beyond.Worst!.Value.ShouldBeGreaterThan(1.05 * beyond.Value);
        Finding between = Of(string.Create(CultureInfo.InvariantCulture, $"{500 * (beyond.Value + beyond.Worst.Value)} mV"));

        between.Level.ShouldBe(FindingLevel.WithinAsStated);
        between.Measure!.Value.ShouldBe(beyond.Value, 1e-12);

        static Finding Of(string limit) => new BuckBoard { Limits = $"  bank drop: {limit}\n" }.Check().Findings.First(finding => finding.Rule == "bank-drop");
    }

    /// <summary>Where no steady state is left at worst, the board is within as stated only, and the worst value is infinite.</summary>
    [Fact]
    public void RunawayAtWorstIsNoPass()
    {
        // 2 h = 4.68 W/m2K: 180 K by the formula above, and 510 K at the worse ends, far above what any laminate stands.
        Review review = Bar("temperature rise: 200 K", films: "{ film: 2.34 W/m2K, emissivity: 0 }", limit: $"temperature rise: 200 K\n  temperature: 280 degC");

        review.Findings.Select(finding => (finding.Rule, finding.Level)).ShouldContain(("heat", FindingLevel.WithinAsStated));
        review.Findings.First(finding => finding.Rule == "heat").Measure!.Worst.ShouldBe(double.PositiveInfinity);
        review.Findings.First(finding => finding.Rule == "heat").Sentence.ShouldContain("no steady state");
    }

    /// <summary>A waiver takes a finding within as stated only out of the verdict as it does any other.</summary>
    [Theory]
    [InlineData(FindingLevel.WithinAsStated, false, Verdict.WithinAsStated)]
    [InlineData(FindingLevel.WithinAsStated, true, Verdict.WithinLimits)]
    [InlineData(FindingLevel.BeyondLimit, false, Verdict.BeyondLimits)]
    [InlineData(FindingLevel.Undecided, false, Verdict.CouldNotJudge)]
    [InlineData(FindingLevel.Remark, false, Verdict.WithinLimits)]
    public void TheVerdictIsThatOfTheGravestFinding(FindingLevel level, bool isWaived, Verdict verdict)
    {
        Finding finding = new("heat", level, "N", 1, 0, 0, null, "", "", "")
        {
            Waiver = isWaived ? new CopperPath.Brief.Waiver("heat", "N", null, "r", "b", null, CopperPath.Diagnostics.SourcePosition.WholeFile("b")) : null,
        };
        Judge.VerdictOf([finding], inputIsUncertain: false).ShouldBe(verdict);
        Judge.VerdictOf([finding, finding with { Level = FindingLevel.WithinAsStated, Waiver = null }], inputIsUncertain: false)
            .ShouldBe(verdict == Verdict.WithinLimits ? Verdict.WithinAsStated : verdict);
    }

    private const string WeakFilms = "{ film: 10 W/m2K, emissivity: 0 }";

    private static double FaultC(double sectionMm2) => (254.5 * Math.Exp(Math.Pow(50 / (226 * sectionMm2), 2))) - 234.5;

    private static double ExactK(double film, double copper) => 492.60 / copper / ((20 * film) - (0.00393 * 492.60 / copper));

    private static double ChangeOf(Spread spread, string item) => spread.Shares.Single(share => share.Item == item).Change;

    /// <summary>A limit just below the nominal value, in the middle, and just above the worst one; both stand in the finding.</summary>
    private static void ShouldStep(string rule, string line, Func<double, FormattableString> limit, double nominal, double worst, bool belowIsRemark = false, string films = WeakFilms)
    {
        Finding beyond = At(0.97 * nominal).ShouldNotBeNull();
        Finding between = At((nominal + worst) / 2).ShouldNotBeNull();

        beyond.Level.ShouldBe(FindingLevel.BeyondLimit);
        between.Level.ShouldBe(FindingLevel.WithinAsStated);
        (At(1.03 * worst)?.Level).ShouldBe(belowIsRemark ? FindingLevel.Remark : null);
        between.Measure!.Value.ShouldBe(beyond.Measure!.Value, 1e-9 * between.Measure.Value);
        between.Measure.Worst.ShouldNotBeNull().ShouldBe(beyond.Measure.Worst!.Value, 1e-9 * between.Measure.Worst.Value);
        between.Measure.Worst.Value.ShouldBeGreaterThan(between.Measure.Limit);
        between.Sentence.ShouldContain(rule == "fault" ? "with everything that is not known at its worse end, most of it where " : "as stated; ");

        Finding? At(double value) => Bar(line, films: films, limit: limit(value)).Findings.FirstOrDefault(finding => finding.Rule == rule);
    }

    /// <summary>A bar of 50 mm x 10 mm x 35 um between films of 10 W/m2K without radiation.</summary>
    private static Review Bar(string line, string current = "10 A", string films = WeakFilms, FormattableString? limit = null)
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        return Check(board, current, line, $"thermal: {{ top: {films}, bottom: {films} }}", limit is null ? "" : FormattableString.Invariant(limit));
    }

    private static Review Check(SyntheticBoard board, string currentOrEnds, string line, string more, string replacement = "")
    {
        string ends = currentOrEnds.Contains("name:", StringComparison.Ordinal) ? currentOrEnds : $$"""
            - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }, enters: {{currentOrEnds}} }
                  - { name: right, rectangle: { layer: top, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: {{currentOrEnds}} }
            """;
        string brief = board.WriteBrief($"{Nets(ends)}\n{more}");
        if (line.Length > 0)
        {
            File.WriteAllText(brief, File.ReadAllText(brief).Replace(line, replacement, StringComparison.Ordinal));
        }

        Review review = Analysis.Check(brief);
        review.Tolerance.ShouldNotBeNull(string.Join('\n', review.Diagnostics));
        return review;
    }

    private static string Nets(string ends) => $$"""
          - name: Bar
            at: { layer: top, x: 12 mm, y: 5 mm }
            terminals:
              {{ends}}
        """;
}

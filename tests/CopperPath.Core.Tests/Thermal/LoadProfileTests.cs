using CopperPath.Brief;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// The whole path with a load profile, on a bar of 10 mm x 35 um, alone in two films of 10 W/m2K: one temperature everywhere. Its time
/// constant is that of a lumped body, 8960 kg/m3 x 385 J/kgK x 35 um over the films, 6.04 s, longer by what its loss grows with
/// temperature (Incropera and DeWitt, chapter 5, from memory).
/// </summary>
public sealed class LoadProfileTests
{
    private const double PerS = 20 / (8960.0 * 385 * 35e-6);
    private const double DensityWPerM2 = 492.60;
    private const double GrowthPerK = 0.00393;

    /// <summary>From a cold start with the current doubled: heat four times, its growth too.</summary>
    [Fact]
    public void AStartFromAmbientIsExponential()
    {
        LoadedHeat heat = Check("points: [[0 s, 2], [5 s, 2]]").InTime.ShouldNotBeNull();
        double perS = PerS * (1 - (4 * DensityWPerM2 * GrowthPerK / 20));
        double endK = 4 * DensityWPerM2 / (20 - (4 * DensityWPerM2 * GrowthPerK));

        heat.Failure.ShouldBeNull();
        StretchInTime bar = heat.Stretches.ShouldHaveSingleItem();
        double exact = endK * (1 - Math.Exp(-5 * perS));
        bar.Peak.RiseK.ShouldBe(exact, 0.01 * exact);
        bar.FinalK.ShouldBe(bar.Peak.RiseK, 1e-9);
        bar.PeakTimeS.ShouldBe(5);
        heat.HottestTimeS.ShouldBe(5);
    }

    /// <summary>A step down to nothing after the steady state: what there was, times exp(-t / tau).</summary>
    [Fact]
    public void AWarmBoardCools()
    {
        LoadedHeat heat = Check("points: [[0 s, 1], [0 s, 0], [6 s, 0]], start: steady").InTime!;
        double steadyK = DensityWPerM2 / (20 - (DensityWPerM2 * GrowthPerK));

        heat.Stretches[0].RiseK[0].ShouldBe(steadyK, 0.01 * steadyK);
        heat.Stretches[0].FinalK.ShouldBe(steadyK * Math.Exp(-6 * PerS), 0.01 * steadyK);
        heat.Stretches[0].PeakTimeS.ShouldBe(0);
    }

    /// <summary>Nothing changes: the end is the steady state of the same board.</summary>
    [Fact]
    public void AConstantLoadStaysAtTheSteadyState()
    {
        Review review = Check("points: [[0 s, 1], [600 s, 1]]");
        double endK = review.InTime!.HottestK[^1];
        double steadyK = Check("points: [[0 s, 1], [1 s, 1]], start: steady").InTime!.HottestK[0];

        endK.ShouldBe(steadyK, 1e-6 * steadyK);
        review.InTime.Stretches[0].FinalK.ShouldBe(NetTemperatures.Of(review.Nets[0], review.Own!).PeakK, 1e-3 * steadyK);
    }

    /// <summary>
    /// 2 s on, 6 s off, for ever: a pulse ends at E (1 - exp(-2 a)) / (1 - exp(-2 a - 6 b)) with a and b the rates while current flows and
    /// while not, E what it would warm to. The limit lies between that peak and the steady rise the same current would have.
    /// </summary>
    [Fact]
    public void ADutyCycleIsJudgedByItsPeak()
    {
        Review review = Check("points: [[0 s, 2], [2 s, 2], [2 s, 0]], period: 8 s", limitK: 45);
        StretchInTime bar = review.InTime!.Stretches[0];
        double a = PerS * (1 - (4 * DensityWPerM2 * GrowthPerK / 20));
        double endK = 4 * DensityWPerM2 / (20 - (4 * DensityWPerM2 * GrowthPerK));
        double exact = endK * (1 - Math.Exp(-2 * a)) / (1 - Math.Exp((-2 * a) - (6 * PerS)));

        exact.ShouldBeLessThan(45);
        bar.Peak.RiseK.ShouldBe(exact, 0.01 * exact);
        bar.PeakTimeS.ShouldBe(2, 0.01);
        bar.RippleK.ShouldBe(exact - (exact * Math.Exp(-6 * PerS)), 0.01 * exact);
        review.Findings.ShouldNotContain(finding => finding.Rule == RuleCatalogue.Heat.Id && finding.Level != FindingLevel.WithinAsStated);
        Check("points: [[0 s, 2], [2 s, 2], [2 s, 0]], period: 8 s", limitK: exact - 2).Findings
            .First(finding => finding.Rule == RuleCatalogue.Heat.Id).Sentence.ShouldContain("in the course of the load profile");
    }

    /// <summary>The heat of a part follows the load of the whole: three times the current is nine times its heat, unless stated.</summary>
    [Theory]
    [InlineData("", 9)]
    [InlineData(", parts exponent: 1", 3)]
    public void PartsFollowTheLoad(string exponent, double times)
    {
        const string Part = "losses: { name: Q1, rectangle: { layer: top, from: [0 mm, 0 mm], to: [50 mm, 10 mm] }, power: 0.02 W }";
        LoadedHeat heat = Check("points: [[0 s, 3], [600 s, 3]]" + exponent, thermal: Part, currentA: 1e-3).InTime!;
        heat.HottestK[^1].ShouldBe(times * 2, 0.01 * times * 2);
    }

    /// <summary>Amperes of one stretch, from a table beside the brief.</summary>
    [Fact]
    public void ATableIsReadBesideTheBrief()
    {
        LoadedHeat table = Check("stretches: { stretch: Bar, csv: load.csv }", table: "time s, current A\n0, 20\n5, 20\n").InTime!;
        LoadedHeat points = Check("stretches: { stretch: Bar, points: [[0 s, 20 A], [5 s, 20 A]] }").InTime!;
        table.Stretches[0].Peak.RiseK.ShouldBe(points.Stretches[0].Peak.RiseK);
        table.Stretches[0].Peak.RiseK.ShouldBeGreaterThan(20);
    }

    /// <summary>A fault of 5 s is not adiabatic: from the warm board, at the rate above, and below what no loss would give.</summary>
    [Fact]
    public void ALongFaultIsSolvedOnTheBoard()
    {
        Review review = Check("points: [[0 s, 1], [1 s, 1]]", more: "faults: { name: stall, stretch: Bar, current: 30 A, time: 5 s }");
        Finding finding = review.Findings.Single(one => one.Rule == RuleCatalogue.Fault.Id);
        double steadyK = DensityWPerM2 / (20 - (DensityWPerM2 * GrowthPerK));
        double a = PerS * (1 - (9 * DensityWPerM2 * GrowthPerK / 20));
        double endK = 9 * DensityWPerM2 / (20 - (9 * DensityWPerM2 * GrowthPerK));
        double exact = endK + ((steadyK - endK) * Math.Exp(-5 * a));

        finding.Measure!.Value.ShouldBe(293.15 + exact, 0.01 * exact);
        finding.Assumption.ShouldContain("heat has time to leave");
    }

    [Theory]
    [InlineData("points: [[1 s, 1], [0 s, 2]]", "BRF056")]
    [InlineData("points: [[0 s, 1], [0 s, 2], [0 s, 3]]", "BRF056")]
    [InlineData("points: [[0 s, 1]]", "BRF056")]
    [InlineData("points: [[0 s, 1], [9 s, 1]], period: 8 s", "BRF056")]
    [InlineData("points: [[0 s, 1], [8 s, 1]], period: 8 s, start: steady", "BRF056")]
    [InlineData("until: 3 s", "BRF056")]
    [InlineData("points: [[0 s, -1], [1 s, 1]]", "BRF023")]
    [InlineData("points: [[0 s, 3 A], [1 s, 1 A]]", "BRF023")]
    [InlineData("points: [[0, 1], [1 s, 1]]", "BRF020")]
    [InlineData("points: [0 s, 1]", "BRF013")]
    [InlineData("csv: none.csv", "BRF057")]
    [InlineData("stretches: { stretch: Bor, points: [[0 s, 1], [1 s, 1]] }", "BRF054")]
    [InlineData("stretches: { stretch: Bar }", "BRF056")]
    public void WhatIsWrongIsNamed(string profile, string code) =>
        BriefReader.Read("b.yaml", "copperpath: 1\nboard: { name: b, files: f }\nambient: 25 degC\nlimits: { temperature rise: 20 K }\n"
            + "nets:\n  - { name: Bar, net: N, terminals: [{ name: a, pins: J1.1, enters: 1 A }, { name: b, pins: J1.2, takes: rest }] }\n"
            + $"load profile: {{ {profile} }}\n").Diagnostics.ShouldContain(diagnostic => diagnostic.Code == code);

    [Theory]
    [InlineData("time s, current A\n0, 1\n", "amperes for all")]
    [InlineData("t, factor\n0, 1\n", "the headings")]
    [InlineData("time s, factor\n0, 1\n1, x\n", "'1, x'")]
    [InlineData("time s, factor\n", "no point")]
    public void AFaultyTableIsNamedWithItsLine(string table, string found) => Check("csv: load.csv", table: table)
        .Diagnostics.ShouldContain(diagnostic => diagnostic.Code == "BRF057" && diagnostic.Found.Contains(found));

    private static Review Check(string profile, string thermal = "", double currentA = 10, double limitK = 200, string table = "", string more = "")
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 50, 10);
        File.WriteAllText(Path.Combine(board.Folder, "load.csv"), table);
        return Analysis.Check(board.WriteBrief(FormattableString.Invariant($$"""
              - name: Bar
                at: { layer: top, x: 25 mm, y: 5 mm }
                limits: { temperature rise: {{limitK}} K }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }, enters: {{currentA}} A }
                  - { name: right, rectangle: { layer: top, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }, takes: rest }
            thermal: { cell: 2 mm, top: { film: 10 W/m2K, emissivity: 0 }, bottom: { film: 10 W/m2K, emissivity: 0 }, {{thermal}} }
            load profile: { {{profile}} }
            {{more}}
            """)));
    }
}

using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Judging;

/// <summary>What is not known where a brief says nothing, and what a brief puts in its place.</summary>
public sealed class BoardRangesTests
{
    /// <summary>
    /// Correlations of natural convection scatter by 15 to 25 %, FR-4 conducts 0.25 to 0.35 W/mK through and 0.6 to 1.0 in plane, an inner
    /// layer of 1 oz may be 24.9 um and an outer one 47.9 um, plating 18 um in class 2 (IPC-6012); all from memory. Stated films 15 % and
    /// thicknesses of laminate 10 %: common practice, no source.
    /// </summary>
    [Fact]
    public void DefaultsAreThoseOfTheTrade()
    {
        BoardRanges ranges = Of("", "thermal: { bottom: { film: 20 W/m2K } }");

        ranges.StillAir.ShouldBe(new ValueRange(0.75, 1.25));
        ranges.StatedFilm.ShouldBe(new ValueRange(0.85, 1.15));
        ShouldBe(ranges.LaminateThrough, 0.25 / 0.3, 0.35 / 0.3);
        ShouldBe(ranges.LaminateInPlane, 0.6 / 0.8, 1.0 / 0.8);
        ShouldBe(ranges.LaminateThickness, 0.9, 1.1);
        ShouldBe(ranges.CopperM[0], 47.9e-6, 54.3e-6);
        ShouldBe(ranges.CopperM[1], 24.9e-6, 34.3e-6);
        ShouldBe(ranges.PlatingM, 18e-6, 25e-6);
        (ranges.Current, ranges.AmbientK.Least, ranges.AmbientK.Most).ShouldBe((new ValueRange(1, 1), 293.15, 293.15));
    }

    /// <summary>Every range that is used stands among the assumptions with where it comes from; a face without still air has none of it.</summary>
    [Fact]
    public void EveryRangeIsNamedWithItsSource()
    {
        Of("", "thermal: { top: { film: 30 W/m2K }, bottom: { film: 20 W/m2K }, laminate: { through: 0.5 W/mK } }").Assumptions.ShouldBe(
        [
            "range, copper of layer 1: 47.9 µm to 54.3 µm (down to the least of IPC-6012, class 2; from memory)",
            "range, copper of layer 2: 24.9 µm to 34.3 µm (down to the least of IPC-6012, class 2; from memory)",
            "range, copper of layer 3: 47.9 µm to 54.3 µm (down to the least of IPC-6012, class 2; from memory)",
            "range, plating: 18.0 µm to 25.0 µm (down to the least of IPC-6012, class 2; from memory)",
            "range, thickness of laminate: -10..10 % (common practice, no source)",
            "range, conductivity of laminate, through: -10..10 % (common practice, no source)",
            "range, conductivity of laminate, in plane: 0.600 W/(m·K) to 1.00 W/(m·K) (FR-4; from memory)",
            "range, stated film: -15..15 % (common practice, no source)",
        ], ignoreOrder: true);
        IReadOnlyList<string> stated = Of("tolerance: { plating: 24..26 um, film: -5..10 % }", "").Assumptions;
        stated.ShouldContain("range, plating: 24.0 µm to 26.0 µm (the brief)");
        stated.ShouldContain("range, film of still air: -5..10 % (the brief)");
    }

    /// <summary>Class 3 asks for 20 um of plating at least, and for 25 um where the other classes ask for 20 in the mean (IPC-6012; from memory).</summary>
    [Fact]
    public void ClassThreeLeavesLess()
    {
        BoardRanges ranges = Of("tolerance: { class: 3 }", "");

        ShouldBe(ranges.PlatingM, 20e-6, 25e-6);
        double foilShare = (54.3 - 25 - 17.1) / (34.3 - 17.1);
        ShouldBe(ranges.CopperM[0], (38.4 + (foilShare * (52.9 - 38.4))) * 1e-6, 54.3e-6);
    }

    /// <summary>What is stated thinner than the least is taken as stated; what the tables do not reach, 10 % less.</summary>
    [Fact]
    public void WhatTheTablesDoNotReachIsSaid()
    {
        BoardRanges ranges = Of("", "", "[200 um, 3 um, 54.3 um]", "15 um");

        ShouldBe(ranges.PlatingM, 15e-6, 15e-6);
        ShouldBe(ranges.CopperM[0], 180e-6, 200e-6);
        ShouldBe(ranges.CopperM[1], 2.7e-6, 3e-6);
        ranges.Assumptions.Count(line => line.Contains("the tables of IPC-6012 do not reach it", StringComparison.Ordinal)).ShouldBe(2);
        ranges.Assumptions.ShouldContain(line => line.Contains("as stated, less than the least", StringComparison.Ordinal));
    }

    /// <summary>The usual end of each item is the one that warms copper: less copper, weaker films, laminate that conducts less, thicker laminate.</summary>
    [Fact]
    public void UsualEndsAreTheWarmOnes()
    {
        BoardRanges ranges = Of("", "thermal: { bottom: { film: 20 W/m2K } }");
        BuildState nominal = new([54.3e-6, 34.3e-6, 54.3e-6], 25e-6, 293.15);
        BuildState worst = ToleranceItem.OfHeat(ranges).Aggregate(nominal, (state, item) => item.Usual.Apply(state));

        worst.CopperM.ShouldBe(ranges.CopperM.Select(range => range.Least));
        (worst.PlatingM, worst.StillAirScale, worst.StatedFilmScale).ShouldBe((18e-6, 0.75, 0.85));
        worst.LaminateScale.Through.ShouldBe(0.25 / 0.3, 1e-12);
        worst.LaminateScale.InPlane.ShouldBe(0.75, 1e-12);
        worst.LaminateThicknessScale.ShouldBe(1.1, 1e-12);
    }

    private static void ShouldBe(ValueRange range, double least, double most)
    {
        range.Least.ShouldBe(least, 1e-9 * least);
        range.Most.ShouldBe(most, 1e-9 * most);
    }

    private static BoardRanges Of(string tolerance, string thermal, string copper = "[54.3 um, 34.3 um, 54.3 um]", string plating = "25 um")
    {
        ReviewBrief brief = BriefReader.Read("b.yaml", $$"""
            copperpath: 1
            board: { name: b, files: f }
            stackup: { copper: {{copper}}, dielectric: [0.2 mm, 1.2 mm], plating: {{plating}} }
            ambient: 20 degC
            limits: { temperature rise: 20 K }
            nets:
              - { name: N, net: N, terminals: [{ name: a, pins: [J1.1], enters: 1 A }, { name: b, pins: [J2.1], takes: rest }] }
            {{tolerance}}
            {{thermal}}
            """).Brief.ShouldNotBeNull();
        return BoardRanges.Of(brief, new Stackup(brief.Stackup!.CopperM, brief.Stackup.DielectricM, brief.Stackup.PlatingM, 2e-8));
    }
}

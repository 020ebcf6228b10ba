using CopperPath.Brief;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Brief;

/// <summary>Ranges as they are written in a brief.</summary>
public sealed class ToleranceSectionTests
{
    [Fact]
    public void RangesAreReadInUnitsAndPerCent()
    {
        ToleranceSection section = Read("copper: [31..38 um, -10..20 %]\n  plating: 0.8mil..30um\n  ambient: 20..55 degC\n  film: -25..25 %\n  current: 0..10 %")
            .Brief.ShouldNotBeNull().Tolerance.ShouldNotBeNull();

        Near(section.CopperM![0], 31e-6, 38e-6);
        Near(section.CopperM[1], 31.5e-6, 42e-6);
        Near(section.PlatingM!.Value, 20.32e-6, 30e-6);
        Near(section.AmbientK!.Value, 293.15, 328.15);
        Near(section.Film!.Value, 0.75, 1.25);
        Near(section.Current!.Value, 1, 1.1);

        static void Near(ValueRange range, double least, double most)
        {
            range.Least.ShouldBe(least, 1e-12 * least);
            range.Most.ShouldBe(most, 1e-12 * most);
        }
    }

    [Fact]
    public void ClassAndLaminateAreRead()
    {
        ToleranceSection section = Read("class: 3\n  dielectric: -5..5 %\n  laminate: -20..10 %").Brief.ShouldNotBeNull().Tolerance.ShouldNotBeNull();

        (section.BoardClass, section.IsAsStated).ShouldBe((BoardClass.Class3, false));
        (section.Dielectric, section.Laminate).ShouldBe((new ValueRange(0.95, 1.05), new ValueRange(0.8, 1.1)));
    }

    /// <summary>One word takes all ranges away.</summary>
    [Fact]
    public void EverythingMayBeTakenAsStated() =>
        BriefReader.Read("b.yaml", Text("x").Replace("tolerance:\n  x", "tolerance: as stated", StringComparison.Ordinal))
            .Brief.ShouldNotBeNull().Tolerance.ShouldNotBeNull().IsAsStated.ShouldBeTrue();

    [Fact]
    public void OneRangeServesAllLayers() =>
        Read("copper: -10..5 %").Brief!.Tolerance!.CopperM!.Count.ShouldBe(2);

    [Theory]
    [InlineData("copper: 36..38 um", "BRF044")]
    [InlineData("copper: 38..31 um", "BRF044")]
    [InlineData("copper: 31-38 um", "BRF044")]
    [InlineData("copper: 31..38", "BRF044")]
    [InlineData("copper: 31..38 V", "BRF020")]
    [InlineData("copper: [31..38 um]", "BRF040")]
    [InlineData("plating: x..30 um", "BRF020")]
    [InlineData("ambient: -10..10 %", "BRF020")]
    [InlineData("ambient: 10..30 degC", "BRF044")]
    [InlineData("film: 8..12 W/m2K", "BRF044")]
    [InlineData("film: -100..10 %", "BRF044")]
    [InlineData("current: a..b %", "BRF044")]
    [InlineData("current: { least: 1 A }", "BRF044")]
    [InlineData("dielectric: 1.4..1.6 mm", "BRF044")]
    [InlineData("laminate: 5..10 %", "BRF044")]
    [InlineData("class: 4", "BRF022")]
    [InlineData("air: 1..2 %", "BRF010")]
    public void WhatIsNoRangeIsNamed(string text, string code)
    {
        BriefReading reading = Read(text);
        reading.Brief.ShouldBeNull();
        reading.Diagnostics.ShouldContain(diagnostic => diagnostic.Code == code && diagnostic.Position!.Line == 10);
    }

    [Fact]
    public void CopperWithoutAStackupIsAsked()
    {
        BriefReading reading = BriefReader.Read("b.yaml", Text("copper: -10..10 %").Replace("stackup:", "# stackup:", StringComparison.Ordinal));
        reading.Diagnostics.ShouldContain(diagnostic => diagnostic.Code == "BRF044");
    }

    private static BriefReading Read(string ranges) => BriefReader.Read("b.yaml", Text(ranges));

    private static string Text(string ranges) => $$"""
        copperpath: 1
        board:
          name: B
          files: f
        stackup: { copper: [35 um, 35 um], dielectric: [1.5 mm], plating: 25 um }
        ambient: 40 degC
        limits:
          temperature rise: 20 K
        tolerance:
          {{ranges}}
        nets:
          - name: N
            net: N
            terminals:
              - { name: a, pins: [J1.1], enters: 1 A }
              - { name: b, pins: [J2.1], takes: rest }
        """;
}

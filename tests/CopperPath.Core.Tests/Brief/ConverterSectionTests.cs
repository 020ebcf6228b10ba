using CopperPath.Brief;
using CopperPath.Converter;

namespace CopperPath.Core.Tests.Brief;

/// <summary>Converters in the brief, and terminals that take their currents from them.</summary>
public sealed class ConverterSectionTests
{
    private const string Core = """
        converters:
          name: core
          input voltage: 12 V
          output voltage: 0.9 V
          load current: 90 A
          phases: 4
          switching frequency: 500 kHz
          inductance: 0.25 uH
          efficiency: 0.9
          edge time: 4 ns
          low-side switches: 2
          output capacitors: [{ count: 4, value: 1800 uF, esr: 8 mohm }, { count: 20, value: 22 uF, esr: 2 mohm }]
          connector: { pins: 3, rating: 9 A }
        """;

    [Fact]
    public void EveryKeyOfAConverterIsRead()
    {
        ConverterFacts facts = Read(Core, "enters: 1 A").Brief.ShouldNotBeNull().Converters.ShouldHaveSingleItem().Facts;

        facts.Stage.Duty.ShouldBe(1.0 / 12, 1e-12);
        facts.Stage.FeedA.ShouldBe(7.5, 1e-9);
        facts.LowSideSwitches.ShouldBe(2);
        facts.HighSideSwitches.ShouldBe(1);
        facts.OutputCapacitors.ShouldNotBeNull().CapacitanceF.ShouldBe(7640e-6, 1e-9);
        facts.Connector.ShouldBe(new SupplyConnector(3, 9));
        facts.EdgeS.ShouldBe(4e-9);
    }

    [Theory]
    [InlineData("enters: low side of core", 22.5 * 11 / 12)]
    [InlineData("enters: average high side of core", 22.5 / 12)]
    [InlineData("leaves: inductor of core", -22.5)]
    [InlineData("enters: feed of core", 7.5)]
    [InlineData("enters: output of core", 90)]
    public void ATerminalTakesItsCurrentFromAStage(string current, double expectedA) =>
        Read(Core, current).Brief.ShouldNotBeNull().Nets[0].Terminals[0].CurrentA.ShouldBe(expectedA, 1e-9);

    [Fact]
    public void RmsIsAskedForByWord()
    {
        ReviewBrief brief = Read(Core, "enters: rms high side of core").Brief.ShouldNotBeNull();
        Terminal terminal = brief.Nets[0].Terminals[0];

        terminal.CurrentA.ShouldBe(brief.Converters[0].Facts.Stage.HighSideRmsA, 1e-12);
        terminal.Derived.ShouldNotBeNull().Current.AverageA.ShouldBe(1.875, 1e-9);
        brief.StatedDefaults.ShouldContain(line => line.Contains("RMS of high side of core", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("enters: low sid of core", "did you mean `low side`?")]
    [InlineData("enters: low side of cord", "did you mean 'core'?")]
    [InlineData("enters: input capacitors of core", "`rms input capacitors of core`")]
    public void WordsThatNameNothingAreQuestioned(string current, string hint) =>
        Read(Core, current).Diagnostics.ShouldContain(d => d.Code == BriefCodes.StageCurrent && d.Expected.Contains(hint, StringComparison.Ordinal));

    /// <summary>Slips of a prefix: milli for mega, kilo too many, ripple beyond any board. Bounds are common practice, no source.</summary>
    [Theory]
    [InlineData("switching frequency: 500 kHz", "switching frequency: 1.2 mHz", "a frequency from 1.00 kHz to 1.00 GHz")]
    [InlineData("load current: 90 A", "load current: 12 kA", "a current from 1.00 mA to 5.00 kA")]
    [InlineData("inductance: 0.25 uH", "inductance: 0.25 nH", "was a prefix mistaken?")]
    [InlineData("inductance: 0.25 uH", "inductance: 0.25 pH", "an inductance from 100 pH to 1.00 H")]
    [InlineData("input voltage: 12 V", "input voltage: 12 kV", "a voltage from 100 mV to 2.00 kV")]
    [InlineData("edge time: 4 ns", "edge time: 4 s", "a time from 10.0 ps to 100 µs")]
    [InlineData("value: 22 uF", "value: 22 kF", "a capacitance from 1.00 pF to 100 F")]
    [InlineData("esr: 2 mohm", "esr: 2 Mohm", "to 100 Ω")]
    [InlineData("rating: 9 A", "rating: 9 kA", "a current from 1.00 mA to 1.00 kA")]
    public void ASlipOfAPrefixIsQuestioned(string right, string slip, string expected)
    {
        string brief = Core.Replace(right, slip, StringComparison.Ordinal);
        CopperPath.Diagnostics.Diagnostic found = Read(brief, "enters: 1 A").Diagnostics.First(d => d.Code == BriefCodes.OutOfRange);

        found.Expected.ShouldContain(expected);
    }

    [Fact]
    public void AConverterThatRaisesTheVoltageIsRefused() =>
        Read(Core.Replace("output voltage: 0.9 V", "output voltage: 11 V", StringComparison.Ordinal), "enters: 1 A")
            .Diagnostics.ShouldContain(d => d.Code == BriefCodes.NotABuck && d.Position.Line > 0);

    [Fact]
    public void WhatIsLeftOutIsStated() =>
        Read(Core.Replace("  efficiency: 0.9\n", "", StringComparison.Ordinal).Replace("  edge time: 4 ns\n", "", StringComparison.Ordinal), "enters: 1 A")
            .Brief.ShouldNotBeNull().StatedDefaults.Count(line => line.StartsWith("converter 'core': e", StringComparison.Ordinal)).ShouldBe(2);

    /// <summary>P_out (1 / efficiency - 1): 81 W at 0.9 lose 9 W.</summary>
    [Fact]
    public void PartsLoseWhatTheEfficiencySays()
    {
        ConverterFacts facts = Read(Core, "enters: 1 A").Brief.ShouldNotBeNull().Converters.ShouldHaveSingleItem().Facts;

        facts.PartsLossW.ShouldBe(facts.OutputV * facts.Stage.OutputA / 9, 1e-12);
        facts.LossShares.ShouldBe(LossShares.Common);
        LossShares.Common.Sum.ShouldBe(1, 1e-12);
    }

    [Fact]
    public void LossSharesAreReadAndMustAddToOne()
    {
        Read(WithShares("{ high side: 0.2, low side: 0.5, inductor: 0.3 }"), "enters: 1 A").Brief.ShouldNotBeNull()
            .Converters.ShouldHaveSingleItem().Facts.LossShares.ShouldBe(new LossShares(0.2, 0.5, 0.3, 0));
        Read(WithShares("{ high side: 0.2, low side: 0.5 }"), "enters: 1 A").Diagnostics
            .ShouldContain(d => d.Code == BriefCodes.LossShares && d.Found.Contains("0.7", StringComparison.Ordinal));

        static string WithShares(string shares) => Core.Replace("  efficiency: 0.9\n", $"  efficiency: 0.9\n  loss shares: {shares}\n", StringComparison.Ordinal);
    }

    [Fact]
    public void WaiversAndSensitiveNetsAreRead()
    {
        ReviewBrief brief = Read("""
            sensitive nets: { name: feedback, net: FB }
            waivers: { rule: neck, net: N, near: { x: 1 mm, y: 2 mm }, reason: short pulses only, by: lead engineer }
            """, "enters: 1 A").Brief.ShouldNotBeNull();

        brief.SensitiveNets.ShouldHaveSingleItem().Selector.ShouldBe(new NetByName("FB"));
        Waiver waiver = brief.Waivers.ShouldHaveSingleItem();
        (waiver.Rule, waiver.Net, waiver.Reason, waiver.By).ShouldBe(("neck", "N", "short pulses only", "lead engineer"));
        waiver.Near!.Value.X.ShouldBe(1_000_000);
    }

    [Fact]
    public void AWaiverWithoutAReasonIsRefused() =>
        Read("waivers: { rule: neck, net: N, by: lead engineer }", "enters: 1 A").Diagnostics.ShouldContain(d => d.Code == BriefCodes.MissingKey);

    private static BriefReading Read(string sections, string current) => BriefReader.Read("review.yaml", $$"""
        copperpath: 1
        board: { name: B, files: f }
        ambient: 40 degC
        limits: { temperature rise: 30 K }
        {{sections}}
        nets:
          - name: N
            net: N
            terminals:
              - { name: a, pins: [A.1], {{current}} }
              - { name: b, pins: [B.1], takes: rest }
        """.ReplaceLineEndings("\n"));
}

using CopperPath.Cli.Overlays;
using CopperPath.Converter;

namespace CopperPath.Cli.Tests.Overlays;

public sealed class WaveformChartTests
{
    /// <summary>5 V from 12 V is 41.7 % by the ratio of voltages; at 83.33 % efficiency the duty is 50.0 %: the division by hand.</summary>
    [Fact]
    public void ADutyThatCarriesLossesSaysSo()
    {
        ConverterFacts facts = Facts(outputV: 5, efficiency: 0.8333, phases: 1);

        WaveformChart.ConditionsOf(facts).ShouldBe(
            "1 phase, 12.0 V to 5.00 V, 3.00 A, 500 kHz, duty 50.0 % (41.7 % by the voltages, over the efficiency of 83.3 %)");
        WaveformChart.BasisOf(facts).ShouldStartWith("Losses as a constant voltage in series with the inductors");
    }

    [Fact]
    public void AConverterWithoutLossesIsCalledThat()
    {
        ConverterFacts facts = Facts(outputV: 1.2, efficiency: 1, phases: 4);

        WaveformChart.ConditionsOf(facts).ShouldBe("4 phases, 12.0 V to 1.20 V, 3.00 A, 500 kHz, duty 10.0 %");
        WaveformChart.BasisOf(facts).ShouldStartWith("No losses");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(12)]
    public void TheSameFactsAreTheSameBytes(int phases) =>
        WaveformChart.PaintPng(Facts(1.2, 0.9, phases)).ShouldBe(WaveformChart.PaintPng(Facts(1.2, 0.9, phases)));

    private static ConverterFacts Facts(double outputV, double efficiency, int phases) => new(
        "sample", outputV, efficiency, new BuckStage(phases, 12, outputV / efficiency, 3, 4.7e-6, 500e3), null, null, 1, 1, null, 5e-9);
}

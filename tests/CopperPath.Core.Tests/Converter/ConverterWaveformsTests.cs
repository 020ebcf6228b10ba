using CopperPath.Converter;

namespace CopperPath.Core.Tests.Converter;

/// <summary>Waveforms integrated piece by piece against the closed forms, which were derived another way.</summary>
public sealed class ConverterWaveformsTests
{
    [Theory]
    [InlineData(1, 0.1)]
    [InlineData(2, 0.25)]
    [InlineData(3, 0.4)]
    [InlineData(4, 0.3)]
    [InlineData(4, 0.25)]
    [InlineData(6, 0.75)]
    public void IntegralsAreTheClosedForms(int phases, double duty)
    {
        BuckStage stage = new(phases, 12, 12 * duty, 60, 0.3e-6, 400e3);
        ConverterWaveforms waves = ConverterWaveforms.Of(stage);

        waves.SwitchNodesV.Count.ShouldBe(phases);
        waves.SwitchNodesV[^1].Mean.ShouldBe(stage.OutputV, 1e-9);
        waves.InductorsA[0].Mean.ShouldBe(stage.PhaseA, 1e-9);
        waves.InductorsA[0].Rms.ShouldBe(stage.InductorRmsA, 1e-9);
        waves.InductorsA[^1].PeakToPeak.ShouldBe(stage.PhaseRippleA, 1e-9);
        waves.OutputA.PeakToPeak.ShouldBe(stage.OutputRippleA, 1e-6);
        waves.InputA.Mean.ShouldBe(stage.FeedA, 1e-9);
        waves.InputCapacitorsA.Rms.ShouldBe(stage.InputCapacitorRmsA, 1e-6);
    }

    [Fact]
    public void StageCurrentsBalanceOnAverageAndInPowerOverThePeriod()
    {
        BuckStage stage = new(4, 12, 1, 90, 0.25e-6, 500e3);
        ConverterFacts facts = new("core", 0.9, 0.9, stage, null, null, 1, 2, null, 5e-9);
        StageCurrent high = facts.CurrentOf(PathStage.HighSide);
        StageCurrent low = facts.CurrentOf(PathStage.LowSide);
        StageCurrent inductor = facts.CurrentOf(PathStage.Inductor);

        (high.AverageA + low.AverageA).ShouldBe(inductor.AverageA, 1e-9);
        // One conducts while the other does not, so their mean squares add.
        ((high.RmsA * high.RmsA) + (low.RmsA * low.RmsA)).ShouldBe(inductor.RmsA * inductor.RmsA, 1e-9);
        (4 * high.AverageA).ShouldBe(facts.CurrentOf(PathStage.Feed).AverageA, 1e-9);
        facts.CurrentOf(PathStage.PhaseInputCapacitors).RmsA.ShouldBe(Math.Sqrt((high.RmsA * high.RmsA) - (high.AverageA * high.AverageA)), 1e-9);
    }
}

using CopperPath.Converter;

namespace CopperPath.Core.Tests.Converter;

/// <summary>
/// Expected numbers: closed forms evaluated outside this project (numerical Python), anchors from data sheets where
/// named, and waveforms summed point by point here, which share nothing with the closed forms but the circuit.
/// </summary>
public class BuckStageTests
{
    private const double Tolerance = 1e-4;

    [Theory]
    [InlineData(1, 0.1, 10, 1e-6, 500e3, 2.16000, 3.00000, 3.00647, 2.16000)]
    [InlineData(2, 0.25, 40, 0.47e-6, 500e3, 9.57447, 10.00000, 10.18919, 6.38298)]
    [InlineData(3, 0.1, 60, 0.22e-6, 600e3, 8.18182, 9.16515, 9.25600, 6.36364)]
    [InlineData(4, 0.1, 100, 0.25e-6, 500e3, 8.64000, 12.24745, 12.34862, 5.76000)]
    [InlineData(6, 0.1, 180, 0.15e-6, 500e3, 14.40000, 14.69694, 15.04553, 6.40000)]
    [InlineData(3, 1.0 / 3, 60, 0.47e-6, 500e3, 11.34752, 0, 3.27575, 0)]
    [InlineData(4, 0.3, 100, 0.47e-6, 500e3, 10.72340, 10.00000, 10.17940, 2.04255)]
    public void RippleAndInputCapacitorCurrent(
        int phases, double duty, double outputA, double inductanceH, double switchingHz,
        double phaseRippleA, double withoutRippleA, double inputCapacitorA, double outputRippleA)
    {
        BuckStage stage = new(phases, 12, 12 * duty, outputA, inductanceH, switchingHz);

        stage.PhaseRippleA.ShouldBe(phaseRippleA, phaseRippleA * Tolerance);
        stage.InputCapacitorRmsWithoutRippleA.ShouldBe(withoutRippleA, (withoutRippleA * Tolerance) + 1e-6);
        stage.InputCapacitorRmsA.ShouldBe(inputCapacitorA, inputCapacitorA * Tolerance);
        stage.OutputRippleA.ShouldBe(outputRippleA, (outputRippleA * Tolerance) + 1e-6);
    }

    [Theory]
    [InlineData(1, 0.30000, 1)]
    [InlineData(2, 0.20000, 0.88889)]
    [InlineData(3, 0.15275, 0.77778)]
    [InlineData(4, 0.12247, 0.66667)]
    [InlineData(6, 0.08165, 0.44444)]
    public void InterleavingCancelsRipple(int phases, double inputPerOutput, double outputRipplePerPhase)
    {
        BuckStage stage = new(phases, 12, 1.2, 1, 1e-6, 500e3);

        stage.InputCapacitorRmsWithoutRippleA.ShouldBe(inputPerOutput, Tolerance);
        (stage.OutputRippleA / stage.PhaseRippleA).ShouldBe(outputRipplePerPhase, Tolerance);
    }

    /// <summary>LTC3861 and LTC3729 data sheets: worst single-phase case at D = 0.5; two phases at 0.25 and 0.75, half as large.</summary>
    [Fact]
    public void WorstCasesAreThoseOfDataSheets()
    {
        Worst(phases: 1).ShouldBe((0.5, 0.5));
        Worst(phases: 2).ShouldBe((0.25, 0.25));
        new BuckStage(2, 12, 9, 1, 1, 1).InputCapacitorRmsWithoutRippleA.ShouldBe(0.25, 1e-9);

        static (double Duty, double RmsPerOutput) Worst(int phases) => Enumerable.Range(1, 99)
            .Select(percent => new BuckStage(phases, 100, percent, 1, 1, 1))
            .Select(stage => (stage.Duty, Rms: Math.Round(stage.InputCapacitorRmsWithoutRippleA, 12)))
            .MaxBy(point => point.Rms);
    }

    [Fact]
    public void SwitchesCarryTheirRmsNotTheirAverage()
    {
        // 25 A a phase with 9 A of ripple at D = 0.1: L = Vout (1 - D) / (dI f).
        BuckStage stage = new(1, 12, 1.2, 25, 1.2 * 0.9 / (9 * 500e3), 500e3);

        stage.HighSideRmsA.ShouldBe(7.94827, 7.94827 * Tolerance);
        stage.LowSideRmsA.ShouldBe(23.84481, 23.84481 * Tolerance);
        stage.InductorRmsA.ShouldBe(25.13464, 25.13464 * Tolerance);
    }

    [Theory]
    [InlineData(1, 0.37, 12)]
    [InlineData(2, 0.13, 30)]
    [InlineData(2, 0.62, 30)]
    [InlineData(3, 0.4, 45)]
    [InlineData(4, 0.55, 80)]
    [InlineData(5, 0.91, 60)]
    [InlineData(6, 0.08, 150)]
    [InlineData(4, 0.25, 80)]
    public void ClosedFormsAgreeWithWaveformsSummedPointByPoint(int phases, double duty, double outputA)
    {
        BuckStage stage = new(phases, 10, 10 * duty, outputA, 0.3e-6, 400e3);

        (double inputRmsA, double outputRippleA) = SumWaveforms(stage);

        stage.InputCapacitorRmsA.ShouldBe(inputRmsA, inputRmsA * 1e-3);
        stage.OutputRippleA.ShouldBe(outputRippleA, stage.PhaseRippleA * 1e-3);
    }

    [Fact]
    public void RippleVoltageHasAResistiveAndACapacitivePart()
    {
        BuckStage stage = new(4, 12, 1.2, 100, 0.25e-6, 500e3);

        OutputRippleVoltage ripple = OutputRippleVoltage.Of(stage, 1e-3, 0.5e-3);

        ripple.ResistiveV.ShouldBe(5.76 * 0.5e-3, 1e-8);
        // Charge of half a triangle wave of period 1/(N f): base T/2, height dI/2, area dI T / 8.
        ripple.CapacitiveV.ShouldBe(0.5 * (0.5 / (4 * 500e3)) * (5.76 / 2) / 1e-3, 1e-12);
    }

    [Fact]
    public void InrushIsCapacitanceTimesSlope() =>
        Inrush.Current(1000e-6, 12, 5e-3).CurrentA.ShouldBe(2.4, 1e-12);

    [Fact]
    public void ABuckCanNotRaiseVoltage() =>
        Should.Throw<ArgumentOutOfRangeException>(() => new BuckStage(1, 5, 5, 1, 1e-6, 1e5));

    /// <summary>Samples one period of the input current and of the summed inductor currents.</summary>
    private static (double InputRmsA, double OutputRippleA) SumWaveforms(BuckStage stage)
    {
        const int Samples = 60_000;
        double sum = 0;
        double sumOfSquares = 0;
        double leastA = double.MaxValue;
        double mostA = double.MinValue;
        for (int i = 0; i < Samples; i++)
        {
            double inputA = 0;
            double outputA = 0;
            for (int phase = 0; phase < stage.Phases; phase++)
            {
                double time = (((i + 0.5) / Samples) + ((double)phase / stage.Phases)) % 1;
                bool conducts = time < stage.Duty;
                double slope = conducts ? time / stage.Duty : (1 - time) / (1 - stage.Duty);
                double inductorA = stage.PhaseA + (stage.PhaseRippleA * (slope - 0.5));
                inputA += conducts ? inductorA : 0;
                outputA += inductorA;
            }

            sum += inputA;
            sumOfSquares += inputA * inputA;
            leastA = Math.Min(leastA, outputA);
            mostA = Math.Max(mostA, outputA);
        }

        double meanA = sum / Samples;
        return (Math.Sqrt((sumOfSquares / Samples) - (meanA * meanA)), mostA - leastA);
    }
}

using CopperPath.Converter;

namespace CopperPath.Core.Tests.Converter;

/// <summary>
/// What people of the trade know by heart. Every check here is common practice, no source; the numbers follow from the
/// definitions and are written down so that a slip in the formulas shows in figures an engineer recognises.
/// </summary>
public sealed class FactsOfTheTradeTests
{
    [Fact]
    public void HalfDutyFromTwelveVoltsGivesSixVolts() => Stage(1, 12, 6).Duty.ShouldBe(0.5, 1e-12);

    [Fact]
    public void AboutEightPercentGivesOneVolt() => Stage(1, 12, 1).Duty.ShouldBe(0.08, 0.005);

    [Fact]
    public void TwoPhasesAtHundredKilohertzAreFiveMicrosecondsApartAndRippleAtTwice()
    {
        BuckStage stage = new(2, 12, 1, 20, 1e-6, 100e3);

        stage.TurnOnS(1).ShouldBe(5e-6, 1e-15);
        stage.TurnOnDegrees(1).ShouldBe(180, 1e-12);
        stage.RippleHz.ShouldBe(200e3, 1e-9);
    }

    /// <summary>
    /// "Halve" speaks of the ripple against one phase that carries the whole current through half the inductance; the
    /// summed ripple over that of one inductor is (1 - 2 D) / (1 - D): 0.95 at D = 0.05, still 0.75 at D = 0.2.
    /// </summary>
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.05)]
    [InlineData(0.1)]
    [InlineData(0.2)]
    public void TwoPhasesHalveTheRippleAtSmallDuty(double duty)
    {
        BuckStage two = new(2, 12, 12 * duty, 20, 1e-6, 300e3);
        BuckStage one = new(1, 12, 12 * duty, 20, 0.5e-6, 300e3);

        double ratio = two.OutputRippleA / one.OutputRippleA;

        ratio.ShouldBe((1 - (2 * duty)) / (2 * (1 - duty)), 1e-9);
        ratio.ShouldBeInRange(0.37, 0.5);
    }

    [Theory]
    [InlineData(4, 7200e-6)]
    [InlineData(7, 12_600e-6)]
    public void CapacitancesOfABankAdd(int count, double sumF)
    {
        CapacitorBank bank = new([new CapacitorGroup(count, 1800e-6, 8e-3)]);

        bank.CapacitanceF.ShouldBe(sumF, 1e-9);
        bank.SeriesResistanceOhm.ShouldBe(8e-3 / count, 1e-12);
    }

    [Fact]
    public void RippleSharesByImpedanceNotByCount()
    {
        CapacitorGroup ceramic = new(2, 22e-6, 2e-3);
        CapacitorGroup polymer = new(2, 470e-6, 9e-3);
        CapacitorBank bank = new([ceramic, polymer]);

        // By hand at 500 kHz: 1/(2 pi f C) is 14.5 mohm for the ceramic (14.6 mohm with its resistance) and 0.68 mohm for the polymer (9.03 mohm).
        bank.CurrentOfEachA(polymer, 1, 500e3).ShouldBeGreaterThan(bank.CurrentOfEachA(ceramic, 1, 500e3));
        (bank.CurrentOfEachA(polymer, 1, 500e3) / bank.CurrentOfEachA(ceramic, 1, 500e3)).ShouldBe(14.606 / 9.025, 0.01);
    }

    /// <summary>Two pins at some six amperes each: twelve amperes, some 140 W at 12 V.</summary>
    [Fact]
    public void TwoParalleledSupplyPinsFeedAboutTwelveAmperes()
    {
        BuckStage stage = new(4, 12, 1.2, 120, 0.25e-6, 500e3);
        ConverterFacts facts = new("core", 1.2, 1, stage, null, null, 1, 1, new SupplyConnector(2, 6), 5e-9);

        facts.EqualPinCurrentA!.Value.ShouldBe(6, 1e-12);
        (stage.InputV * stage.FeedA).ShouldBe(144, 1e-9);
    }

    /// <summary>A core supply of present-day size: four phases, 90 A, a usual bank.</summary>
    [Fact]
    public void CoreRippleBelongsInTheTensOfMillivolts()
    {
        BuckStage stage = new(4, 12, 0.9, 90, 0.2e-6, 400e3);
        CapacitorBank bank = new([new CapacitorGroup(4, 470e-6, 8e-3), new CapacitorGroup(20, 22e-6, 3e-3)]);

        OutputRippleVoltage ripple = OutputRippleVoltage.Of(stage, bank.CapacitanceF, bank.SeriesResistanceOhm);

        (ripple.ResistiveV + ripple.CapacitiveV).ShouldBeInRange(0.1e-3, 50e-3);
    }

    /// <summary>
    /// About four holes at each return terminal of a capacitor and about twenty at a low-side group are ordinary counts:
    /// holes of 0.3 mm with 25 um of copper carry an ampere each at 20 K, so four carry a capacitor's ripple and twenty
    /// the average of a phase.
    /// </summary>
    [Fact]
    public void FourHolesForACapacitorAndTwentyForALowSideGroupAreOrdinary()
    {
        double sectionM2 = Math.PI * (0.3e-3 + 25e-6) * 25e-6;
        double eachA = CopperPath.Capacity.Ipc2221.Current(20, sectionM2, CopperPath.Capacity.ConductorPlacement.Internal).CurrentA;
        BuckStage stage = new(4, 12, 1, 80, 0.25e-6, 500e3);

        eachA.ShouldBeInRange(1, 1.5);
        (20 * eachA).ShouldBeGreaterThan((1 - stage.Duty) * stage.PhaseA);
        (4 * eachA).ShouldBeGreaterThan(stage.InputCapacitorRmsA / 16);
    }

    private static BuckStage Stage(int phases, double inputV, double outputV) => new(phases, inputV, outputV, 10, 1e-6, 300e3);
}

using CopperPath.Capacity;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Capacity;

/// <summary>Expected numbers: area of a ring and R = rho L / A evaluated outside this project (numerical Python).</summary>
public class ViaBarrelTests
{
    private const double Tolerance = 1e-4;
    private const double BoardM = 1.6e-3;

    private static readonly double s_resistivity20OhmM = CopperMaterial.Iacs.ResistivityOhmM(CopperMaterial.ReferenceK);

    [Theory]
    [InlineData(0.30, 0.025, 0.025525, 1.08071, 0.021598, 1.27720)]
    [InlineData(0.30, 0.020, 0.020106, 1.37200, 0.017593, 1.56799)]
    [InlineData(0.30, 0.018, 0.017982, 1.53403, 0.015947, 1.72986)]
    [InlineData(0.20, 0.020, 0.013823, 1.99563, 0.011310, 2.43910)]
    [InlineData(0.50, 0.025, 0.041233, 0.66901, 0.037306, 0.73943)]
    public void SectionAndResistanceDependOnWhichDiameterIsMeant(
        double diameterMm, double platingMm, double finishedMm2, double finishedMohm, double drillMm2, double drillMohm)
    {
        ViaBarrel finished = ViaBarrel.OfFinishedHole(diameterMm * 1e-3, platingMm * 1e-3);
        ViaBarrel drilled = ViaBarrel.OfDrill(diameterMm * 1e-3, platingMm * 1e-3);

        finished.SectionM2.ShouldBe(finishedMm2 * 1e-6, finishedMm2 * 1e-6 * Tolerance);
        finished.ResistanceOhm(BoardM, s_resistivity20OhmM).ShouldBe(finishedMohm * 1e-3, finishedMohm * 1e-3 * Tolerance);
        drilled.SectionM2.ShouldBe(drillMm2 * 1e-6, drillMm2 * 1e-6 * Tolerance);
        drilled.ResistanceOhm(BoardM, s_resistivity20OhmM).ShouldBe(drillMohm * 1e-3, drillMohm * 1e-3 * Tolerance);
        finished.Basis.Assumptions.ShouldContain("finished hole");
        drilled.Basis.Assumptions.ShouldContain("drill");
    }

    [Fact]
    public void ADrillIsTheFinishedHoleAndTwoWalls() =>
        ViaBarrel.OfDrill(0.35e-3, 25e-6).SectionM2.ShouldBe(ViaBarrel.OfFinishedHole(0.30e-3, 25e-6).SectionM2, 1e-20);

    [Fact]
    public void HotBarrelsResistMore()
    {
        ViaBarrel barrel = ViaBarrel.OfFinishedHole(0.3e-3, 25e-6);

        barrel.ResistanceOhm(BoardM, CopperMaterial.Iacs.ResistivityOhmM(373.15)).ShouldBe(1.42049e-3, 1.42049e-3 * Tolerance);
        barrel.ThermalResistanceKPerW(BoardM, 385).ShouldBe(162.81, 162.81 * Tolerance);
    }

    [Fact]
    public void EqualSectionCurrentIsThatOfTheConductor()
    {
        ViaBarrel barrel = ViaBarrel.OfFinishedHole(0.3e-3, 25e-6);

        CurrentEstimate byCurve = barrel.EqualSectionCurrent(20, ConductorPlacement.Internal);
        byCurve.CurrentA.ShouldBe(Ipc2221.Current(20, barrel.SectionM2, ConductorPlacement.Internal).CurrentA);
        byCurve.Basis.Assumptions.ShouldContain("equal section");
        byCurve.Basis.Assumptions.ShouldContain("finished hole");

        double traceM = 35e-6;
        barrel.EqualSectionWidthM(traceM).ShouldBe(barrel.SectionM2 / traceM);
        CurrentEstimate byFit = barrel.EqualSectionCurrent(20, traceM);
        Ipc2152StyleFit.Rise(byFit.CurrentA, barrel.SectionM2 / traceM, traceM).RiseK.ShouldBe(20, 1e-10);
    }

    [Fact]
    public void PlatingThatFillsTheDrillIsNoBarrel() =>
        Should.Throw<ArgumentOutOfRangeException>(() => ViaBarrel.OfDrill(50e-6, 25e-6));
}

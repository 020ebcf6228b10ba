using CopperPath.Converter;

namespace CopperPath.Core.Tests.Converter;

/// <summary>Parallel-plate formulas of field theory; expected numbers evaluated outside this project (numerical Python).</summary>
public class LayoutParasiticsTests
{
    private const double Tolerance = 1e-4;

    [Theory]
    [InlineData(100, 0.2, 19.037)]
    [InlineData(25, 0.2, 4.759)]
    [InlineData(200, 1.6, 4.759)]
    public void ASwitchNodeOverAPlaneIsACapacitor(double areaMm2, double distanceMm, double expectedPf) =>
        SwitchNodePlate.Of(areaMm2 * 1e-6, distanceMm * 1e-3, 4.3).CapacitanceF
            .ShouldBe(expectedPf * 1e-12, expectedPf * 1e-12 * Tolerance);

    [Fact]
    public void ItsSwingCostsCurrentAndPower()
    {
        SwitchNodePlate plate = SwitchNodePlate.Of(100e-6, 0.2e-3, 4.3);

        plate.DisplacementCurrentA(12, 5e-9).ShouldBe(45.69e-3, 45.69e-3 * Tolerance);
        plate.SwitchingLossW(12, 500e3).ShouldBe(1.371e-3, 1.371e-3 * 3 * Tolerance);
    }

    [Theory]
    [InlineData(0.2, 10, 5, 0.50265)]
    [InlineData(0.1, 10, 5, 0.25133)]
    [InlineData(0.5, 10, 10, 0.62832)]
    public void AWideLoopOverAPlaneIsAnInductor(double heightMm, double lengthMm, double widthMm, double expectedNh)
    {
        var estimate = HotLoop.Inductance(heightMm * 1e-3, lengthMm * 1e-3, widthMm * 1e-3);

        estimate.InductanceH.ShouldBe(expectedNh * 1e-9, expectedNh * 1e-9 * Tolerance);
        estimate.Basis.IsInRange.ShouldBeTrue();
    }

    [Fact]
    public void ANarrowLoopIsOutsideTheFormula() =>
        HotLoop.Inductance(1.5e-3, 10e-3, 2e-3).Basis.OutsideRange.ShouldHaveSingleItem().ShouldContain("ten times");
}

using CopperPath.Capacity;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Quantities;

/// <summary>
/// Parameters of annealed copper as in IEC 60028 (from memory); expected numbers evaluated outside this project
/// (numerical Python).
/// </summary>
public class CopperMaterialTests
{
    private const double Tolerance = 1e-4;

    [Theory]
    [InlineData(20, 1.7241e-8)]
    [InlineData(25, 1.75798e-8)]
    [InlineData(50, 1.92737e-8)]
    [InlineData(85, 2.16452e-8)]
    [InlineData(100, 2.26616e-8)]
    [InlineData(125, 2.43555e-8)]
    public void ResistivityRisesWithTemperature(double temperatureC, double expectedOhmM) =>
        CopperMaterial.Iacs.ResistivityOhmM(Units.ZeroCelsiusK + temperatureC).ShouldBe(expectedOhmM, expectedOhmM * Tolerance);

    [Theory]
    [InlineData(17.4, 0.990862)]
    [InlineData(34.8, 0.495431)]
    [InlineData(35, 0.492600)]
    [InlineData(69.6, 0.247716)]
    [InlineData(70, 0.246300)]
    [InlineData(104.4, 0.165144)]
    public void ThickerSheetsResistLess(double thicknessUm, double expectedMohm) =>
        CopperMaterial.Iacs.SheetResistanceOhm(thicknessUm * 1e-6, CopperMaterial.ReferenceK)
            .ShouldBe(expectedMohm * 1e-3, expectedMohm * 1e-3 * Tolerance);

    [Theory]
    [InlineData(100e3, 208.98, 239.59)]
    [InlineData(200e3, 147.77, 169.41)]
    [InlineData(300e3, 120.65, 138.33)]
    [InlineData(500e3, 93.458, 107.147)]
    [InlineData(1e6, 66.085, 75.764)]
    public void SkinDepthShrinksWithFrequency(double frequencyHz, double at20Um, double at100Um)
    {
        SkinDepth.DepthM(frequencyHz, CopperMaterial.Iacs.ResistivityOhmM(293.15)).ShouldBe(at20Um * 1e-6, at20Um * 1e-6 * Tolerance);
        SkinDepth.DepthM(frequencyHz, CopperMaterial.Iacs.ResistivityOhmM(373.15)).ShouldBe(at100Um * 1e-6, at100Um * 1e-6 * Tolerance);
    }
}

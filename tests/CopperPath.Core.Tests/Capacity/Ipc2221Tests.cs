using CopperPath.Capacity;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Capacity;

/// <summary>
/// Expected numbers: the commonly quoted IPC-2221 formula evaluated outside this project (numerical Python); the
/// standard was not read, so they test the arithmetic and not the physics.
/// </summary>
public class Ipc2221Tests
{
    private const double Tolerance = 1e-4;

    [Theory]
    [InlineData(ConductorPlacement.External, 100, 1.378, 4.7011, 6.3775, 7.6231)]
    [InlineData(ConductorPlacement.External, 393.7, 1.378, 12.6967, 17.2244, 20.5885)]
    [InlineData(ConductorPlacement.External, 393.7, 2.756, 20.9864, 28.4703, 34.0308)]
    [InlineData(ConductorPlacement.Internal, 100, 1.378, 2.3505, 3.1887, 3.8115)]
    [InlineData(ConductorPlacement.Internal, 393.7, 1.378, 6.3484, 8.6122, 10.2943)]
    public void CurrentFollowsFromRiseAndSection(
        ConductorPlacement placement, double widthMil, double thicknessMil, double at10A, double at20A, double at30A)
    {
        double sectionM2 = SquareMils(widthMil * thicknessMil);

        Ipc2221.Current(10, sectionM2, placement).CurrentA.ShouldBe(at10A, at10A * Tolerance);
        Ipc2221.Current(20, sectionM2, placement).CurrentA.ShouldBe(at20A, at20A * Tolerance);
        Ipc2221.Current(30, sectionM2, placement).CurrentA.ShouldBe(at30A, at30A * Tolerance);
        Ipc2221.Rise(at20A, sectionM2, placement).RiseK.ShouldBe(20, 20 * 3 * Tolerance);
    }

    [Theory]
    [InlineData(ConductorPlacement.External, 10, 10, 390.294)]
    [InlineData(ConductorPlacement.External, 10, 20, 256.270)]
    [InlineData(ConductorPlacement.External, 5, 20, 98.511)]
    [InlineData(ConductorPlacement.External, 20, 20, 666.67)]
    [InlineData(ConductorPlacement.Internal, 10, 10, 1015.325)]
    [InlineData(ConductorPlacement.Internal, 5, 20, 256.270)]
    public void SectionFollowsFromCurrentAndRise(
        ConductorPlacement placement, double currentA, double riseK, double expectedSquareMil) =>
        Ipc2221.Section(currentA, riseK, placement).SectionM2
            .ShouldBe(SquareMils(expectedSquareMil), SquareMils(expectedSquareMil) * Tolerance);

    [Fact]
    public void HalfTheCurrentInsideNeedsTheSectionOfTheWholeOutside() =>
        Ipc2221.Section(5, 20, ConductorPlacement.Internal).SectionM2
            .ShouldBe(Ipc2221.Section(10, 20, ConductorPlacement.External).SectionM2, 1e-18);

    [Fact]
    public void TheThreeFormsAreInversesOfEachOther()
    {
        double sectionM2 = Ipc2221.Section(7, 25, ConductorPlacement.External).SectionM2;

        Ipc2221.Current(25, sectionM2, ConductorPlacement.External).CurrentA.ShouldBe(7, 1e-12);
        Ipc2221.Rise(7, sectionM2, ConductorPlacement.External).RiseK.ShouldBe(25, 1e-11);
    }

    [Fact]
    public void LeavingTheChartsIsSaid()
    {
        Ipc2221.Current(20, SquareMils(300), ConductorPlacement.External).Basis.IsInRange.ShouldBeTrue();
        Ipc2221.Current(20, SquareMils(1085), ConductorPlacement.External).Basis.OutsideRange
            .ShouldHaveSingleItem().ShouldContain("section of 0.700 mm²");
        Ipc2221.Rise(40, SquareMils(300), ConductorPlacement.External).Basis.OutsideRange.Count.ShouldBe(2);
        Ipc2221.Rise(18, SquareMils(600), ConductorPlacement.Internal).Basis.OutsideRange
            .ShouldContain(reason => reason.Contains("17.5 A", StringComparison.Ordinal));
        Ipc2221.Rise(0, SquareMils(300), ConductorPlacement.External).RiseK.ShouldBe(0);
    }

    private static double SquareMils(double squareMils) => squareMils * Units.M2PerSquareMil;
}

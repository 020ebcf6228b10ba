using CopperPath.Capacity;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Capacity;

/// <summary>
/// Expected numbers: the fit after Brooks and Adam (2015), recalled from memory, evaluated outside this project
/// (numerical Python). They test the arithmetic; the constants await a reading of the article.
/// </summary>
public class Ipc2152StyleFitTests
{
    private const double Tolerance = 1e-4;

    [Theory]
    [InlineData(1, 10, 1.378, 11.061)]
    [InlineData(3, 50, 1.378, 15.639)]
    [InlineData(5, 100, 1.378, 19.576)]
    [InlineData(10, 200, 2.756, 17.643)]
    [InlineData(10, 393.7, 1.378, 16.194)]
    [InlineData(20, 393.7, 2.756, 32.388)]
    public void RiseCurrentAndWidthAgree(double currentA, double widthMil, double thicknessMil, double expectedRiseK)
    {
        double widthM = widthMil * Units.MPerMil;
        double thicknessM = thicknessMil * Units.MPerMil;

        RiseEstimate rise = Ipc2152StyleFit.Rise(currentA, widthM, thicknessM);

        rise.RiseK.ShouldBe(expectedRiseK, expectedRiseK * Tolerance);
        rise.Basis.IsInRange.ShouldBeTrue();
        rise.Basis.Assumptions.ShouldContain("isolated trace on a face of the board, no planes, still air");
        rise.Basis.Source.ShouldContain("from memory");
        Ipc2152StyleFit.Current(rise.RiseK, widthM, thicknessM).CurrentA.ShouldBe(currentA, currentA * 1e-12);
        Ipc2152StyleFit.Width(currentA, rise.RiseK, thicknessM).WidthM.ShouldBe(widthM, widthM * 1e-12);
    }

    [Fact]
    public void LeavingTheWorkingRangeIsSaid()
    {
        EstimateBasis basis = Ipc2152StyleFit.Rise(40, 5e-3 / 100, 5e-6).Basis;

        basis.OutsideRange.Count.ShouldBe(4);
        basis.OutsideRange[0].ShouldContain("40.0 A");
        basis.OutsideRange[1].ShouldContain("50.0 µm");
        basis.OutsideRange[2].ShouldContain("5.00 µm");
        basis.OutsideRange[3].ShouldContain("K");
    }
}

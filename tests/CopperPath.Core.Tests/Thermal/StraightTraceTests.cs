using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Electrical;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>The published case, one 6-inch trace on a bare board of 1.78 mm in still air, in this solver.</summary>
public sealed class StraightTraceTests
{
    private const double LengthM = 6 * 25.4e-3;

    /// <summary>
    /// The fit dT = 215.3 I^2 W^-1.15 Th^-1 (Brooks and Adam, 2015; from memory) where its rise is 10 to 40 K: nothing
    /// here is tuned to it, and correlations of natural convection alone scatter by 15 to 25 %.
    /// </summary>
    [Theory]
    [InlineData(3, 50, 1)]
    [InlineData(5, 100, 1)]
    [InlineData(10, 200, 2)]
    public void IsolatedTraceIsNearThePublishedFit(double currentA, double widthMil, double ounces)
    {
        double widthM = widthMil * Units.MPerMil;
        double thicknessM = ounces * Units.MPerOunceCopper;
        double published = Ipc2152StyleFit.Rise(currentA, widthM, thicknessM).RiseK;

        Isolated(thicknessM).Solve(currentA, widthM).MeanK.ShouldBe(published, published * 0.35);
    }

    [Fact]
    public void HalvingEveryCellChangesLittle()
    {
        StraightTrace trace = Isolated(Units.MPerOunceCopper);
        double coarse = trace.Solve(5, 2.54e-3).MeanK;
        double fine = (trace with { Fineness = 2 }).Solve(5, 2.54e-3).MeanK;

        fine.ShouldBe(coarse, coarse * 0.02);
    }

    /// <summary>A plane close below spreads the heat of a trace over the board: the standard says cooler, and gives no formula.</summary>
    [Fact]
    public void APlaneCloseBelowCoolsTheTrace()
    {
        double alone = Isolated(Units.MPerOunceCopper).Solve(5, 2.54e-3).MeanK;
        Stackup stack = new([34.8e-6, 34.8e-6], [0.2e-3], 25e-6, 1.7241e-8);
        StraightTrace over = Isolated(Units.MPerOunceCopper) with { Stack = stack, BaseM = 1.58e-3, CopperShares = [0, 1] };

        over.Solve(5, 2.54e-3).MeanK.ShouldBeLessThan(alone / 2);
    }

    [Fact]
    public void CurrentForARiseGivesThatRise()
    {
        StraightTrace trace = Isolated(Units.MPerOunceCopper);
        double current = trace.CurrentFor(20, 2.54e-3).ShouldNotBeNull();

        trace.Solve(current, 2.54e-3).MeanK.ShouldBe(20, 0.1);
    }

    private static StraightTrace Isolated(double thicknessM) => new(
        LengthM, LengthM + 50e-3, 76e-3, new Stackup([thicknessM], [], 25e-6, 1.7241e-8), 1.78e-3, 1, [0],
        ThermalMaterials.CopperOnFr4,
        new Cooling(Units.ZeroCelsiusK + 25, BoardPosture.Horizontal, new FaceCooling(null, 0.9), new FaceCooling(null, 0.9)));
}

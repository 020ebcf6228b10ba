using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Capacity;

/// <summary>IPC-6012 minima, from memory: finished copper and hole plating by class.</summary>
public class Ipc6012MinimaTests
{
    [Theory]
    [InlineData(0.5, 11.4, 33.4, 38.4)]
    [InlineData(1, 24.9, 47.9, 52.9)]
    [InlineData(2, 55.7, 78.7, 83.7)]
    public void FinishedCopperByFoilAndClass(double ounces, double internalUm, double externalUm, double external3Um)
    {
        Ipc6012Minima.CopperM(ounces, ConductorPlacement.Internal, BoardClass.Class3).ShouldBe(internalUm * 1e-6);
        Ipc6012Minima.CopperM(ounces, ConductorPlacement.External, BoardClass.Class2).ShouldBe(externalUm * 1e-6);
        Ipc6012Minima.CopperM(ounces, ConductorPlacement.External, BoardClass.Class3).ShouldBe(external3Um * 1e-6);
    }

    [Fact]
    public void AFoilNotInTheTableHasNoMinimum() =>
        Ipc6012Minima.CopperM(5, ConductorPlacement.Internal, BoardClass.Class2).ShouldBeNull();

    /// <summary>
    /// A layer stated as finished is its foil, outside with the least mean plating on it (20 um, in class 3 25 um); halfway between two
    /// foils (IPC-4562: 34.3 um an ounce; from memory) lies half of what the two leave.
    /// </summary>
    [Theory]
    [InlineData(34.3, ConductorPlacement.Internal, BoardClass.Class2, 24.9)]
    [InlineData(34.3, ConductorPlacement.Internal, BoardClass.Class3, 24.9)]
    [InlineData(51.45, ConductorPlacement.Internal, BoardClass.Class2, 40.3)]
    [InlineData(54.3, ConductorPlacement.External, BoardClass.Class2, 47.9)]
    [InlineData(59.3, ConductorPlacement.External, BoardClass.Class3, 52.9)]
    [InlineData(71.45, ConductorPlacement.External, BoardClass.Class2, 63.3)]
    public void LeastOfAFinishedLayerLiesBetweenTheRows(double finishedUm, ConductorPlacement placement, BoardClass boardClass, double leastUm) =>
        Ipc6012Minima.LeastOfFinishedM(finishedUm * 1e-6, placement, boardClass).ShouldNotBeNull().ShouldBe(leastUm * 1e-6, 1e-12);

    [Theory]
    [InlineData(4, ConductorPlacement.Internal)]
    [InlineData(140, ConductorPlacement.Internal)]
    [InlineData(24, ConductorPlacement.External)]
    [InlineData(160, ConductorPlacement.External)]
    public void NothingIsSaidOfThicknessesTheTableDoesNotReach(double finishedUm, ConductorPlacement placement) =>
        Ipc6012Minima.LeastOfFinishedM(finishedUm * 1e-6, placement, BoardClass.Class2).ShouldBeNull();

    /// <summary>Each row is nine tenths of its foil (IPC-4562), less what making it takes off: 1.5 to 6 um inside (from memory).</summary>
    [Fact]
    public void EveryRowIsNineTenthsOfItsFoilLessAnAllowance()
    {
        foreach ((double ounces, double foilUm, double allowanceUm) in ((double, double, double)[])[
            (0.125, 5.1, 1.5), (0.25, 8.5, 1.5), (0.375, 12, 1.5), (0.5, 17.1, 4), (1, 34.3, 6), (2, 68.6, 6), (3, 102.9, 6), (4, 137.2, 6)])
        {
            (Ipc6012Minima.CopperM(ounces, ConductorPlacement.Internal, BoardClass.Class2)!.Value * 1e6).ShouldBe((0.9 * foilUm) - allowanceUm, 0.1);
        }
    }

    /// <summary>A 1 oz inner layer at its minimum has 40 % more resistance than at its nominal 34.8 um.</summary>
    [Fact]
    public void AnInnerLayerAtItsMinimumResistsFourTenthsMore() =>
        (Units.MPerOunceCopper / Ipc6012Minima.CopperM(1, ConductorPlacement.Internal, BoardClass.Class2)!.Value).ShouldBe(1.40, 0.005);

    [Fact]
    public void PlatingByClass()
    {
        (Ipc6012Minima.PlatingM(BoardClass.Class2), Ipc6012Minima.MeanPlatingM(BoardClass.Class2)).ShouldBe((18e-6, 20e-6));
        (Ipc6012Minima.PlatingM(BoardClass.Class3), Ipc6012Minima.MeanPlatingM(BoardClass.Class3)).ShouldBe((20e-6, 25e-6));
    }
}

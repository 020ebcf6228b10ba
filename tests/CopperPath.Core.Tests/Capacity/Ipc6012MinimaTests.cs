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
        Ipc6012Minima.CopperM(3, ConductorPlacement.Internal, BoardClass.Class2).ShouldBeNull();

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

using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Laws any linear network of resistors obeys (Kirchhoff, Helmholtz's superposition, Lorentz's reciprocity; textbook
/// knowledge), on an irregular piece of two layers with four terminals, holes in the copper and plated holes through it.
/// </summary>
public sealed class ConductionLawTests
{
    private static readonly SolveDemand Fineness = Plate.OneMesh(1e-3) with { Accuracy = 1e-14 };

    /// <summary>Each terminal pair as (current, voltage).</summary>
    [Theory]
    [InlineData(0, 3, 1, 2)]
    [InlineData(0, 1, 2, 3)]
    [InlineData(2, 0, 3, 1)]
    public void TransferResistanceIsTheSameBothWays(int from, int to, int plus, int minus)
    {
        ConductionResult forth = IrregularPiece(Pair(from, to, 1)).Solve(Fineness);
        ConductionResult back = IrregularPiece(Pair(plus, minus, 1)).Solve(Fineness);

        double transfer = Voltage(forth, plus, minus);
        Math.Abs(transfer).ShouldBeGreaterThan(1e-3);
        Voltage(back, from, to).ShouldBe(transfer, 1e-9 * Math.Abs(transfer));
    }

    [Fact]
    public void PotentialsOfTwoFeedsAddUp()
    {
        ConductionResult first = IrregularPiece([2, 0, 0, -2]).Solve(Fineness);
        ConductionResult second = IrregularPiece([0, 3, -1, -2]).Solve(Fineness);
        ConductionResult both = IrregularPiece([2, 3, -1, -4]).Solve(Fineness);

        for (int s = 0; s < both.Sheets.Count; s++)
        {
            double[] sum = [.. first.Sheets[s].PotentialV.Zip(second.Sheets[s].PotentialV, (a, b) => a + b)];
            double scale = sum.Max(Math.Abs);
            for (int v = 0; v < sum.Length; v++)
            {
                both.Sheets[s].PotentialV[v].ShouldBe(sum[v], 1e-9 * scale);
            }
        }

        for (int b = 0; b < both.Barrels.Count; b++)
        {
            both.Barrels[b].CurrentA.ShouldBe(first.Barrels[b].CurrentA + second.Barrels[b].CurrentA, 1e-9 * 5);
        }
    }

    [Fact]
    public void CurrentsOfTerminalsAndBarrelsBalance()
    {
        ConductionResult result = IrregularPiece([2, 3, -1, -4]).Solve(Fineness);

        result.CurrentBalanceRatio.ShouldBeLessThan(1e-9);
        result.PowerBalanceRatio.ShouldNotBeNull().ShouldBeLessThan(1e-9);
        result.Terminals.Select(terminal => terminal.ContactCurrentsA.Sum())
            .Zip([2.0, 3, -1, -4]).ShouldAllBe(pair => Math.Abs(pair.First - pair.Second) < 1e-9 * 5);

        // Terminals 1 and 3 are on the lower layer: what they take must come down through the barrels.
        result.Barrels.Sum(barrel => barrel.CurrentA).ShouldBe(4 - 3, 1e-9 * 5);
    }

    [Fact]
    public void TwiceTheThicknessIsHalfTheResistance()
    {
        Plate piece = new Plate().Rectangle(0, 0, 30, 20).Terminal("a", 1, Plate.Box(0, 0, 1, 4)).Terminal("b", -1, Plate.Box(29, 16, 30, 20));
        Stackup thick = piece.Stack with { ThicknessM = [2 * Plate.CopperM] };

        double once = piece.Solve(Fineness).DropV;
        double twice = ConductionSolver.Solve(piece.Net, piece.Terminals, [], thick, Fineness).DropV;

        twice.ShouldBe(once / 2, 1e-9 * once);
    }

    private static double[] Pair(int from, int to, double current)
    {
        double[] currents = new double[4];
        (currents[from], currents[to]) = (current, -current);
        return currents;
    }

    private static double Voltage(ConductionResult result, int plus, int minus) =>
        result.Terminals[plus].PotentialV - result.Terminals[minus].PotentialV;

    private static Plate IrregularPiece(double[] currents) => new Plate { LayerCount = 2 }
        .Copper(1, [(0, 0), (30, 0), (30, 8), (22, 8), (22, 12), (30, 12), (30, 20), (0, 20)])
        .Copper(2, [(2, 1), (28, 3), (25, 19), (14, 12), (4, 18)])
        .Slot(8, 8, 8, 8, 0.6).Slot(12, 4, 14, 5, 0.8).Slot(20, 10, 20, 10, 0.3).Slot(20.5, 10, 20.5, 10, 0.3)
        .Terminal(1, "A", currents[0], Plate.Box(0, 9, 1, 13))
        .Terminal(2, "B", currents[1], Plate.Box(24, 5, 26, 7))
        .Terminal(1, "C", currents[2], Plate.Box(28, 1, 29.5, 3))
        .Terminal(2, "D", currents[3], Plate.Circle(6, 12, 0.8, 48));
}

using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Rows of barrels between two strips: an exact network, since slots across the whole width make the strips
/// one-dimensional. Expected values come from the network itself, solved here by elimination.
/// </summary>
public sealed class LadderTests
{
    private const double Width = 10;
    private const double Drill = 0.6;
    private const double WallMm = Drill + (2e3 * Plate.PlatingM);

    /// <summary>Count, strip per bay in barrels, feed, and the resistance published beside the project, in barrels.</summary>
    [Theory]
    [InlineData(4, 0.1, true, 0.42272727)]
    [InlineData(4, 0.1, false, 0.38540333)]
    [InlineData(5, 0.5, true, 1.31818182)]
    [InlineData(5, 0.5, false, 0.61818182)]
    public void BarrelsShareTheCurrentAsTheNetworkDoes(int count, double bayPerBarrel, bool oppositeEnds, double expectedBarrels)
    {
        (double network, double[] shares) = Network(count, bayPerBarrel, oppositeEnds);
        network.ShouldBe(expectedBarrels, 1e-7);

        double sectionMm2 = ((2 * (Width + 2)) + (Math.PI * (Drill + (1e3 * Plate.PlatingM)))) * 1e3 * Plate.PlatingM;
        const double barrelLengthMm = 20;
        double barrelOhm = 1e3 * Plate.CopperM * barrelLengthMm / sectionMm2;
        double pitch = (bayPerBarrel * barrelOhm * Width) + WallMm;
        double last = (count - 1) * pitch;
        Plate piece = new() { LayerCount = 2, BarrelLengthM = 1e-3 * barrelLengthMm };
        piece.Rectangle(-5, 0, last + 5, Width).Rectangle(-5, 0, last + 5, Width, 2);
        for (int i = 0; i < count; i++)
        {
            piece.Slot(i * pitch, -1, i * pitch, Width + 1, Drill);
        }

        (double from, double to) = oppositeEnds ? (last + (WallMm / 2), last + 5) : (-5, -WallMm / 2);
        ConductionResult result = piece.Terminal(1, "in", 10, Plate.Box(-5, 0, -WallMm / 2, Width))
            .Terminal(2, "out", -10, Plate.Box(from, 0, to, Width)).Solve();

        (result.DropV / 10 / barrelOhm).ShouldBe(network, 2e-3 * network);
        result.Barrels.Sum(barrel => barrel.CurrentA).ShouldBe(10, 1e-8);
        result.Barrels.Select(barrel => barrel.CurrentA / 10).Zip(shares)
            .ShouldAllBe(pair => Math.Abs(pair.First - pair.Second) < 2e-3 * pair.Second);

        // The potential is linear in each bay, so that nothing is left to estimate but what the welding grid does to their lengths.
        result.Barrels.Zip(shares).ShouldAllBe(pair => Math.Abs(pair.First.CurrentA - (10 * pair.Second)) < pair.First.AccuracyA + 1e-3);
    }

    /// <summary>
    /// The strip currents between barrels are unknown: around each mesh, barrel k, lower bay, barrel k + 1, upper bay add
    /// up to nothing. Elimination of the tridiagonal system.
    /// </summary>
    private static (double Barrels, double[] Shares) Network(int count, double bay, bool oppositeEnds)
    {
        // u_k: current in the upper bay after barrel k. The lower bay carries 1 - u_k forwards (opposite ends) or u_k back.
        double lower = oppositeEnds ? 1 : 0;
        double[] diagonal = new double[count - 1], right = new double[count - 1];
        for (int k = 0; k < count - 1; k++)
        {
            diagonal[k] = 2 + (2 * bay);
            right[k] = (bay * lower) + (k == 0 ? 1 : 0);
        }

        for (int k = 1; k < count - 1; k++)
        {
            double factor = 1 / diagonal[k - 1];
            diagonal[k] -= factor;
            right[k] += factor * right[k - 1];
        }

        double[] upper = new double[count + 1];
        upper[0] = 1;
        for (int k = count - 2; k >= 0; k--)
        {
            upper[k + 1] = (right[k] + upper[k + 2]) / diagonal[k];
        }

        double[] shares = [.. Enumerable.Range(0, count).Select(k => upper[k] - upper[k + 1])];
        double path = shares[0] + (oppositeEnds ? Enumerable.Range(1, count - 1).Sum(k => bay * (1 - upper[k])) : 0);
        return (path, shares);
    }
}

using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Currents of single contacts and holes where closed forms give them: a T whose arms are of different length, fed through
/// its stem. Each arm's end adds (ln(5/4) + atan 2) / pi squares to its length (see docs/field-solve.md), and the arms share
/// as two resistances in parallel do.
/// </summary>
public sealed class CurrentAccuracyTests
{
    private const double DrillMm = 0.6;
    private const double WallMm = DrillMm + (2e3 * Plate.PlatingM);
    private static readonly double s_arm = (Math.Log(1.25) + Math.Atan(2)) / Math.PI;

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.1)]
    [InlineData(0.01)]
    [InlineData(0.001)]
    public void ContactsTakeTheirShareWithinTheEstimate(double accuracy)
    {
        // Arms of 2 and 1 squares to the west and east of the crossing.
        Plate tee = Tee(-26, 16).Terminal("stem", 10, Plate.Box(-5, -26, 5, -25));
        tee.Joined("arms", -10, Plate.Box(-26, -5, -25, 5), Plate.Box(15, -5, 16, 5));
        double westA = 10 * (1 + s_arm) / (3 + (2 * s_arm));

        ConductionResult result = tee.Solve(SolveDemand.Default with { Accuracy = accuracy });
        IReadOnlyList<double> currentsA = result.Terminals[1].ContactCurrentsA, estimatesA = result.Terminals[1].ContactAccuracyA;

        Math.Abs(-currentsA[0] - westA).ShouldBeLessThanOrEqualTo(estimatesA[0]);
        Math.Abs(-currentsA[1] - (10 - westA)).ShouldBeLessThanOrEqualTo(estimatesA[1]);
        estimatesA[0].ShouldBeLessThan(Math.Max(4 * accuracy, 0.01) * westA);
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.1)]
    [InlineData(0.01)]
    [InlineData(0.001)]
    public void HolesTakeTheirShareWithinTheEstimate(double accuracy)
    {
        // Plated slots across the ends of both arms lead to a strip below, which is tapped in its middle.
        Plate tee = Tee(-26, 16).Rectangle(-26, -5, 16, 5, 2).Slot(-25, -6, -25, 6, DrillMm).Slot(15, -6, 15, 6, DrillMm);
        tee.Terminal("stem", 10, Plate.Box(-5, -26, 5, -25)).Terminal(2, "tap", -10, Plate.Box(-6, -5, -4, 5));
        double sectionMm2 = ((2 * 12) + (Math.PI * (DrillMm + (1e3 * Plate.PlatingM)))) * 1e3 * Plate.PlatingM;
        double barrel = 1e3 * Plate.CopperM * 1.6 / sectionMm2;
        double west = ((20 - (WallMm / 2)) / 10) + s_arm + barrel + ((19 - (WallMm / 2)) / 10);
        double east = ((10 - (WallMm / 2)) / 10) + s_arm + barrel + ((19 - (WallMm / 2)) / 10);

        ConductionResult result = tee.Solve(SolveDemand.Default with { Accuracy = accuracy });
        BarrelCurrent ofWest = result.Barrels[0], ofEast = result.Barrels[1];

        // A slot's wall is drawn in whole nanometres: 1e-5 of the current.
        Math.Abs(ofWest.CurrentA - (10 * east / (west + east))).ShouldBeLessThanOrEqualTo(ofWest.AccuracyA + 1e-4);
        Math.Abs(ofEast.CurrentA - (10 * west / (west + east))).ShouldBeLessThanOrEqualTo(ofEast.AccuracyA + 1e-4);
        ofWest.AccuracyA.ShouldBeLessThan(Math.Max(4 * accuracy, 0.01) * ofWest.CurrentA);
        Math.Abs(ofWest.AtMost().CurrentA).ShouldBe(Math.Abs(ofWest.CurrentA) + ofWest.AccuracyA, 1e-12);
    }

    /// <summary>Round holes here and there between two sheets, against a solve fifty times as close.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(11)]
    [InlineData(29)]
    public void RoundHolesTakeTheirShareWithinTheEstimate(int seed)
    {
        Plate piece = Holes(seed);
        ConductionResult result = piece.Solve();
        ConductionResult reference = piece.Solve(SolveDemand.Default with { Accuracy = SolveDemand.Default.Accuracy / 50 });

        result.Barrels.Count.ShouldBeGreaterThan(3);
        foreach ((BarrelCurrent own, BarrelCurrent close) in result.Barrels.Zip(reference.Barrels))
        {
            Math.Abs(own.CurrentA - close.CurrentA).ShouldBeLessThanOrEqualTo(own.AccuracyA);
            own.AccuracyA.ShouldBeLessThan(0.15 * Math.Abs(own.CurrentA));
        }
    }

    private static Plate Tee(double fromX, double toX) =>
        new Plate { LayerCount = 2 }.Rectangle(fromX, -5, toX, 5).Rectangle(-5, -26, 5, 0);

    private static Plate Holes(int seed)
    {
        Random random = new(seed);
        Plate piece = new Plate { LayerCount = 2 }.Rectangle(0, 0, 20, 8).Rectangle(4, 1, 30, 7, 2);
        for (int row = 0; row < 2; row++)
        {
            for (int column = 0; column < 4; column++)
            {
                (double x, double y) = (6 + (3 * column) + random.NextDouble(), 2 + (3 * row) + random.NextDouble());
                piece.Slot(x, y, x, y, 0.3 + (0.3 * random.NextDouble()));
            }
        }

        return piece.Terminal(1, "in", 10, Plate.Box(0, 0.5, 0.8, 1.5)).Terminal(2, "out", -10, Plate.Box(29, 1, 30, 2));
    }
}

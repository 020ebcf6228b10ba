using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// What a neck adds to its pour is its own affair: whatever the size of the board and what else is on it, it is the same over the
/// same planes.
/// </summary>
public sealed class SameNeckOnAnyBoardTests(ITestOutputHelper output)
{
    /// <summary>Growth of the resistivity from 20 °C, per kelvin (IEC 60028).</summary>
    private const double GrowthPerK = 0.00393;

    /// <summary>
    /// Of the neck 0.2 x 3 mm at 10 A over its pour 5 mm on, by finite elements (<c>board_heat_fe.py large-neck</c>, fineness 1, degree 1:
    /// 173.90 K and 8.88 K), at the resistivity the pour has: what the neck adds is proportional to the loss, and that to 1 + 0.00393 of the pour's rise.
    /// </summary>
    private const double NeckOverPourK = (173.90 - 8.88) / (1 + (GrowthPerK * 8.88));

    /// <summary>Six planes and more take the neck's heat away alike; the model has seven.</summary>
    [Theory]
    [InlineData(160, 100, 8, 2)]
    [InlineData(400, 300, 14, 1)]
    public void OverManyPlanesANeckAddsWhatFiniteElementsSay(int widthMm, int heightMm, int layers, int necks) =>
        Adds(widthMm, heightMm, layers, necks).ShouldAllBe(addsK => Math.Abs(addsK - NeckOverPourK) < 0.03 * NeckOverPourK);

    /// <summary>One plane alone gets warmer below the neck, and alike on boards of any size.</summary>
    [Fact]
    public void OverOnePlaneANeckAddsTheSame() => AreAlike([.. Adds(60, 40, 2, 1), .. Adds(160, 100, 2, 2)]);

    [Fact]
    [Trait("Category", "Soak")]
    public void ANeckAddsTheSameAmongTwenty()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is "1", "a soak; set COPPERPATH_SOAK=1");
        AreAlike([.. Adds(60, 40, 2, 1), .. Adds(300, 250, 2, 4), .. Adds(400, 300, 2, 20)]);
        double[] overPlanes = [.. Adds(60, 40, 8, 1), .. Adds(300, 250, 8, 4), .. Adds(400, 300, 8, 20), .. Adds(400, 300, 14, 20)];
        AreAlike(overPlanes);
        overPlanes.ShouldAllBe(addsK => Math.Abs(addsK - NeckOverPourK) < 0.03 * NeckOverPourK);
    }

    private static void AreAlike(IReadOnlyCollection<double> addsK) => (addsK.Max() / addsK.Min()).ShouldBeLessThan(1.03);

    private List<double> Adds(int widthMm, int heightMm, int layers, int necks)
    {
        using SyntheticBoard board = new(layers);
        List<(double X, double Y)> middles = [];
        string nets = "";
        int across = Math.Min(necks, Math.Max(1, widthMm / 75));
        int rows = (necks + across - 1) / across;
        for (int k = 0; k < necks; k++)
        {
            // Not on the lines of any grid of cells.
            double x = (widthMm * ((k % across) + 0.5) / across) + (0.0137 * k);
            double y = (heightMm * ((k / across) + 0.5) / rows) + (0.0071 * k);
            board.Rectangle(1, x - 25, y - 10, x - 1.5, y + 10).Rectangle(1, x - 1.5, y - 0.1, x + 1.5, y + 0.1).Rectangle(1, x + 1.5, y - 10, x + 25, y + 10);
            middles.Add((x, y));
            nets += FiniteElementTests.Bar(1, x - 25, y - 10, x + 25, y + 10, "10 A").Replace("name: Bar", string.Create(CultureInfo.InvariantCulture, $"name: Bar {k}"), StringComparison.Ordinal);
        }

        for (int layer = 2; layer <= layers; layer++)
        {
            board.Rectangle(layer, 0, 0, widthMm, heightMm);
        }

        // A board of several layers has holes; this one is far from everything.
        board.Rectangle(1, 1.5, 1.5, 2.5, 2.5).PlatedSlot(2, 2, 2, 2, 0.3);
        TemperatureField heat = FiniteElementTests.Check(board, 0.2, nets, 15, "").Heat!;
        List<double> adds = [];
        foreach ((double x, double y) in middles)
        {
            double neckK = heat.RiseK(1, x * 1e-3, y * 1e-3);
            double pourK = heat.RiseK(1, (x - 6.5) * 1e-3, y * 1e-3);
            adds.Add((neckK - pourK) / (1 + (GrowthPerK * pourK)));
            output.WriteLine(FormattableString.Invariant(
                $"{widthMm} x {heightMm} mm, {layers} layers, {necks} necks: {neckK:F2} K, pour {pourK:F2} K, adds {adds[^1]:F2} K, {(adds[^1] / NeckOverPourK) - 1:+0.0%;-0.0%}"));
        }

        return adds;
    }
}

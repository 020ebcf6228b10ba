using CopperPath.Cli.Overlays;
using CopperPath.Meshing;

namespace CopperPath.Cli.Tests.Overlays;

/// <summary>
/// The ends of shared scales, on a sheet of 10 mm by 10 mm in 800 equal triangles, so that one is 0.125 % of the area:
/// shares are exact by counting.
/// </summary>
public sealed class SharedScaleTests
{
    private static readonly SheetMesh s_mesh = SyntheticScenes.GridMesh(0, 0, 10, 10, 2, (_, _) => true);

    [Theory]
    [InlineData(15.0, 15.0, 1, 20.0)]
    [InlineData(15.0, 500.0, 1, 20.0)]
    [InlineData(15.0, 500.0, 2, 500.0)]
    [InlineData(20.0, 500.0, 1, 20.0)]
    [InlineData(20.1, 20.1, 1, 50.0)]
    [InlineData(0.0, 0.0, 1, 1e-12)]
    public void AFewHotTrianglesDoNotMoveTheTop(double most, double hot, int hotCount, double top)
    {
        ScaleSpec scale = SharedScale.Logarithmic("Current density", "A/mm²", AreaRanking.Of(Sheet(most, hot, hotCount)));

        scale.Top!.Value.ShouldBe(top, 1e-9 * top);
        scale.Bottom!.Value.ShouldBe(top / 100, 1e-9 * top);
    }

    /// <summary>Two revisions, one with a neck at three times the density: side by side they have one scale.</summary>
    [Fact]
    public void RevisionsThatDifferInANeckShareTheirScale() =>
        SharedScale.Logarithmic("", "", AreaRanking.Of(Sheet(34, 128, 1)))
            .ShouldBe(SharedScale.Logarithmic("", "", AreaRanking.Of(Sheet(34, 40, 1))));

    [Theory]
    [InlineData(6.1, 9.3, 11.3, 6.0, 12.0)]
    [InlineData(5.6, 7.5, 7.6, 4.0, 8.0)]
    [InlineData(3.9, 7.5, 7.6, 0.0, 8.0)]
    [InlineData(4.0, 8.0, 8.1, 4.0, 10.0)]
    [InlineData(0.0, 0.0, 0.0, 0.0, 0.01)]
    [InlineData(20.0, 20.0, 20.0, 10.0, 20.0)]
    [InlineData(0.5, 41.0, 44.0, 0.0, 50.0)]
    [InlineData(-3.0, 4.0, 4.0, -5.0, 4.0)]
    public void LinearScalesHoldAllAndStartAtZeroOrAtHalfTheirTop(double least, double most, double hot, double bottom, double top)
    {
        ShadedSheet sheet = Sheet(most, hot, 1);
        sheet.Values[^1] = least;

        ScaleSpec scale = SharedScale.Linear("Temperature rise", "K", AreaRanking.Of(sheet));

        scale.Bottom!.Value.ShouldBe(bottom, 1e-9);
        scale.Top!.Value.ShouldBe(top, 1e-9);
    }

    [Fact]
    public void SharesAreOfTheAreaWithAValue()
    {
        ShadedSheet sheet = Sheet(15, 500, 3);
        Array.Fill(sheet.Values, double.NaN, 3, 397);
        AreaRanking ranking = AreaRanking.Together([AreaRanking.Of(sheet), AreaRanking.Of(Empty)]);

        ranking.ShareAbove(20).ShouldBe(3.0 / 403, 1e-12);
        ranking.ShareAbove(15).ShouldBe(3.0 / 403, 1e-12);
        ranking.ShareBelow(20).ShouldBe(400.0 / 403, 1e-12);
        ranking.AreaM2.ShouldBe(403 * 1.25e-7, 1e-15);
    }

    private static ShadedSheet Empty => new(SyntheticScenes.GridMesh(0, 0, 10, 10, 2, (_, _) => false), []);

    private static ShadedSheet Sheet(double most, double hot, int hotCount)
    {
        double[] values = new double[s_mesh.TriangleCount];
        Array.Fill(values, most);
        Array.Fill(values, hot, 0, hotCount);
        return new ShadedSheet(s_mesh, values);
    }
}

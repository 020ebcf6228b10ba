using CopperPath.Cli.Overlays;
using CopperPath.Geometry;

namespace CopperPath.Cli.Tests.Overlays;

public sealed class PlacedViaTests
{
    private const float EmPx = 18;

    private static readonly ViewTransform s_tenPxPerMm = new(new BoxNm(0, 0, 100_000_000, 100_000_000), 0, 0, 1e-5, seenFromBelow: false);
    private static readonly ValueScale s_scale = ValueScale.For(new ScaleSpec("", "A", ScaleKind.Linear, 6, 0), []);

    [Fact]
    public void TheLargestCurrentLiesOnTopAndThoseOverTheirLimitAboveAll()
    {
        IReadOnlyList<PlacedVia> placed = Place(
            new ViaMark(SyntheticScenes.At(10, 10), -5, false),
            new ViaMark(SyntheticScenes.At(20, 10), 0.1, true),
            new ViaMark(SyntheticScenes.At(30, 10), 2, false));

        placed.Select(via => via.Via.CurrentA).ShouldBe([2, -5, 0.1]);
    }

    [Fact]
    public void DotsGrowWithTheCurrentWhicheverWayItFlows()
    {
        float[] radii = [.. new[] { 0, 0.5, -1.5, 3, -6 }
            .Select(currentA => Place(new ViaMark(SyntheticScenes.At(10, 10), currentA, false))[0].RadiusPx)];

        radii.ShouldBe(radii.Order());
        radii.Distinct().Count().ShouldBe(radii.Length);
        radii[0].ShouldBeGreaterThan(2.3f);
        radii[^1].ShouldBeGreaterThan(9);
    }

    /// <summary>Holes 1 mm apart, ten pixels here: equal dots touch and do not hide each other.</summary>
    [Fact]
    public void DotsOfAFieldDoNotHideEachOther()
    {
        IReadOnlyList<PlacedVia> field = Place([.. Enumerable.Range(0, 20)
            .Select(i => new ViaMark(SyntheticScenes.At(10 + (i % 5), 10 + (i / 5)), 6, false))]);

        field.ShouldAllBe(via => Math.Abs(via.RadiusPx - 5) < 0.01f);
    }

    [Fact]
    public void AHoleOverItsLimitIsLargeEnoughToBeSeenWhateverItCarries() =>
        Place(new ViaMark(SyntheticScenes.At(10, 10), 0.01, true))[0].Box.Width.ShouldBeGreaterThan(0.9f * EmPx);

    private static IReadOnlyList<PlacedVia> Place(params ViaMark[] vias) => PlacedVia.Of(vias, s_tenPxPerMm, s_scale, EmPx);
}

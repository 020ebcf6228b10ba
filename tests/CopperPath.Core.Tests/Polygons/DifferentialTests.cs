using CopperPath.Geometry;
using CopperPath.Polygons;
using NetTopologySuite.Operation.Overlay;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>
/// Many small scenes, made to be awkward, painted by us and by NetTopologySuite (OverlayNG), an independent
/// general-purpose geometry library: validity of every ring, area and symmetric difference.
/// </summary>
public sealed class DifferentialTests
{
    private const int Kinds = 6;

    [Fact]
    public void ThousandsOfAwkwardScenesAgreeWithTheOracle() => Compare(firstSeed: 100_000, count: 2_400);

    [Fact]
    [Trait("Category", "Soak")]
    public void TensOfThousandsOfAwkwardScenesAgreeWithTheOracle()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is "1", "a soak; set COPPERPATH_SOAK=1");
        Compare(firstSeed: 200_000, count: 60_000);
    }

    [Fact]
    public void OrderOfDarkShapesDoesNotMatter()
    {
        for (int seed = 0; seed < 150; seed++)
        {
            var scene = new Scene(110_000 + seed);
            List<PaintStep> steps = Steps(scene, seed % Kinds, darkOnly: true);
            List<PaintStep> shuffled = [.. steps.OrderBy(_ => scene.Below(10_000))];

            ShouldBeSame(PolygonOperations.Paint(shuffled), PolygonOperations.Paint(steps), p => p, $"seed {seed}");
        }
    }

    [Fact]
    public void PicturesMoveWithTheirSteps()
    {
        for (int seed = 0; seed < 150; seed++)
        {
            var scene = new Scene(120_000 + seed);
            List<PaintStep> steps = Steps(scene, seed % Kinds, darkOnly: false);
            PointNm shift = new(scene.Below(2_000_000_000) - 1_000_000_000, scene.Below(2_000_000_000) - 1_000_000_000);
            List<PaintStep> moved = [.. steps.Select(step => step with { Offset = step.Offset + shift })];

            ShouldBeSame(PolygonOperations.Paint(moved), PolygonOperations.Paint(steps), p => p + shift, $"seed {seed}");
        }
    }

    [Fact]
    public void PicturesTurnWithTheirSteps()
    {
        for (int seed = 0; seed < 150; seed++)
        {
            List<PaintStep> steps = Steps(new Scene(130_000 + seed), seed % Kinds, darkOnly: false);
            List<PaintStep> turned = [.. steps.Select(step => step with { Rings = [.. step.Rings.Select(Turned)] })];
            NtsGeometry expected = Oracle.ToNts([.. PolygonOperations.Paint(steps)
                .Select(polygon => new PolygonNm(Turned(polygon.Outer), [.. polygon.Holes.Select(Turned)]))]);

            Oracle.ShouldAgree(PolygonOperations.Paint(turned), expected, $"seed {seed}");
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(8)]
    public void NumberOfWorkersDoesNotMatter(int workers)
    {
        for (int seed = 0; seed < 6; seed++)
        {
            var segments = new SegmentSet();
            List<PointNm[]> rings = new Scene(140_000 + seed).Copper(1_500, 60_000_000, 2_000_000);
            for (int i = 0; i < rings.Count; i++)
            {
                segments.AddRings([rings[i]], i);
            }

            var rule = CoverageRule.Painted([.. rings.Select((_, i) => 1 + (i / 500))], [false, true, false, true]);
            TileNoder[] expected = SnapRounding.Run(segments.ToSegments(), rule);
            TileNoder[] actual = SnapRounding.Run(segments.ToSegments(), rule, workers);

            actual.SelectMany(part => part.Vertices).ShouldBe(expected.SelectMany(part => part.Vertices));
            actual.SelectMany(part => part.Passages).ShouldBe(expected.SelectMany(part => part.Passages));
        }
    }

    private static void Compare(int firstSeed, int count)
    {
        for (int seed = firstSeed; seed < firstSeed + count; seed++)
        {
            List<PaintStep> steps = Steps(new Scene(seed), seed % Kinds, darkOnly: seed % 2 == 0);
            NtsGeometry expected = Oracle.UnionOfSimple([]);
            for (int i = 0; i < steps.Count;)
            {
                bool dark = steps[i].IsDark;
                List<PointNm[]> run = [];
                for (; i < steps.Count && steps[i].IsDark == dark; i++)
                {
                    run.AddRange(Oracle.Simple(steps[i].Rings));
                }

                expected = Oracle.Overlay(expected, Oracle.UnionOfSimple(run), dark ? SpatialFunction.Union : SpatialFunction.Difference);
            }

            Oracle.ShouldAgree(PolygonOperations.Paint(steps), expected, $"seed {seed}");
        }
    }

    private static List<PaintStep> Steps(Scene scene, int kind, bool darkOnly)
    {
        List<PointNm[]> rings = kind switch
        {
            0 => scene.Copper(3 + scene.Below(12), 2_000_000, 500_000),
            1 => scene.Lattice(3 + scene.Below(14), 6, 1),
            2 => scene.Lattice(3 + scene.Below(14), 5, 400_009),
            3 => scene.Needles(3 + scene.Below(8), 3_000_000),
            4 => scene.Frames(2 + scene.Below(8), 600_000),
            _ => scene.Copper(3 + scene.Below(12), 90, 25),
        };
        return [.. rings.Select(ring => new PaintStep(darkOnly || scene.Below(3) > 0, [ring], default))];
    }

    private static PointNm[] Turned(PointNm[] ring) => Array.ConvertAll(ring, p => new PointNm(-p.Y, p.X));

    private static void ShouldBeSame(
        IReadOnlyList<PolygonNm> actual, IReadOnlyList<PolygonNm> expected, Func<PointNm, PointNm> move, string because) =>
        actual.SelectMany(polygon => polygon.Rings).SelectMany(ring => ring)
            .ShouldBe(expected.SelectMany(polygon => polygon.Rings).SelectMany(ring => ring).Select(move), because);
}

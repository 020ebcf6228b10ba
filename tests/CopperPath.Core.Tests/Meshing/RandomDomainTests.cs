using CopperPath.Meshing;
using Shape = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Core.Tests.Meshing;

public sealed class RandomDomainTests
{
    [Fact]
    public void RandomSheetsKeepEveryPromise()
    {
        for (int seed = 0; seed < 60; seed++)
        {
            CheckSeed(seed);
        }
    }

    [Fact]
    [Trait("Category", "Soak")]
    public void ThousandsOfRandomSheetsKeepEveryPromise()
    {
        Assert.SkipUnless(
            Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is { Length: > 0 }, "set COPPERPATH_SOAK to run");
        for (int seed = 1000; seed < 9000; seed++)
        {
            CheckSeed(seed);
        }
    }

    private static void CheckSeed(int seed)
    {
        (SheetDomain domain, Shape copper) = RandomDomains.Of(seed);
        foreach (MeshQuality quality in new[] { Shapes.AsDrawn(1e-3), new MeshQuality(2e-3) })
        {
            SheetMeshing meshing = SheetMesher.Mesh(domain, quality);
            if (meshing.Outcome == MeshingOutcome.NoCopper)
            {
                copper.Area.ShouldBeLessThan(1e9, $"seed {seed}");
                continue;
            }

            meshing.Outcome.ShouldBe(MeshingOutcome.Meshed, $"seed {seed}: {meshing.Reason}");
            MeshFacts facts = SheetMesherTests.Check(meshing, 0);
            facts.ShouldBeDelaunayInsideEachMarker();
            double perimeterM = copper.Length * 1e-9;

            // As drawn, outlines move by a nanometre at most; simplified ones keep their area on average.
            double slackM2 = quality.SimplificationToleranceM == 0 ? perimeterM * 2e-9 : perimeterM * 0.3e-6;
            facts.AreaM2.ShouldBe(copper.Area * 1e-18, slackM2, $"seed {seed}");
            for (int marker = 1; marker <= 3; marker++)
            {
                facts.AreaOfMarkerM2(marker).ShouldBe(
                    RandomDomains.AreaOfMarkerM2(domain, copper, marker), slackM2 + 1e-12, $"seed {seed} marker {marker}");
            }
        }
    }
}

using CopperPath.Geometry;
using CopperPath.Meshing;
using static CopperPath.Core.Tests.Meshing.Shapes;

namespace CopperPath.Core.Tests.Meshing;

public sealed class OutlineSimplificationTests
{
    [Theory]
    [InlineData(150_000)]
    [InlineData(1_000_000)]
    [InlineData(10_000_000)]
    public void ACircleKeepsItsAreaAndStaysWithinTheTolerance(long radiusNm)
    {
        SheetMeshing meshing = SheetMesher.Mesh(Domain(Circle(0, 0, radiusNm)), new MeshQuality(2e-3));

        SheetMesh mesh = meshing.Mesh.ShouldNotBeNull();
        MeshingEvidence evidence = meshing.Evidence.ShouldNotBeNull();
        evidence.BoundaryVertexCount.ShouldBeLessThan(evidence.ArtworkVertexCount * 3 / 4);
        Math.Abs(evidence.RelativeAreaChange).ShouldBeLessThan(2 * 0.25e-6 / (radiusNm * 1e-9));

        // The half micrometre is how far the drawn chords are from the circle already; the grid moves a little more.
        double reachM = 3e-6 + 0.5e-6 + 0.2e-6;
        for (int v = 0; v < mesh.VertexCount; v++)
        {
            if (mesh.IsBoundaryVertex[v])
            {
                double distanceM = Math.Sqrt((mesh.XM[v] * mesh.XM[v]) + (mesh.YM[v] * mesh.YM[v])) - (radiusNm * 1e-9);
                Math.Abs(distanceM).ShouldBeLessThan(reachM);
            }
        }
    }

    [Fact]
    public void AGapNarrowerThanTheToleranceStaysOpen()
    {
        // A disc in a round opening 1 um wider: its outline may move by 3 um, yet never into the copper around it.
        SheetDomain domain = new(
            [
                new PolygonNm(Rectangle(-5 * Mm, -5 * Mm, 5 * Mm, 5 * Mm), [Clockwise(Circle(0, 0, 2_001_000))]),
                new PolygonNm(Circle(0, 0, 2_000_000), []),
            ],
            []);
        SheetMeshing meshing = SheetMesher.Mesh(domain, new MeshQuality(1e-3));

        meshing.Outcome.ShouldBe(MeshingOutcome.Meshed);
        MeshFacts facts = SheetMesherTests.Check(meshing, 0);
        double artworkM2 = domain.Copper.Sum(p => p.AreaNm2) * 1e-18;
        facts.AreaM2.ShouldBe(artworkM2, 0.3e-6 * 4 * Math.PI * 2e-3);
    }

    [Fact]
    public void CoincidentOutlinesBecomeOne()
    {
        // The pad is drawn a second time a nanometre off, as a marked ring: no slivers, no triangles between them.
        PointNm[] pad = Circle(5 * Mm, 5 * Mm, 800_000);
        PointNm[] again = [.. pad.Select(p => new PointNm(p.X + 1, p.Y - 1))];
        SheetDomain domain = Domain(pad).WithRings(new MarkedRing(again, 4));
        SheetMeshing meshing = SheetMesher.Mesh(domain, new MeshQuality(1e-3));

        MeshFacts facts = SheetMesherTests.Check(meshing, 0);
        facts.AreaOfMarkerM2(4).ShouldBe(Ring.SignedAreaNm2(pad) * 1e-18, 1e-9 * 2 * Math.PI * 0.8e-3 * 200);
        meshing.TriangleCount.ShouldBeLessThan(2000);
    }
}

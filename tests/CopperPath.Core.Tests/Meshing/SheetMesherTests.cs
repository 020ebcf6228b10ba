using CopperPath.Geometry;
using CopperPath.Meshing;
using static CopperPath.Core.Tests.Meshing.Shapes;

namespace CopperPath.Core.Tests.Meshing;

public sealed class SheetMesherTests
{
    private const double Mm2 = 1e-6;

    [Fact]
    public void AMarkedRingThatCrossesItselfEverywhereIsRefusedWithItsPlace()
    {
        var random = new Random(4);
        PointNm[] scribble = [.. Enumerable.Range(0, 20_000).Select(_ => new PointNm(random.Next(20_000_000), random.Next(20_000_000)))];

        SheetMeshing meshing = SheetMesher.Mesh(
            new SheetDomain([new PolygonNm([new(0, 0), new(20_000_000, 0), new(20_000_000, 20_000_000)], [])], [new MarkedRing(scribble, 1)]), new MeshQuality(1e-3));

        (meshing.Outcome, meshing.Mesh).ShouldBe((MeshingOutcome.OutlinesCross, null));
        meshing.Reason.ShouldStartWith("outlines cross or touch each other too often to be meshed, most near X ");
    }

    [Fact]
    public void ARectangleIsMeshedExactly()
    {
        SheetMeshing meshing = SheetMesher.Mesh(Domain(Rectangle(0, 0, 20 * Mm, 10 * Mm)), AsDrawn(1e-3));

        meshing.Outcome.ShouldBe(MeshingOutcome.Meshed);
        MeshFacts facts = Check(meshing, 25);
        facts.AreaM2.ShouldBe(200 * Mm2, 200e-9 * Mm2);
        facts.LongestEdgeM.ShouldBeLessThanOrEqualTo(1.001e-3);
        facts.ShouldBeDelaunayInsideEachMarker();
    }

    [Fact]
    public void HolesAreLeftOut()
    {
        PointNm[] hole = Circle(5 * Mm, 5 * Mm, 1 * Mm);
        SheetMeshing meshing = SheetMesher.Mesh(Domain(Rectangle(0, 0, 20 * Mm, 10 * Mm), hole), AsDrawn(1e-3));

        MeshFacts facts = Check(meshing, 25);
        double holeM2 = Ring.SignedAreaNm2(hole) * 1e-18;
        facts.AreaM2.ShouldBe((200 * Mm2) - holeM2, 200e-9 * Mm2);
    }

    [Fact]
    public void MarkedRingsBecomeEdgesAndMarkTheirInside()
    {
        SheetDomain domain = Domain(Rectangle(0, 0, 20 * Mm, 10 * Mm)).WithRings(
            new MarkedRing(Rectangle(-Mm, 2 * Mm, 3 * Mm, 4 * Mm), 7),
            new MarkedRing(Rectangle(2 * Mm, 3 * Mm, 6 * Mm, 8 * Mm), 3));
        SheetMeshing meshing = SheetMesher.Mesh(domain, AsDrawn(1e-3));

        MeshFacts facts = Check(meshing, 25);

        // Ring 7 keeps its 3 x 2 mm inside the copper less the 1 x 1 mm the lower marker takes.
        facts.AreaOfMarkerM2(3).ShouldBe(20 * Mm2, 1e-9 * Mm2);
        facts.AreaOfMarkerM2(7).ShouldBe(5 * Mm2, 1e-9 * Mm2);
        facts.AreaOfMarkerM2(0).ShouldBe(175 * Mm2, 1e-6 * Mm2);
        facts.HasChain(2e-3, 8e-3, 6e-3, 8e-3, 1e-11).ShouldBeTrue();
        facts.HasChain(0, 2e-3, 3e-3, 2e-3, 1e-11).ShouldBeTrue();
        facts.HasChain(0, 8e-3, 20e-3, 8e-3, 1e-11).ShouldBeFalse("nothing was drawn there");
    }

    [Fact]
    public void NarrowNecksGetTheElementsAskedFor()
    {
        // Two 10 mm squares joined by a 2 mm long neck 0.2 mm wide.
        PointNm[] ring =
        [
            new(0, 0), new(10 * Mm, 0), new(10 * Mm, 4_900_000), new(12 * Mm, 4_900_000), new(12 * Mm, 0),
            new(22 * Mm, 0), new(22 * Mm, 10 * Mm), new(12 * Mm, 10 * Mm), new(12 * Mm, 5_100_000),
            new(10 * Mm, 5_100_000), new(10 * Mm, 10 * Mm), new(0, 10 * Mm),
        ];
        SheetMeshing meshing = SheetMesher.Mesh(Domain(ring), new MeshQuality(2e-3, 25, 4));

        MeshFacts facts = Check(meshing, 25);
        bool InNeck(double x) => x is > 10.01e-3 and < 11.99e-3;
        facts.FewestEdgesBetween(
            (x, y) => InNeck(x) && Math.Abs(y - 4.9e-3) < 1e-6, (x, y) => InNeck(x) && Math.Abs(y - 5.1e-3) < 1e-6)
            .ShouldBeGreaterThanOrEqualTo(4);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(10)]
    [InlineData(1)]
    [InlineData(0.01)]
    public void AcuteCornersEndRefinement(double degrees)
    {
        long tipY = (long)(20 * Mm * Math.Tan(degrees * Math.PI / 180));
        SheetMeshing meshing = SheetMesher.Mesh(
            Domain([new(0, 0), new(20 * Mm, 0), new(20 * Mm, tipY)]), AsDrawn(2e-3));

        meshing.Outcome.ShouldBe(MeshingOutcome.Meshed);
        MeshFacts facts = Check(meshing, 0);
        facts.AreaM2.ShouldBe(10e-3 * tipY * 1e-9, (1e-9 * 10e-3 * tipY * 1e-9) + 4e-15);
        meshing.TriangleCount.ShouldBeLessThan(20_000);
    }

    [Fact]
    public void CopperTouchingItselfAtAPointIsNotJoinedThere()
    {
        SheetDomain domain = new(
            [
                new PolygonNm(Rectangle(0, 0, 5 * Mm, 5 * Mm), []),
                new PolygonNm(Rectangle(5 * Mm, 5 * Mm, 10 * Mm, 10 * Mm), []),
            ],
            []);
        SheetMeshing meshing = SheetMesher.Mesh(domain, AsDrawn(1e-3));

        Check(meshing, 25).AreaM2.ShouldBe(50 * Mm2, 1e-7 * Mm2);
        meshing.Evidence.ShouldNotBeNull().SplitPinchCount.ShouldBe(1);
    }

    [Fact]
    public void ATargetFieldRefinesWhereItAsks()
    {
        SheetDomain domain = Domain(Rectangle(0, 0, 20 * Mm, 10 * Mm));
        SheetMeshing meshing = SheetMesher.Mesh(
            domain, AsDrawn(1e-3), (x, y) => 0.05e-3 + (0.2 * Math.Sqrt(((x - 5e-3) * (x - 5e-3)) + ((y - 5e-3) * (y - 5e-3)))));

        SheetMesh mesh = meshing.Mesh.ShouldNotBeNull();
        Check(meshing, 25);
        int Near(double cx) => Enumerable.Range(0, mesh.VertexCount)
            .Count(v => Math.Abs(mesh.XM[v] - cx) < 0.5e-3 && Math.Abs(mesh.YM[v] - 5e-3) < 0.5e-3);
        Near(5e-3).ShouldBeGreaterThan(20 * Near(15e-3));
    }

    [Fact]
    public void AnUnusableTargetFieldIsNamed()
    {
        SheetMeshing meshing = SheetMesher.Mesh(Domain(Rectangle(0, 0, Mm, Mm)), AsDrawn(1e-3), (_, _) => double.NaN);

        meshing.Outcome.ShouldBe(MeshingOutcome.UnusableQuality);
        meshing.Mesh.ShouldBeNull();
    }

    [Fact]
    public void TheSameSheetGivesTheSameMeshInAnyOrderOfItsPieces()
    {
        (SheetDomain domain, _) = RandomDomains.Of(4);
        SheetDomain turned = new([.. domain.Copper.Reverse()], domain.MarkedRings);
        SheetMesh first = SheetMesher.Mesh(domain, new MeshQuality(1e-3)).Mesh.ShouldNotBeNull();
        SheetMesh second = SheetMesher.Mesh(turned, new MeshQuality(1e-3)).Mesh.ShouldNotBeNull();

        second.XM.ShouldBe(first.XM);
        second.YM.ShouldBe(first.YM);
        second.Triangles.ShouldBe(first.Triangles);
        second.TriangleMarkers.ShouldBe(first.TriangleMarkers);
    }

    [Fact]
    public void UnusableInputIsNamed()
    {
        SheetMesher.Mesh(new SheetDomain([], []), new MeshQuality(1e-3)).Outcome.ShouldBe(MeshingOutcome.NoCopper);
        SheetMesher.Mesh(Domain(Rectangle(0, 0, 100, 100)), new MeshQuality(1e-3)).Outcome.ShouldBe(MeshingOutcome.NoCopper);
        SheetMesher.Mesh(Domain(Rectangle(0, 0, Mm, 20_000 * Mm)), new MeshQuality(1e-3))
            .Outcome.ShouldBe(MeshingOutcome.CoordinatesTooLarge);
        SheetMesher.Mesh(
            Domain(Rectangle(0, 0, Mm, Mm)).WithRings(new MarkedRing(Rectangle(0, 0, Mm, Mm), 0)), new MeshQuality(1e-3))
            .Outcome.ShouldBe(MeshingOutcome.UnusableMarker);
        SheetMesher.Mesh(Domain(Rectangle(0, 0, Mm, Mm)), new MeshQuality(double.NaN))
            .Outcome.ShouldBe(MeshingOutcome.UnusableQuality);
        SheetMeshing limited = SheetMesher.Mesh(
            Domain(Rectangle(0, 0, 10 * Mm, 10 * Mm)), new MeshQuality(0.1e-3) { VertexLimit = 1000 });
        limited.Outcome.ShouldBe(MeshingOutcome.VertexLimitReached);
        Check(limited, 0).AreaM2.ShouldBe(100 * Mm2, 1e-7 * Mm2);
    }

    internal static MeshFacts Check(SheetMeshing meshing, double leastAngleDegrees)
    {
        SheetMesh mesh = meshing.Mesh.ShouldNotBeNull(meshing.Reason);
        MeshFacts facts = new(mesh);
        facts.ShouldSatisfyEuler();

        // Vertices on outlines are rounded to a lattice finer than a thousandth of a nanometre.
        double slackM2 = (1e-9 * meshing.Evidence!.DomainAreaM2) + (1e-13 * facts.RimLengthM);
        facts.AreaM2.ShouldBe(meshing.Evidence.DomainAreaM2, slackM2);
        facts.SmallestAngleDegrees.ShouldBe(mesh.MinimumAngleDegrees, 1e-6);
        mesh.MinimumAngleDegrees.ShouldBeGreaterThanOrEqualTo(leastAngleDegrees - 1e-6);
        return facts;
    }
}

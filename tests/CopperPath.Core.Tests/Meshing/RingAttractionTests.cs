using CopperPath.Geometry;
using CopperPath.Meshing;
using static CopperPath.Core.Tests.Meshing.Shapes;

namespace CopperPath.Core.Tests.Meshing;

/// <summary>Marked rings drawn along the copper's outline, a rounding apart from it.</summary>
public sealed class RingAttractionTests
{
    /// <summary>A pad at the end of a slanted trace: both are drawn along one line, and each is rounded on its own.</summary>
    [Fact]
    public void APadAlongASlantedOutlineLeavesNoSliver()
    {
        PointNm[] trace = [new(0, 0), new(7_000_113, 3_000_051), new(6_600_113, 3_933_384), new(-400_000, 933_333)];
        PointNm[] pad = [new(0, 0), new(2_333_371 + 90, 1_000_017 - 110), new(1_933_371, 1_933_350), new(-400_000, 933_333)];
        SheetMeshing meshing = SheetMesher.Mesh(Domain(trace).WithRings(new MarkedRing(pad, 1)), new MeshQuality(1e-3));

        meshing.Outcome.ShouldBe(MeshingOutcome.Meshed);
        meshing.MinimumAngleDegrees.ShouldBeGreaterThan(20);
        MeshFacts facts = new(meshing.Mesh.ShouldNotBeNull());
        facts.AreaM2.ShouldBe(Ring.SignedAreaNm2(trace) * 1e-18, 1e-3 * 1e-6);
        facts.AreaOfMarkerM2(1).ShouldBe(Ring.SignedAreaNm2(pad) * 1e-18, 3e-3 * 1e-6);
    }

    [Fact]
    public void ARingFarFromOutlinesStaysWhereItIs()
    {
        PointNm[] pad = Rectangle(2 * Mm, 2 * Mm, 3 * Mm, 3 * Mm);
        RingAttraction attraction = new([Rectangle(0, 0, 10 * Mm, 10 * Mm)], new BoxNm(0, 0, 10 * Mm, 10 * Mm));

        attraction.Attract(pad).ShouldBe(pad);
    }

    [Fact]
    public void CornersMoveToCornersAndEdgesBendThroughThem()
    {
        PointNm[] copper = [new(0, 0), new(1000, 0), new(2000, 2), new(2000, 1000), new(0, 1000)];
        RingAttraction attraction = new([copper], new BoxNm(0, 0, 2000, 1000));

        attraction.Attract([new(1, 1), new(1998, 1), new(1998, 999), new(1, 999)])
            .ShouldBe([new(0, 0), new(1000, 0), new(2000, 2), new(2000, 1000), new(0, 1000)]);
    }
}

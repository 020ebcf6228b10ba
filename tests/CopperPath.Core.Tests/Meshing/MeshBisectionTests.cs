using CopperPath.Meshing;

namespace CopperPath.Core.Tests.Meshing;

public sealed class MeshBisectionTests
{
    private static readonly SheetMesh s_sheet = SheetMesher.Mesh(
        Shapes.Domain(
            Shapes.Rectangle(0, 0, 20 * Shapes.Mm, 10 * Shapes.Mm), Shapes.Circle(6 * Shapes.Mm, 5 * Shapes.Mm, 2 * Shapes.Mm))
            .WithRings(new MarkedRing(Shapes.Circle(14 * Shapes.Mm, 5 * Shapes.Mm, Shapes.Mm), 7)),
        new MeshQuality(3e-3)).Mesh!;

    [Fact]
    public void AreaMarkersAndConformityAreKept()
    {
        MeshFacts before = new(s_sheet);
        MeshFacts after = new(Refined(t => t % 5));

        after.AreaM2.ShouldBe(before.AreaM2, before.AreaM2 * 1e-12);
        after.AreaOfMarkerM2(7).ShouldBe(before.AreaOfMarkerM2(7), before.AreaM2 * 1e-12);
        after.RimLengthM.ShouldBe(before.RimLengthM, before.RimLengthM * 1e-12);
    }

    /// <summary>I. G. Rosenberg and F. Stenger, Math. Comp. 29, 1975: never below half the smallest angle (from memory).</summary>
    [Fact]
    public void AnglesStayAboveHalfTheSmallest()
    {
        SheetMesh mesh = s_sheet;
        for (int round = 0; round < 6; round++)
        {
            int step = round + 2;
            mesh = MeshBisection.Refine(mesh, [.. Enumerable.Range(0, mesh.TriangleCount).Select(t => t % step == 0 ? 2 : 0)]);
        }

        mesh.MinimumAngleDegrees.ShouldBeGreaterThanOrEqualTo((s_sheet.MinimumAngleDegrees / 2) - 1e-9);
        mesh.MinimumAngleDegrees.ShouldBe(new MeshFacts(mesh).SmallestAngleDegrees, 1e-9);
    }

    [Fact]
    public void EveryVertexOfTheOldMeshIsOneOfTheNew()
    {
        SheetMesh refined = Refined(_ => 1);
        HashSet<(double, double)> places = [.. Enumerable.Range(0, refined.VertexCount).Select(v => (refined.XM[v], refined.YM[v]))];

        places.Count.ShouldBe(refined.VertexCount);
        Enumerable.Range(0, s_sheet.VertexCount).Count(v => places.Contains((s_sheet.XM[v], s_sheet.YM[v]))).ShouldBe(s_sheet.VertexCount);
        refined.TriangleCount.ShouldBeGreaterThanOrEqualTo(2 * s_sheet.TriangleCount);
    }

    [Fact]
    public void NothingAskedChangesNoTriangle() => Refined(_ => 0).TriangleCount.ShouldBe(s_sheet.TriangleCount);

    private static SheetMesh Refined(Func<int, int> halvings) =>
        MeshBisection.Refine(s_sheet, [.. Enumerable.Range(0, s_sheet.TriangleCount).Select(halvings)]);
}

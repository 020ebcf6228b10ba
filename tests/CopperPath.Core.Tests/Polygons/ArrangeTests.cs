using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>Arrangements: judged by an exact all-pairs check of the edges and by the areas their sides imply.</summary>
public class ArrangeTests
{
    [Fact]
    public void EdgesCarryTheInputsOnBothSides()
    {
        var arrangement = PolygonOperations.Arrange([[Scene.Box(0, 0, 10, 10)], [Scene.Box(10, 0, 20, 10)]]);

        var shared = arrangement.Edges.Single(e => e.A == new PointNm(10, 0) && e.B == new PointNm(10, 10));
        shared.LeftInputs.ShouldBe(1UL);
        shared.RightInputs.ShouldBe(2UL);
        arrangement.Edges.Count.ShouldBe(7);
    }

    [Fact]
    public void RandomArrangementsAreNodedAndAddUpToTheAreasOfTheirInputs()
    {
        for (int seed = 0; seed < 45; seed++)
        {
            var scene = new Scene(9000 + seed);
            List<IReadOnlyList<PointNm[]>> inputs = [];
            for (int k = 0; k < 3; k++)
            {
                inputs.Add(seed % 3 == 0 ? scene.Lattice(8, 6, 7)
                    : seed % 3 == 1 ? [scene.Scribble(12, 40)] : scene.Copper(8, 1000, 200));
            }

            var arrangement = PolygonOperations.Arrange(inputs);

            ShouldMeetAtEndsOnly(arrangement.Edges, $"seed {seed}");
            for (int k = 0; k < 3; k++)
            {
                double areaNm2 = arrangement.Edges.Sum(e =>
                    ((double)((e.LeftInputs >> k) & 1) - ((e.RightInputs >> k) & 1)) * ((e.A.X * e.B.Y) - (e.B.X * e.A.Y)) / 2);
                double alone = PolygonOperations.Union(inputs[k]).Sum(p => p.AreaNm2);
                areaNm2.ShouldBe(alone, 2.0 * arrangement.Edges.Sum(e => e.A.DistanceNmTo(e.B)), $"seed {seed}");
            }
        }
    }

    [Fact]
    public void AtTheScaleOfBoardsEdgesStillMeetAtEndsOnly()
    {
        var scene = new Scene(9100);
        var arrangement = PolygonOperations.Arrange(
            [scene.Copper(60, 50_000_000, 9_000_000), [scene.Scribble(40, 50_000_000)]]);

        ShouldMeetAtEndsOnly(arrangement.Edges, "board scale");
    }

    private static void ShouldMeetAtEndsOnly(IReadOnlyList<ArrangedEdge> edges, string because)
    {
        edges.SequenceEqual(edges.OrderBy(e => e.A.X).ThenBy(e => e.A.Y).ThenBy(e => e.B.X).ThenBy(e => e.B.Y)).ShouldBeTrue(because);
        edges.All(e => e.A.X <= e.B.X).ShouldBeTrue(because);
        for (int i = 0; i < edges.Count; i++)
        {
            // Edges come in the order of their left ends: those that begin right of this one's end can not meet it.
            for (int j = i + 1; j < edges.Count && edges[j].A.X <= edges[i].B.X; j++)
            {
                if (MeetOutsideEnds(edges[i], edges[j]))
                {
                    Assert.Fail($"{because}: {edges[i]} and {edges[j]}");
                }
            }
        }
    }

    private static bool MeetOutsideEnds(ArrangedEdge e, ArrangedEdge f)
    {
        if (!BoxOf(e).Touches(BoxOf(f)))
        {
            return false;
        }

        if (IsInside(e, f.A) || IsInside(e, f.B) || IsInside(f, e.A) || IsInside(f, e.B) || (e.A == f.A && e.B == f.B))
        {
            return true;
        }

        return Side(e, f.A) * Side(e, f.B) < 0 && Side(f, e.A) * Side(f, e.B) < 0;
    }

    private static bool IsInside(ArrangedEdge e, PointNm p) =>
        p != e.A && p != e.B && Side(e, p) == 0 && BoxOf(e).Contains(p);

    private static BoxNm BoxOf(ArrangedEdge e) => new(e.A.X, Math.Min(e.A.Y, e.B.Y), e.B.X, Math.Max(e.A.Y, e.B.Y));

    private static int Side(ArrangedEdge e, PointNm p) => Int128.Sign(
        ((Int128)(e.B.X - e.A.X) * (p.Y - e.A.Y)) - ((Int128)(e.B.Y - e.A.Y) * (p.X - e.A.X)));
}

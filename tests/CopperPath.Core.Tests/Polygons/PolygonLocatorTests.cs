using CopperPath.Geometry;
using CopperPath.Polygons;
using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>Point location, judged by NetTopologySuite's point-in-area locator.</summary>
public class PolygonLocatorTests
{
    [Fact]
    public void EdgesAndCornersCountAsInside()
    {
        var locator = new PolygonLocator([new PolygonNm(Scene.Box(0, 0, 10, 10), [[.. Scene.Box(3, 3, 6, 6).Reverse()]])]);

        locator.Find(new(0, 0)).ShouldBe(0);
        locator.Find(new(10, 10)).ShouldBe(0);
        locator.Find(new(5, 0)).ShouldBe(0);
        locator.Find(new(3, 4)).ShouldBe(0);
        locator.Find(new(4, 4)).ShouldBe(-1);
        locator.Find(new(8, 4)).ShouldBe(0);
        locator.Find(new(11, 4)).ShouldBe(-1);
        locator.Find(new(-1, 0)).ShouldBe(-1);
    }

    [Fact]
    public void NothingIsFoundAmongNoPolygons() => new PolygonLocator([]).Find(new(0, 0)).ShouldBe(-1);

    [Fact]
    public void NeighboursWithACommonEdgeAreTold()
    {
        var locator = new PolygonLocator([new PolygonNm(Scene.Box(10, 0, 20, 10), []), new PolygonNm(Scene.Box(0, 0, 10, 10), [])]);

        locator.Find(new(15, 5)).ShouldBe(0);
        locator.Find(new(5, 5)).ShouldBe(1);
    }

    [Fact]
    public void RandomPointsAreFoundWhereTheOracleFindsThem()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            var scene = new Scene(10_000 + seed);
            var polygons = seed % 2 == 0
                ? PolygonOperations.Union(scene.Lattice(30, 15, 4))
                : PolygonOperations.Union(scene.Copper(80, 5_000_000, 300_000));
            var locator = new PolygonLocator(polygons);
            var judges = polygons.Select(p => Oracle.ToNts([p])).Select(p => (Box: p.EnvelopeInternal, Area: new IndexedPointInAreaLocator(p))).ToArray();
            long extent = seed % 2 == 0 ? 60 : 5_000_000;
            for (int i = 0; i < 150; i++)
            {
                PointNm p = scene.Point(extent);
                int found = locator.Find(p);
                var places = judges.Select(j => j.Box.Contains(p.X, p.Y) ? j.Area.Locate(new Coordinate(p.X, p.Y)) : Location.Exterior).ToArray();

                string because = $"seed {seed} at {p}";
                if (found < 0)
                {
                    places.All(place => place == Location.Exterior).ShouldBeTrue(because);
                }
                else
                {
                    places[found].ShouldNotBe(Location.Exterior, because);
                }
            }
        }
    }
}

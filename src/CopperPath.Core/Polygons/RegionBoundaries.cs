using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>Turns the covered faces of an arrangement into polygons.</summary>
internal sealed class RegionBoundaries
{
    private readonly Arrangement _arrangement;
    private readonly HalfEdgeGraph _graph;
    private readonly PointNm[] _vertices;
    private readonly bool[] _isBoundary;

    private RegionBoundaries(Arrangement arrangement, Func<ulong, bool> isCovered)
    {
        _arrangement = arrangement;
        _graph = arrangement.Graph;
        _vertices = _graph.Edges.Vertices;
        _isBoundary = new bool[_graph.HalfEdgeCount];
        for (int h = 0; h < _isBoundary.Length; h++)
        {
            _isBoundary[h] = isCovered(arrangement.CoverageLeftOf(h)) && !isCovered(arrangement.CoverageLeftOf(h ^ 1));
        }
    }

    /// <summary>
    /// Polygons of all places whose coverage satisfies the condition: simple rings without collinear vertices,
    /// each ring from its smallest vertex, polygons and holes in lexicographic order.
    /// </summary>
    public static IReadOnlyList<PolygonNm> Of(Arrangement arrangement, Func<ulong, bool> isCovered)
    {
        var boundaries = new RegionBoundaries(arrangement, isCovered);
        DisjointSets regions = boundaries.Regions(isCovered);
        var rings = boundaries.SimpleRings(regions);
        return Assemble(rings);
    }

    /// <summary>Joins cycles whose faces belong to one connected covered region.</summary>
    private DisjointSets Regions(Func<ulong, bool> isCovered)
    {
        int[] cycleOf = _graph.CycleOf;
        var regions = new DisjointSets(_graph.FirstOfCycle.Length);
        for (int h = 0; h < _graph.HalfEdgeCount; h += 2)
        {
            if (isCovered(_arrangement.CoverageLeftOf(h)) && isCovered(_arrangement.CoverageLeftOf(h + 1)))
            {
                regions.Join(cycleOf[h], cycleOf[h + 1]);
            }
        }

        _arrangement.ForEachSharedFace(regions.Join);
        return regions;
    }

    /// <summary>
    /// Follows the border of each region, region on the left. At a vertex the border goes on with the first boundary
    /// edge clockwise, which keeps to the same wedge of the region; a vertex met again closes a ring of its own.
    /// </summary>
    private List<(int Region, PointNm[] Ring)> SimpleRings(DisjointSets regions)
    {
        List<(int Region, PointNm[] Ring)> rings = [];
        bool[] used = new bool[_isBoundary.Length];
        int[] placeInTrail = new int[_vertices.Length];
        Array.Fill(placeInTrail, -1);
        List<int> trail = [];
        for (int start = 0; start < used.Length; start++)
        {
            if (!_isBoundary[start] || used[start])
            {
                continue;
            }

            int region = regions.Find(_graph.CycleOf[start]);
            int halfEdge = start;
            do
            {
                used[halfEdge] = true;
                Visit(_graph.StartOf(halfEdge), region);
                halfEdge = NextOnBoundary(halfEdge);
            }
            while (halfEdge != start);

            Visit(_graph.StartOf(start), region);
            placeInTrail[trail[0]] = -1;
            trail.Clear();
        }

        return rings;

        void Visit(int vertex, int region)
        {
            int place = placeInTrail[vertex];
            if (place >= 0)
            {
                rings.Add((region, CanonicalRing(trail, place)));
                for (int i = place; i < trail.Count; i++)
                {
                    placeInTrail[trail[i]] = -1;
                }

                trail.RemoveRange(place, trail.Count - place);
            }

            placeInTrail[vertex] = trail.Count;
            trail.Add(vertex);
        }
    }

    private int NextOnBoundary(int halfEdge)
    {
        int next = _graph.Next[halfEdge];
        while (!_isBoundary[next])
        {
            next = _graph.Next[next ^ 1];
        }

        return next;
    }

    /// <summary>The ring made by the trail from the given place on, from its smallest vertex, without collinear vertices.</summary>
    private PointNm[] CanonicalRing(List<int> trail, int place)
    {
        int count = trail.Count - place, smallest = 0;
        for (int i = 1; i < count; i++)
        {
            if (Compare(At(i), At(smallest)) < 0)
            {
                smallest = i;
            }
        }

        List<PointNm> ring = new(count);
        PointNm previous = At(smallest + count - 1);
        for (int i = 0; i < count; i++)
        {
            PointNm here = At(smallest + i), next = At(smallest + i + 1);
            if (ExactSign.OfCross(here.X - previous.X, here.Y - previous.Y, next.X - here.X, next.Y - here.Y) != 0)
            {
                ring.Add(here);
            }

            previous = here;
        }

        return [.. ring];

        PointNm At(int index) => _vertices[trail[place + (index % count)]];
    }

    private static List<PolygonNm> Assemble(List<(int Region, PointNm[] Ring)> rings)
    {
        Dictionary<int, int> outerOfRegion = [];
        Dictionary<int, List<PointNm[]>> holesOfRegion = [];
        for (int r = 0; r < rings.Count; r++)
        {
            (int region, PointNm[] ring) = rings[r];
            if (IsCounterClockwise(ring))
            {
                outerOfRegion.Add(region, r);
            }
            else if (holesOfRegion.TryGetValue(region, out var holes))
            {
                holes.Add(ring);
            }
            else
            {
                holesOfRegion.Add(region, [ring]);
            }
        }

        List<PolygonNm> polygons = new(outerOfRegion.Count);
        foreach ((int region, PointNm[] ring) in rings)
        {
            if (IsCounterClockwise(ring))
            {
                PointNm[][] holes = holesOfRegion.TryGetValue(region, out var found) ? [.. found] : [];
                Array.Sort(holes, CompareRings);
                polygons.Add(new PolygonNm(ring, holes));
            }
        }

        polygons.Sort(static (p, q) => CompareRings(p.Outer, q.Outer));
        return polygons;
    }

    /// <summary>The turn at the smallest vertex, where a canonical ring starts, is the turn of the whole ring.</summary>
    private static bool IsCounterClockwise(PointNm[] ring)
    {
        PointNm arriving = ring[0] - ring[^1], leaving = ring[1] - ring[0];
        return ExactSign.OfCross(arriving.X, arriving.Y, leaving.X, leaving.Y) > 0;
    }

    private static int CompareRings(PointNm[] a, PointNm[] b)
    {
        for (int i = 0; i < Math.Min(a.Length, b.Length); i++)
        {
            int order = Compare(a[i], b[i]);
            if (order != 0)
            {
                return order;
            }
        }

        return a.Length.CompareTo(b.Length);
    }

    private static int Compare(PointNm a, PointNm b) => a.X != b.X ? a.X.CompareTo(b.X) : a.Y.CompareTo(b.Y);
}

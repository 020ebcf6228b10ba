using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Set operations on areas bounded by rings, in integer nanometres. Every ring set covers the places around which
/// its rings wind a number of times other than zero; rings may cross, overlap and repeat, rings of fewer than three
/// points cover nothing.
/// </summary>
/// <remarks>
/// Crossings are rounded to the nearest nanometre by snap rounding, which moves no boundary by more than 0.71 nm and
/// never turns a valid picture into an invalid one. Results are polygons with disjoint interiors that may touch at
/// single points: simple rings, no exactly collinear vertices, outer rings counter-clockwise, holes clockwise, all in
/// lexicographic order. They depend on the areas only, not on the order of the rings or the number of processors.
///
/// Outlines that cross each other everywhere have as many crossings as pairs. Each operation therefore has a budget of
/// work, generous and counted, not timed: one that spends it ends in an <see cref="EntangledOutlinesException"/>.
/// </remarks>
public static class PolygonOperations
{
    /// <summary>The area covered by the rings taken together.</summary>
    public static IReadOnlyList<PolygonNm> Union(IReadOnlyList<PointNm[]> rings)
    {
        var segments = new SegmentSet();
        segments.AddRings(rings, 0);
        return Covered(segments, CoverageRule.OfSets(false, true));
    }

    /// <summary>The area covered by both.</summary>
    public static IReadOnlyList<PolygonNm> Intersect(IReadOnlyList<PointNm[]> a, IReadOnlyList<PointNm[]> b) =>
        Combine(a, b, CoverageRule.OfSets(false, false, false, true));

    /// <summary>The area covered by a and not by b.</summary>
    public static IReadOnlyList<PolygonNm> Subtract(IReadOnlyList<PointNm[]> a, IReadOnlyList<PointNm[]> b) =>
        Combine(a, b, CoverageRule.OfSets(false, true, false, false));

    /// <summary>The area covered by one of the two and not by the other.</summary>
    public static IReadOnlyList<PolygonNm> SymmetricDifference(
        IReadOnlyList<PointNm[]> a, IReadOnlyList<PointNm[]> b) =>
        Combine(a, b, CoverageRule.OfSets(false, true, true, false));

    /// <summary>The area inside an odd number of the rings: areas with holes with islands in them, whichever way they run.</summary>
    public static IReadOnlyList<PolygonNm> InsideOddNumber(IReadOnlyList<PointNm[]> rings)
    {
        var segments = new SegmentSet();
        for (int i = 0; i < rings.Count; i++)
        {
            segments.AddRings([rings[i]], i);
        }

        return Covered(segments, CoverageRule.OddNumber());
    }

    /// <summary>
    /// The picture left by painting step after step: dark ones add, the others remove what is there already.
    /// </summary>
    public static IReadOnlyList<PolygonNm> Paint(IReadOnlyList<PaintStep> steps)
    {
        List<int> seen = LastOfEqual.Of(steps);
        var segments = new SegmentSet();
        int[] layerOfSource = new int[seen.Count];
        List<bool> isDark = [false];
        for (int i = 0; i < seen.Count; i++)
        {
            // Steps of one kind that follow each other may be painted in any order.
            PaintStep step = steps[seen[i]];
            if (isDark.Count == 1 || isDark[^1] != step.IsDark)
            {
                isDark.Add(step.IsDark);
            }

            layerOfSource[i] = isDark.Count - 1;
            segments.AddRings(step.Rings, i, step.Offset);
        }

        try
        {
            return Covered(segments, CoverageRule.Painted(layerOfSource, [.. isDark]));
        }
        catch (EntangledOutlinesException entangled)
        {
            throw new EntangledOutlinesException(seen[entangled.SourceNumber], entangled.Place);
        }
    }

    /// <summary>Lays up to 64 inputs over each other and says, on both sides of every edge, which of them cover.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More than 64 inputs.</exception>
    public static PlanarArrangement Arrange(IReadOnlyList<IReadOnlyList<PointNm[]>> inputs)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(inputs.Count, Arrangement.MaxSources);
        var segments = new SegmentSet();
        for (int i = 0; i < inputs.Count; i++)
        {
            segments.AddRings(inputs[i], i);
        }

        var arrangement = new Arrangement(NodedEdges.Of(segments), inputs.Count);
        HalfEdgeGraph graph = arrangement.Graph;
        List<ArrangedEdge> edges = [];
        for (int h = 0; h < graph.HalfEdgeCount; h += 2)
        {
            (ulong left, ulong right) = (arrangement.CoverageLeftOf(h), arrangement.CoverageLeftOf(h + 1));
            if (left != right)
            {
                PointNm from = graph.Edges.Vertices[graph.StartOf(h)], to = graph.Edges.Vertices[graph.EndOf(h)];
                edges.Add(Compare(from, to) < 0
                    ? new ArrangedEdge(from, to, left, right)
                    : new ArrangedEdge(to, from, right, left));
            }
        }

        edges.Sort(static (e, f) => Compare(e.A, f.A) is var order && order != 0 ? order : Compare(e.B, f.B));
        return new PlanarArrangement(edges);
    }

    private static IReadOnlyList<PolygonNm> Combine(
        IReadOnlyList<PointNm[]> a, IReadOnlyList<PointNm[]> b, CoverageRule rule)
    {
        var segments = new SegmentSet();
        segments.AddRings(a, 0);
        segments.AddRings(b, 1);
        return Covered(segments, rule);
    }

    private static IReadOnlyList<PolygonNm> Covered(SegmentSet segments, CoverageRule rule) => RegionBoundaries.Of(
        new Arrangement(NodedEdges.OfBorders(segments, rule), 1), static covered => covered != 0);

    private static int Compare(PointNm a, PointNm b) => a.X != b.X ? a.X.CompareTo(b.X) : a.Y.CompareTo(b.Y);
}

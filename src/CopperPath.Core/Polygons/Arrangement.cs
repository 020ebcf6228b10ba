namespace CopperPath.Polygons;

/// <summary>The plane cut into faces by all segments of an operation, with the coverage of every face.</summary>
internal sealed class Arrangement
{
    /// <summary>One bit of an answer for each source.</summary>
    public const int MaxSources = 64;

    private readonly ulong[] _coverageOfCycle;
    private readonly Nesting _nesting;

    /// <param name="edges">Edges that meet at their ends only.</param>
    /// <param name="sourceCount">Sources they contribute to are numbered below this, at most <see cref="MaxSources"/>.</param>
    public Arrangement(NodedEdges edges, int sourceCount)
    {
        HalfEdgeGraph? graph = null;
        Components? components = null;
        Parallel.Invoke(() => graph = new HalfEdgeGraph(edges), () => components = new Components(edges));
        Graph = graph!;
        _nesting = new Nesting(Graph, components!);
        _coverageOfCycle = new ulong[Graph.FirstOfCycle.Length];
        SpreadCoverage(new int[sourceCount]);
    }

    public HalfEdgeGraph Graph { get; }

    /// <summary>Coverage of the face to the left of the half-edge: bit k is set where source k does not wind zero times.</summary>
    public ulong CoverageLeftOf(int halfEdge) => _coverageOfCycle[Graph.CycleOf[halfEdge]];

    /// <summary>Calls back for each pair of cycles that bound one and the same face.</summary>
    public void ForEachSharedFace(Action<int, int> visit)
    {
        for (int cycle = 0; cycle < _coverageOfCycle.Length; cycle++)
        {
            for (int inside = _nesting.FirstInside(cycle); inside >= 0; inside = _nesting.NextBeside(inside))
            {
                visit(cycle, inside);
            }
        }
    }

    /// <summary>
    /// Walks through all faces depth first, from the infinite one, crossing each edge of the walk once forth and
    /// once back, so that one running set of winding numbers is enough.
    /// </summary>
    private void SpreadCoverage(int[] winding)
    {
        ulong coverage = 0;
        bool[] reached = new bool[_coverageOfCycle.Length];
        Stack<Visit> path = new();
        for (int outer = _nesting.FirstUnenclosed; outer >= 0; outer = _nesting.NextBeside(outer))
        {
            Enter(outer, -1);
            while (path.TryPop(out Visit visit))
            {
                Continue(visit);
            }
        }

        void Enter(int cycle, int across)
        {
            reached[cycle] = true;
            _coverageOfCycle[cycle] = coverage;
            path.Push(new Visit(cycle, Graph.FirstOfCycle[cycle], _nesting.FirstInside(cycle), across));
        }

        void Continue(Visit visit)
        {
            if (visit.NextHalfEdge >= 0)
            {
                int here = visit.NextHalfEdge;
                int following = Graph.Next[here];
                path.Push(visit with { NextHalfEdge = following == Graph.FirstOfCycle[visit.Cycle] ? -1 : following });
                int neighbour = Graph.CycleOf[here ^ 1];
                if (!reached[neighbour])
                {
                    CrossFromLeftOf(here);
                    Enter(neighbour, here);
                }
            }
            else if (visit.NextInside >= 0)
            {
                path.Push(visit with { NextInside = _nesting.NextBeside(visit.NextInside) });
                Enter(visit.NextInside, -1);
            }
            else if (visit.EnteredAcross >= 0)
            {
                CrossFromLeftOf(visit.EnteredAcross ^ 1);
            }
        }

        void CrossFromLeftOf(int halfEdge)
        {
            NodedEdges edges = Graph.Edges;
            int edge = halfEdge >> 1, first = edges.FirstContribution[edge];
            var contributions = edges.Contributions.AsSpan(first, edges.FirstContribution[edge + 1] - first);
            int direction = (halfEdge & 1) == 0 ? -1 : 1;
            foreach ((int source, int delta) in contributions)
            {
                winding[source] += direction * delta;
                coverage = winding[source] != 0 ? coverage | (1UL << source) : coverage & ~(1UL << source);
            }
        }
    }

    /// <summary>A face on the path of the walk and what of its border is still to be looked across.</summary>
    private readonly record struct Visit(int Cycle, int NextHalfEdge, int NextInside, int EnteredAcross);
}

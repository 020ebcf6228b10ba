namespace CopperPath.Polygons;

/// <summary>
/// Which face each connected component of the graph floats in. The outermost cycle of a component and the cycle
/// it sees to its left bound the same face.
/// </summary>
internal sealed class Nesting
{
    private readonly int[] _firstInside;
    private readonly int[] _nextBeside;

    public Nesting(HalfEdgeGraph graph)
    {
        int[] outermost = OutermostCycles(graph);
        _firstInside = new int[graph.FirstOfCycle.Length];
        _nextBeside = new int[graph.FirstOfCycle.Length];
        Array.Fill(_firstInside, -1);
        Array.Fill(_nextBeside, -1);
        FirstUnenclosed = -1;
        EdgeGrid? grid = outermost.Length > 1 ? GridOver(graph) : null;
        foreach (int halfEdge in outermost)
        {
            // The half-edge starts at the lexicographically smallest vertex: nothing of its component is left of it.
            var corner = graph.Edges.Vertices[graph.StartOf(halfEdge)];
            int seen = grid?.FirstToTheLeft(corner.X, corner.Y) ?? -1;
            int cycle = graph.CycleOf[halfEdge];
            if (seen < 0)
            {
                _nextBeside[cycle] = FirstUnenclosed;
                FirstUnenclosed = cycle;
            }
            else
            {
                int enclosing = graph.CycleOf[grid!.TagOf(seen)];
                _nextBeside[cycle] = _firstInside[enclosing];
                _firstInside[enclosing] = cycle;
            }
        }
    }

    /// <summary>First of the outermost cycles that bound the infinite face, or -1.</summary>
    public int FirstUnenclosed { get; }

    /// <summary>First of the outermost cycles that float in the face of the given cycle, or -1.</summary>
    public int FirstInside(int cycle) => _firstInside[cycle];

    /// <summary>Next outermost cycle that floats in the same face as the given one, or -1.</summary>
    public int NextBeside(int cycle) => _nextBeside[cycle];

    /// <summary>For each component, a half-edge of its outermost cycle that starts at its smallest vertex.</summary>
    private static int[] OutermostCycles(HalfEdgeGraph graph)
    {
        NodedEdges edges = graph.Edges;
        var components = new DisjointSets(edges.Vertices.Length);
        for (int e = 0; e < edges.Count; e++)
        {
            components.Join(edges.From[e], edges.To[e]);
        }

        int[] smallest = new int[edges.Vertices.Length];
        for (int v = 0; v < smallest.Length; v++)
        {
            int component = components.Find(v);
            smallest[v] = v;
            var (best, candidate) = (edges.Vertices[smallest[component]], edges.Vertices[v]);
            if (candidate.X < best.X || (candidate.X == best.X && candidate.Y < best.Y))
            {
                smallest[component] = v;
            }
        }

        List<int> outermost = [];
        for (int v = 0; v < smallest.Length; v++)
        {
            int vertex = smallest[v];
            if (components.Find(v) == v && graph.FirstLeaving[vertex] < graph.FirstLeaving[vertex + 1])
            {
                // All half-edges here point rightwards; left of the last one counter-clockwise is the outside.
                outermost.Add(graph.Leaving[graph.FirstLeaving[vertex + 1] - 1]);
            }
        }

        return [.. outermost];
    }

    /// <summary>Tags are the downward half-edges: those with the face to the right of the edge on their left.</summary>
    private static EdgeGrid GridOver(HalfEdgeGraph graph)
    {
        var vertices = graph.Edges.Vertices;
        UpwardEdge[] upward = new UpwardEdge[graph.Edges.Count];
        for (int e = 0; e < upward.Length; e++)
        {
            var (a, b) = (vertices[graph.Edges.From[e]], vertices[graph.Edges.To[e]]);
            upward[e] = UpwardEdge.Between(a.X, a.Y, b.X, b.Y, a.Y < b.Y ? (2 * e) + 1 : 2 * e);
        }

        return new EdgeGrid(upward);
    }
}

using System.Collections.Concurrent;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Nested dissection: a small separator splits the graph in two, both parts are ordered in the same way and the
/// separator is eliminated after them. Small pieces are ordered by minimum degree.
/// </summary>
/// <remarks>
/// George, "Nested dissection of a regular finite element mesh", SIAM J. Numer. Anal. 10 (1973). Separators are found
/// on a contracted graph and improved while it is expanded again: Hendrickson and Rothberg, "Improving the run time and
/// quality of nested dissection ordering", SIAM J. Sci. Comput. 20 (1998).
/// </remarks>
internal sealed class NestedDissection
{
    /// <summary>
    /// Pieces up to this size are left to minimum degree: cutting them further saves a few per cent of fill and costs
    /// more time than that is worth.
    /// </summary>
    public const int DefaultLeafSize = 10_000;

    /// <summary>The graph is contracted to about this many vertices before it is first divided.</summary>
    private const int CoarsestSize = 100;
    private const int Seeds = 5;

    /// <summary>Graphs contracted to less than one part in this many are cheap enough to carry several divisions.</summary>
    private const int SmallShare = 6;

    /// <summary>Halves within halves: a graph that separators do not halve, as no mesh is, is left to minimum degree at this depth.</summary>
    private const int DeepestCut = 64;

    private readonly AdjacencyGraph _graph;
    private readonly int[] _order;
    private readonly int _leafSize;
    private readonly bool _isParallel;
    private readonly ConcurrentBag<DissectionWorkspace> _workspaces = [];

    private NestedDissection(AdjacencyGraph graph, int[] order, int leafSize, bool isParallel)
    {
        _graph = graph;
        _order = order;
        _leafSize = leafSize;
        _isParallel = isParallel;
    }

    /// <summary>The vertices in order of elimination.</summary>
    public static int[] Order(AdjacencyGraph graph, bool isParallel, int leafSize = DefaultLeafSize)
    {
        int[] order = new int[graph.VertexCount];
        int[] all = [.. Enumerable.Range(0, graph.VertexCount)];
        WeightedGraph whole = new(graph.VertexCount, graph.Starts, graph.Neighbours, null, null);
        new NestedDissection(graph, order, leafSize, isParallel).Dissect(whole, all, 0, 0);
        return order;
    }

    /// <summary>Writes the vertices of a piece to the order, from the given place on.</summary>
    /// <param name="piece">The piece, in numbers of its own.</param>
    /// <param name="vertices">Their numbers in the whole graph.</param>
    /// <param name="place">Where in the order the piece begins.</param>
    /// <param name="depth">How many cuts led to the piece.</param>
    private void Dissect(WeightedGraph piece, int[] vertices, int place, int depth)
    {
        if (piece.Count == 0)
        {
            return;
        }

        DissectionWorkspace workspace = _workspaces.TryTake(out DissectionWorkspace? free)
            ? free
            : new DissectionWorkspace(_graph.VertexCount);
        byte[]? side = null;
        if (piece.Count > _leafSize && depth < DeepestCut)
        {
            side = Divide(piece, workspace);
        }
        else
        {
            OrderLeaf(vertices, _order.AsSpan(place, vertices.Length), workspace);
        }

        _workspaces.Add(workspace);
        if (side is null)
        {
            return;
        }

        (WeightedGraph graph0, int[] vertices0) = Extract(piece, vertices, side, 0);
        (WeightedGraph graph1, int[] vertices1) = Extract(piece, vertices, side, 1);
        int separatorPlace = place + vertices0.Length + vertices1.Length;
        for (int v = 0; v < piece.Count; v++)
        {
            if (side[v] == VertexSeparator.Between)
            {
                _order[separatorPlace++] = vertices[v];
            }
        }

        if (_isParallel)
        {
            Parallel.Invoke(
                () => Dissect(graph0, vertices0, place, depth + 1),
                () => Dissect(graph1, vertices1, place + vertices0.Length, depth + 1));
        }
        else
        {
            Dissect(graph0, vertices0, place, depth + 1);
            Dissect(graph1, vertices1, place + vertices0.Length, depth + 1);
        }
    }

    private static byte[] Divide(WeightedGraph piece, DissectionWorkspace workspace)
    {
        List<(WeightedGraph Graph, int[] CoarseOf)> levels = [];
        WeightedGraph graph = piece;
        int largestWeight = Math.Max(2, 3 * piece.Count / (2 * CoarsestSize));
        while (graph.Count > CoarsestSize)
        {
            (WeightedGraph coarse, int[] coarseOf) = graph.Contract(largestWeight);
            if (coarse.Count > 0.95 * graph.Count)
            {
                break;
            }

            levels.Add((graph, coarseOf));
            graph = coarse;
        }

        // Several divisions are grown from vertices spread over the graph and carried along while the graph is small;
        // which is best shows only once they are improved on finer graphs.
        List<VertexSeparator> candidates = [];
        for (int k = 0; k < Seeds; k++)
        {
            candidates.Add(VertexSeparator.Grow(graph, (int)((long)k * graph.Count / Seeds), workspace));
            candidates[k].Refine();
        }

        for (int level = levels.Count - 1; level >= 0; level--)
        {
            (WeightedGraph finer, int[] coarseOf) = levels[level];
            if (finer.Count > piece.Count / SmallShare)
            {
                candidates = [candidates.MinBy(candidate => candidate.Cost)!];
            }

            for (int k = 0; k < candidates.Count; k++)
            {
                candidates[k] = candidates[k].Expand(finer, coarseOf, workspace);
                candidates[k].Refine();
            }
        }

        return candidates.MinBy(candidate => candidate.Cost)!.Side;
    }

    private static (WeightedGraph Graph, int[] Vertices) Extract(
        WeightedGraph piece, int[] vertices, byte[] side, byte wanted)
    {
        int[] number = new int[piece.Count];
        int count = 0;
        int edges = 0;
        for (int v = 0; v < piece.Count; v++)
        {
            if (side[v] == wanted)
            {
                number[v] = count++;
                edges += piece.Starts[v + 1] - piece.Starts[v];
            }
        }

        int[] starts = new int[count + 1];
        int[] neighbours = new int[edges];
        int[] kept = new int[count];
        int written = 0;
        count = 0;
        for (int v = 0; v < piece.Count; v++)
        {
            if (side[v] != wanted)
            {
                continue;
            }

            kept[count++] = vertices[v];
            foreach (int neighbour in piece.NeighboursOf(v))
            {
                if (side[neighbour] == wanted)
                {
                    neighbours[written++] = number[neighbour];
                }
            }

            starts[count] = written;
        }

        return (new WeightedGraph(count, starts, neighbours, null, null), kept);
    }

    /// <summary>Orders a leaf by minimum degree, with the separator vertices around it as its halo.</summary>
    private void OrderLeaf(int[] vertices, Span<int> order, DissectionWorkspace workspace)
    {
        int[] number = workspace.LocalNumber;
        List<int> local = [.. vertices];
        for (int k = 0; k < vertices.Length; k++)
        {
            number[vertices[k]] = k;
        }

        foreach (int vertex in vertices)
        {
            foreach (int neighbour in _graph.NeighboursOf(vertex))
            {
                if (number[neighbour] < 0)
                {
                    number[neighbour] = local.Count;
                    local.Add(neighbour);
                }
            }
        }

        int[] starts = new int[local.Count + 1];
        List<int> neighbours = new(8 * local.Count);
        for (int k = 0; k < local.Count; k++)
        {
            foreach (int neighbour in _graph.NeighboursOf(local[k]))
            {
                int other = number[neighbour];

                // Edges within the halo are left out: its vertices are never eliminated.
                if (other >= 0 && (k < vertices.Length || other < vertices.Length))
                {
                    neighbours.Add(other);
                }
            }

            starts[k + 1] = neighbours.Count;
        }

        MinimumDegree.Order(starts, [.. neighbours], local.Count, vertices.Length, order);
        foreach (ref int vertex in order)
        {
            vertex = vertices[vertex];
        }

        foreach (int vertex in local)
        {
            number[vertex] = -1;
        }
    }
}

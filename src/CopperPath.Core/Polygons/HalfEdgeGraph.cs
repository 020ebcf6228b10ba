using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// The planar graph of noded edges. Edge e is two half-edges: 2e runs as the edge does, 2e + 1 runs back, so the
/// twin of h is h ^ 1. Half-edges that bound the same face in one go, face on the left, form a cycle.
/// </summary>
internal sealed class HalfEdgeGraph
{
    private readonly PointNm[] _vertices;

    public HalfEdgeGraph(NodedEdges edges)
    {
        Edges = edges;
        _vertices = edges.Vertices;
        Next = new int[edges.Count * 2];
        (FirstLeaving, Leaving) = HalfEdgesByVertex();
        SortByAngle();
        (CycleOf, FirstOfCycle) = TraceCycles();
    }

    public NodedEdges Edges { get; }

    public int HalfEdgeCount => Next.Length;

    /// <summary>The half-edge that follows along the same face.</summary>
    public int[] Next { get; }

    /// <summary>Cycle of each half-edge.</summary>
    public int[] CycleOf { get; }

    /// <summary>One half-edge of each cycle.</summary>
    public int[] FirstOfCycle { get; }

    /// <summary>Start of each vertex' run in <see cref="Leaving"/>, with one closing entry.</summary>
    public int[] FirstLeaving { get; }

    /// <summary>Half-edges leaving each vertex, counter-clockwise all around.</summary>
    public int[] Leaving { get; }

    public int StartOf(int halfEdge) => (halfEdge & 1) == 0 ? Edges.From[halfEdge >> 1] : Edges.To[halfEdge >> 1];

    public int EndOf(int halfEdge) => StartOf(halfEdge ^ 1);

    /// <summary>
    /// The half-edge whose left face takes in the place just left of the vertex, given that all edges there run to
    /// the right or straight up.
    /// </summary>
    public int UppermostLeaving(int vertex)
    {
        int uppermost = Leaving[FirstLeaving[vertex]];
        for (int i = FirstLeaving[vertex] + 1; i < FirstLeaving[vertex + 1]; i++)
        {
            PointNm best = _vertices[EndOf(uppermost)] - _vertices[vertex];
            if (CompareAngles(_vertices[EndOf(Leaving[i])] - _vertices[vertex], best) > 0)
            {
                uppermost = Leaving[i];
            }
        }

        return uppermost;
    }

    private (int[] First, int[] Leaving) HalfEdgesByVertex()
    {
        int[] first = new int[_vertices.Length + 1];
        for (int e = 0; e < Edges.Count; e++)
        {
            first[Edges.From[e] + 1]++;
            first[Edges.To[e] + 1]++;
        }

        for (int v = 0; v < _vertices.Length; v++)
        {
            first[v + 1] += first[v];
        }

        int[] next = first[..^1];
        int[] leaving = new int[first[^1]];
        for (int e = 0; e < Edges.Count; e++)
        {
            leaving[next[Edges.From[e]]++] = 2 * e;
            leaving[next[Edges.To[e]]++] = (2 * e) + 1;
        }

        return (first, leaving);
    }

    private void SortByAngle()
    {
        const int BlockSize = 8192;
        Parallel.For(0, (_vertices.Length + BlockSize - 1) / BlockSize, block =>
        {
            int end = Math.Min(_vertices.Length, (block + 1) * BlockSize);
            for (int v = block * BlockSize; v < end; v++)
            {
                Span<int> around = Leaving.AsSpan(FirstLeaving[v], FirstLeaving[v + 1] - FirstLeaving[v]);
                if (around.Length == 0)
                {
                    continue;
                }

                // Two half-edges are in cyclic order either way.
                if (around.Length > 2)
                {
                    SortByAngle(around, _vertices[v]);
                }

                // With its face on the left, a half-edge arriving here turns into the next one clockwise.
                int clockwise = around[^1];
                foreach (int leaving in around)
                {
                    Next[leaving ^ 1] = clockwise;
                    clockwise = leaving;
                }
            }
        });
    }

    private void SortByAngle(Span<int> around, PointNm centre)
    {
        if (around.Length > 16)
        {
            around.Sort((g, h) => CompareAngles(_vertices[EndOf(g)] - centre, _vertices[EndOf(h)] - centre));
            return;
        }

        for (int i = 1; i < around.Length; i++)
        {
            int halfEdge = around[i];
            PointNm direction = _vertices[EndOf(halfEdge)] - centre;
            int hole = i;
            while (hole > 0 && CompareAngles(_vertices[EndOf(around[hole - 1])] - centre, direction) > 0)
            {
                around[hole] = around[hole - 1];
                hole--;
            }

            around[hole] = halfEdge;
        }
    }

    /// <summary>Compares directions counter-clockwise, beginning just after straight down.</summary>
    private static int CompareAngles(PointNm a, PointNm b)
    {
        bool leftOfA = IsLeftward(a), leftOfB = IsLeftward(b);
        return leftOfA != leftOfB ? leftOfA.CompareTo(leftOfB) : -ExactSign.OfCross(a.X, a.Y, b.X, b.Y);
    }

    private static bool IsLeftward(PointNm direction) => direction.X < 0 || (direction.X == 0 && direction.Y < 0);

    private (int[] CycleOf, int[] FirstOfCycle) TraceCycles()
    {
        int[] cycleOf = new int[HalfEdgeCount];
        Array.Fill(cycleOf, -1);
        List<int> firstOfCycle = [];
        for (int start = 0; start < cycleOf.Length; start++)
        {
            if (cycleOf[start] >= 0)
            {
                continue;
            }

            int halfEdge = start;
            do
            {
                cycleOf[halfEdge] = firstOfCycle.Count;
                halfEdge = Next[halfEdge];
            }
            while (halfEdge != start);

            firstOfCycle.Add(start);
        }

        return (cycleOf, [.. firstOfCycle]);
    }
}

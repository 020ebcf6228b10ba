using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Which face each connected component of the graph floats in. The outermost cycle of a component and the cycle
/// it sees to its left bound the same face.
/// </summary>
internal sealed class Nesting
{
    private readonly int[] _firstInside;
    private readonly int[] _nextBeside;

    public Nesting(HalfEdgeGraph graph, Components components)
    {
        _firstInside = new int[graph.FirstOfCycle.Length];
        _nextBeside = new int[graph.FirstOfCycle.Length];
        Array.Fill(_firstInside, -1);
        Array.Fill(_nextBeside, -1);
        FirstUnenclosed = -1;
        foreach (int vertex in components.Corners)
        {
            PointNm corner = graph.Edges.Vertices[vertex];
            int seen = components.Edges?.FirstToTheLeft(corner.X, corner.Y) ?? -1;
            int cycle = graph.CycleOf[graph.UppermostLeaving(vertex)];
            if (seen < 0)
            {
                _nextBeside[cycle] = FirstUnenclosed;
                FirstUnenclosed = cycle;
            }
            else
            {
                int enclosing = graph.CycleOf[DownwardHalf(graph, seen)];
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

    /// <summary>The half-edge of an edge that runs down and so has the face right of the edge on its left.</summary>
    private static int DownwardHalf(HalfEdgeGraph graph, int edge)
    {
        PointNm[] vertices = graph.Edges.Vertices;
        bool runsUp = vertices[graph.Edges.From[edge]].Y < vertices[graph.Edges.To[edge]].Y;
        return runsUp ? (2 * edge) + 1 : 2 * edge;
    }
}

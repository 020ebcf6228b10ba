namespace CopperPath.Meshing;

/// <summary>
/// Which outline edge each vertex of a refined triangulation lies on, and where outlines meet at an angle so small
/// that their cuts must keep equal distances from the meeting point.
/// </summary>
internal sealed class SegmentEnds
{
    // Segments that meet at 60 degrees or more can not keep splitting each other.
    private const double AcuteAngle = 61 * Math.PI / 180;

    private readonly Triangulation _mesh;
    private readonly int[] _from;
    private readonly int[] _to;
    private readonly bool[] _isAcute;
    private int[] _segmentOf;

    public SegmentEnds(Triangulation mesh, OutlineGraph graph, int[] vertexOf)
    {
        _mesh = mesh;
        _from = [.. graph.From.Select(v => vertexOf[v])];
        _to = [.. graph.To.Select(v => vertexOf[v])];
        _segmentOf = new int[mesh.VertexCount];
        Array.Fill(_segmentOf, Triangulation.None);
        GivenVertexCount = mesh.VertexCount;
        _isAcute = new bool[mesh.VertexCount];
        for (int h = 0; h < 3 * mesh.TriangleCount; h++)
        {
            if (mesh.Region[h / 3] != Triangulation.None && mesh.Constraint[h] != Triangulation.None
                && AngleFrom(h) < AcuteAngle)
            {
                _isAcute[mesh.Origin[h]] = true;
            }
        }
    }

    /// <summary>Vertices with lower numbers are vertices of the outlines.</summary>
    public int GivenVertexCount { get; }

    /// <summary>Angle inside the copper from a constraint half-edge to the next constraint around its origin.</summary>
    public double AngleFrom(int halfEdge)
    {
        double angle = 0;
        int h = halfEdge;
        do
        {
            int previous = Triangulation.Previous(h);
            angle += CornerAngle(h);
            h = _mesh.Constraint[previous] == Triangulation.None ? _mesh.Twin[previous] : Triangulation.None;
        }
        while (h != Triangulation.None && h != halfEdge);
        return angle;
    }

    /// <summary>Angle of a half-edge's triangle at its origin, radians.</summary>
    public double CornerAngle(int halfEdge)
    {
        int centre = _mesh.Origin[halfEdge], from = _mesh.Destination(halfEdge), to = _mesh.Apex(halfEdge);
        double ax = _mesh.X[from] - _mesh.X[centre], ay = _mesh.Y[from] - _mesh.Y[centre];
        double bx = _mesh.X[to] - _mesh.X[centre], by = _mesh.Y[to] - _mesh.Y[centre];
        return Math.Atan2((ax * by) - (ay * bx), (ax * bx) + (ay * by));
    }

    public void NoteOnSegment(int vertex, int segment)
    {
        Reserve(vertex);
        _segmentOf[vertex] = segment;
    }

    public void NoteFree(int vertex)
    {
        Reserve(vertex);
        _segmentOf[vertex] = Triangulation.None;
    }

    /// <summary>Whether two segments, given by numbers of outline edges, have an end in common or are one.</summary>
    public bool AreAdjacent(int segment, int other) => CommonEnd(segment, other) != Triangulation.None;

    /// <summary>
    /// Where to cut a segment, as a fraction from a to b: at half, or at the power of two nearest to half when one end
    /// is a vertex at which segments meet at a small angle.
    /// </summary>
    public double WhereToSplit(int a, int b, double length)
    {
        bool acuteA = a < GivenVertexCount && _isAcute[a], acuteB = b < GivenVertexCount && _isAcute[b];
        if (acuteA == acuteB)
        {
            return 0.5;
        }

        double shell = Math.Pow(2, Math.Round(Math.Log2(length / 2))) / length;
        return acuteA ? shell : 1 - shell;
    }

    /// <summary>Whether two vertices are cuts of two segments with a common end, equally far from it.</summary>
    public bool AreOnOneShell(int u, int v, double tolerance)
    {
        int first = _segmentOf[u], second = _segmentOf[v];
        if (first == Triangulation.None || second == Triangulation.None || first == second)
        {
            return false;
        }

        int end = CommonEnd(first, second);
        if (end == Triangulation.None)
        {
            return false;
        }

        double du = Distance(u, end), dv = Distance(v, end);
        return Math.Abs(du - dv) <= tolerance * Math.Max(du, dv);
    }

    private int CommonEnd(int segment, int other)
    {
        int a = _from[segment], b = _to[segment], c = _from[other], d = _to[other];
        return a == c || a == d ? a : b == c || b == d ? b : Triangulation.None;
    }

    private void Reserve(int vertex)
    {
        if (vertex >= _segmentOf.Length)
        {
            Array.Resize(ref _segmentOf, Math.Max(vertex + 1, 2 * _segmentOf.Length));
        }
    }

    private double Distance(int u, int v)
    {
        double dx = _mesh.X[u] - _mesh.X[v], dy = _mesh.Y[u] - _mesh.Y[v];
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}

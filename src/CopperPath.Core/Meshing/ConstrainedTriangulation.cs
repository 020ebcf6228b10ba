namespace CopperPath.Meshing;

/// <summary>
/// Builds the constrained Delaunay triangulation of an outline graph: vertices in Hilbert order, then the edges of
/// the graph one by one, by exchanging diagonals (S. W. Sloan, "A fast algorithm for generating constrained Delaunay
/// triangulations", Computers and Structures 47, 1993).
/// </summary>
internal sealed class ConstrainedTriangulation
{
    private readonly Triangulation _mesh;
    private readonly Queue<(int From, int To)> _crossing = new();
    private readonly Stack<(int From, int To)> _unchecked = new();

    private ConstrainedTriangulation(Triangulation mesh)
    {
        _mesh = mesh;
    }

    /// <summary>The triangulation, or null when edges of the graph cross.</summary>
    /// <param name="graph">The outlines.</param>
    /// <param name="vertexOf">Number in the triangulation of each vertex of the graph.</param>
    public static Triangulation? Of(OutlineGraph graph, out int[] vertexOf)
    {
        var mesh = new Triangulation(graph.X.Length);
        double reach = 1;
        for (int v = 0; v < graph.X.Length; v++)
        {
            reach = Math.Max(reach, Math.Max(Math.Abs(graph.X[v]), Math.Abs(graph.Y[v])));
        }

        mesh.StartWithSquare(2 * reach);
        vertexOf = InsertVertices(mesh, graph);
        var builder = new ConstrainedTriangulation(mesh);
        for (int e = 0; e < graph.From.Length; e++)
        {
            if (!builder.InsertEdge(vertexOf[graph.From[e]], vertexOf[graph.To[e]], 2 * e))
            {
                return null;
            }
        }

        return mesh;
    }

    /// <summary>
    /// Frees the outlines with the same region on both sides, such as those of rings inside rings of lower markers: no
    /// triangle need respect them.
    /// </summary>
    public static void DissolveHiddenOutlines(Triangulation mesh)
    {
        var builder = new ConstrainedTriangulation(mesh);
        for (int h = 0; h < 3 * mesh.TriangleCount; h++)
        {
            int twin = mesh.Twin[h];
            if (mesh.Constraint[h] != Triangulation.None && mesh.Region[h / 3] == mesh.Region[twin / 3])
            {
                mesh.Constraint[h] = mesh.Constraint[twin] = Triangulation.None;
                builder._unchecked.Push((mesh.Origin[h], mesh.Origin[twin]));
            }
        }

        builder.RestoreDelaunay();
    }

    private static int[] InsertVertices(Triangulation mesh, OutlineGraph graph)
    {
        int[] vertexOf = new int[graph.X.Length];
        int start = 0;
        foreach (int v in HilbertOrder.Of(graph.X, graph.Y))
        {
            double x = graph.X[v], y = graph.Y[v];
            int triangle = mesh.Locate(x, y, start, stopAtConstraints: false, out _);
            int vertex = mesh.AddVertex(x, y);
            mesh.GatherCavity(x, y, triangle);
            mesh.FillCavity(vertex);
            vertexOf[v] = vertex;
            start = mesh.NewTriangles[0];
        }

        return vertexOf;
    }

    private bool InsertEdge(int from, int to, int constraint)
    {
        while (from != to)
        {
            int reached = NextVertexTowards(from, to);
            if (reached == Triangulation.None)
            {
                return false;
            }

            ClearCrossings(from, reached);
            int h = _mesh.HalfEdgeBetween(from, reached);
            _mesh.Constraint[h] = constraint;
            _mesh.Constraint[_mesh.Twin[h]] = constraint ^ 1;
            RestoreDelaunay();
            from = reached;
        }

        return true;
    }

    /// <summary>
    /// Collects the edges crossed on the way and returns the first vertex on the straight line, usually the target;
    /// <see cref="Triangulation.None"/> when a constraint is in the way.
    /// </summary>
    private int NextVertexTowards(int from, int to)
    {
        _crossing.Clear();
        int h = _mesh.HalfEdgeAt[from];
        int start = h;
        while (true)
        {
            int u = _mesh.Destination(h), w = _mesh.Apex(h);
            if (u == to || w == to)
            {
                return to;
            }

            int sideU = _mesh.Orientation(from, to, u);
            if (sideU == 0 && IsAhead(from, to, u))
            {
                return u;
            }

            if (sideU < 0 && _mesh.Orientation(from, to, w) > 0)
            {
                break;
            }

            h = _mesh.Twin[Triangulation.Previous(h)];
            if (h == start)
            {
                return Triangulation.None;
            }
        }

        int crossed = Triangulation.Next(h);
        while (true)
        {
            if (_mesh.Constraint[crossed] != Triangulation.None)
            {
                return Triangulation.None;
            }

            _crossing.Enqueue((_mesh.Origin[crossed], _mesh.Destination(crossed)));
            int beyond = _mesh.Twin[crossed];
            int apex = _mesh.Apex(beyond);
            int side = apex == to ? 0 : _mesh.Orientation(from, to, apex);
            if (side == 0)
            {
                return apex;
            }

            crossed = side > 0 ? Triangulation.Next(beyond) : Triangulation.Previous(beyond);
        }
    }

    private bool IsAhead(int from, int to, int v)
    {
        double dx = _mesh.X[to] - _mesh.X[from], dy = _mesh.Y[to] - _mesh.Y[from];
        return (dx * (_mesh.X[v] - _mesh.X[from])) + (dy * (_mesh.Y[v] - _mesh.Y[from])) > 0;
    }

    private void ClearCrossings(int from, int to)
    {
        _unchecked.Clear();
        while (_crossing.TryDequeue(out (int From, int To) edge))
        {
            int h = _mesh.HalfEdgeBetween(edge.From, edge.To);
            int c = _mesh.Apex(h), d = _mesh.Apex(_mesh.Twin[h]);
            bool isConvex = _mesh.Orientation(d, c, edge.From) > 0 && _mesh.Orientation(c, d, edge.To) > 0;
            if (!isConvex)
            {
                _crossing.Enqueue(edge);
                continue;
            }

            _mesh.Flip(h);
            bool stillCrosses = c != from && c != to && d != from && d != to
                && _mesh.Orientation(from, to, c) * _mesh.Orientation(from, to, d) < 0;
            if (stillCrosses)
            {
                _crossing.Enqueue((d, c));
            }
            else
            {
                _unchecked.Push((d, c));
            }
        }
    }

    /// <summary>Lawson's exchanges, starting from the edges the last constraint left behind.</summary>
    private void RestoreDelaunay()
    {
        while (_unchecked.TryPop(out (int From, int To) edge))
        {
            int h = _mesh.HalfEdgeBetween(edge.From, edge.To);
            if (h == Triangulation.None || _mesh.Constraint[h] != Triangulation.None || _mesh.Twin[h] == Triangulation.None)
            {
                continue;
            }

            int d = _mesh.Apex(_mesh.Twin[h]), c = _mesh.Apex(h);
            if (_mesh.CircleHolds(h / 3, _mesh.X[d], _mesh.Y[d]))
            {
                _mesh.Flip(h);
                _unchecked.Push((edge.From, c));
                _unchecked.Push((c, edge.To));
                _unchecked.Push((edge.To, d));
                _unchecked.Push((d, edge.From));
            }
        }
    }
}

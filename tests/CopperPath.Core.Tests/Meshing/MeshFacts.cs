using CopperPath.Meshing;

namespace CopperPath.Core.Tests.Meshing;

/// <summary>What a test can count and measure on a mesh without knowing how it was made.</summary>
internal sealed class MeshFacts
{
    private readonly SheetMesh _mesh;
    private readonly Dictionary<(int From, int To), int> _triangleLeftOf = [];

    public MeshFacts(SheetMesh mesh)
    {
        _mesh = mesh;
        mesh.Triangles.Length.ShouldBe(3 * mesh.TriangleCount);
        mesh.YM.Length.ShouldBe(mesh.VertexCount);
        mesh.IsBoundaryVertex.Length.ShouldBe(mesh.VertexCount);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            AreaOf(t).ShouldBeGreaterThan(0, "triangles turn counter-clockwise");
            for (int i = 0; i < 3; i++)
            {
                // A second triangle on the same side of an edge would throw here: the mesh would not conform.
                _triangleLeftOf.Add((Corner(t, i), Corner(t, i + 1)), t);
            }
        }
    }

    public int EdgeCount => _triangleLeftOf.Keys.Count(e => e.From < e.To || !_triangleLeftOf.ContainsKey((e.To, e.From)));

    public double AreaM2 => Enumerable.Range(0, _mesh.TriangleCount).Sum(AreaOf);

    public double AreaOfMarkerM2(int marker) =>
        Enumerable.Range(0, _mesh.TriangleCount).Where(t => _mesh.TriangleMarkers[t] == marker).Sum(AreaOf);

    public double RimLengthM => RimSteps().Sum(e => Length(e.Key, e.Value));

    public double LongestEdgeM => _triangleLeftOf.Keys.Max(e => Length(e.From, e.To));

    public double AreaOf(int t)
    {
        int a = Corner(t, 0), b = Corner(t, 1), c = Corner(t, 2);
        return 0.5 * (((_mesh.XM[b] - _mesh.XM[a]) * (_mesh.YM[c] - _mesh.YM[a]))
            - ((_mesh.YM[b] - _mesh.YM[a]) * (_mesh.XM[c] - _mesh.XM[a])));
    }

    public double SmallestAngleDegrees
    {
        get
        {
            double smallest = 180;
            for (int t = 0; t < _mesh.TriangleCount; t++)
            {
                for (int i = 0; i < 3; i++)
                {
                    smallest = Math.Min(smallest, AngleDegrees(Corner(t, i), Corner(t, i + 1), Corner(t, i + 2)));
                }
            }

            return smallest;
        }
    }

    /// <summary>
    /// Euler and Poincare: vertices - edges + triangles of a plane surface is twice the number of pieces less the
    /// number of closed rims.
    /// </summary>
    public void ShouldSatisfyEuler()
    {
        int[] piece = [.. Enumerable.Range(0, _mesh.VertexCount)];
        int Root(int v)
        {
            while (piece[v] != v)
            {
                piece[v] = piece[piece[v]];
                v = piece[v];
            }

            return v;
        }

        foreach ((int from, int to) in _triangleLeftOf.Keys)
        {
            piece[Root(from)] = Root(to);
        }

        int pieces = Enumerable.Range(0, _mesh.VertexCount).Count(v => Root(v) == v);
        Dictionary<int, int> next = RimSteps();
        HashSet<int> seen = [];
        int rims = 0;
        foreach (int start in next.Keys)
        {
            if (!seen.Contains(start))
            {
                rims++;
                for (int v = start; seen.Add(v); v = next[v])
                {
                }
            }
        }

        (_mesh.VertexCount - EdgeCount + _mesh.TriangleCount).ShouldBe((2 * pieces) - rims);
        for (int v = 0; v < _mesh.VertexCount; v++)
        {
            _mesh.IsBoundaryVertex[v].ShouldBe(next.ContainsKey(v));
        }
    }

    /// <summary>
    /// Delaunay (1934), in Lawson's local form: across every edge inside one part the two opposite angles add up to at
    /// most 180 degrees.
    /// </summary>
    public void ShouldBeDelaunayInsideEachMarker(double slackDegrees = 1e-5)
    {
        foreach (((int from, int to), int left) in _triangleLeftOf)
        {
            if (from < to && _triangleLeftOf.TryGetValue((to, from), out int right)
                && _mesh.TriangleMarkers[left] == _mesh.TriangleMarkers[right])
            {
                int c = Opposite(left, from, to), d = Opposite(right, from, to);
                (AngleDegrees(c, from, to) + AngleDegrees(d, from, to)).ShouldBeLessThan(180 + slackDegrees);
            }
        }
    }

    /// <summary>Whether the straight line between two points is a chain of mesh edges, to within a distance.</summary>
    public bool HasChain(double axM, double ayM, double bxM, double byM, double withinM)
    {
        double length = Math.Sqrt(((bxM - axM) * (bxM - axM)) + ((byM - ayM) * (byM - ayM)));
        double ux = (bxM - axM) / length, uy = (byM - ayM) / length;
        double Along(int v) => ((_mesh.XM[v] - axM) * ux) + ((_mesh.YM[v] - ayM) * uy);
        double Beside(int v) => Math.Abs(((_mesh.XM[v] - axM) * uy) - ((_mesh.YM[v] - ayM) * ux));
        double covered = 0;
        foreach ((int from, int to) in _triangleLeftOf.Keys)
        {
            bool onLine = Beside(from) <= withinM && Beside(to) <= withinM;
            bool isCounted = from < to || !_triangleLeftOf.ContainsKey((to, from));
            if (onLine && isCounted && Math.Min(Along(from), Along(to)) >= -withinM
                && Math.Max(Along(from), Along(to)) <= length + withinM)
            {
                covered += Math.Abs(Along(to) - Along(from));
            }
        }

        return Math.Abs(covered - length) <= 2 * withinM;
    }

    /// <summary>Fewest edges on a way from one set of vertices to another through the mesh.</summary>
    public int FewestEdgesBetween(Func<double, double, bool> isStart, Func<double, double, bool> isEnd)
    {
        int[] steps = new int[_mesh.VertexCount];
        Array.Fill(steps, -1);
        ILookup<int, int> neighbours = _triangleLeftOf.Keys
            .SelectMany(e => new[] { e, (From: e.To, To: e.From) }).ToLookup(e => e.From, e => e.To);
        Queue<int> queue = new();
        for (int v = 0; v < _mesh.VertexCount; v++)
        {
            if (isStart(_mesh.XM[v], _mesh.YM[v]))
            {
                steps[v] = 0;
                queue.Enqueue(v);
            }
        }

        while (queue.TryDequeue(out int v))
        {
            if (isEnd(_mesh.XM[v], _mesh.YM[v]))
            {
                return steps[v];
            }

            foreach (int u in neighbours[v])
            {
                if (steps[u] < 0)
                {
                    steps[u] = steps[v] + 1;
                    queue.Enqueue(u);
                }
            }
        }

        return int.MaxValue;
    }

    private Dictionary<int, int> RimSteps() => _triangleLeftOf.Keys
        .Where(e => !_triangleLeftOf.ContainsKey((e.To, e.From)))
        .ToDictionary(e => e.From, e => e.To);

    private int Corner(int t, int i) => _mesh.Triangles[(3 * t) + (i % 3)];

    private int Opposite(int t, int a, int b) =>
        Enumerable.Range(0, 3).Select(i => Corner(t, i)).Single(v => v != a && v != b);

    private double Length(int a, int b)
    {
        double dx = _mesh.XM[b] - _mesh.XM[a], dy = _mesh.YM[b] - _mesh.YM[a];
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    private double AngleDegrees(int at, int from, int to)
    {
        double ax = _mesh.XM[from] - _mesh.XM[at], ay = _mesh.YM[from] - _mesh.YM[at];
        double bx = _mesh.XM[to] - _mesh.XM[at], by = _mesh.YM[to] - _mesh.YM[at];
        return Math.Abs(Math.Atan2((ax * by) - (ay * bx), (ax * bx) + (ay * by))) * 180 / Math.PI;
    }
}

namespace CopperPath.Meshing;

/// <summary>
/// The edge length wished for at every vertex. A new vertex takes the value interpolated where it appears, so the
/// field survives refinement; an additional field given by the caller is asked at every vertex.
/// </summary>
internal sealed class EdgeTargets
{
    private readonly Triangulation _mesh;
    private readonly Func<double, double, double>? _wished;
    private readonly double _least;
    private double[] _target;

    /// <param name="mesh">The triangulation whose vertices get targets.</param>
    /// <param name="greatest">Target where nothing asks for less.</param>
    /// <param name="least">Targets below this are raised to it.</param>
    /// <param name="wished">Further target as a function of lattice coordinates, or null.</param>
    public EdgeTargets(Triangulation mesh, double greatest, double least, Func<double, double, double>? wished)
    {
        _mesh = mesh;
        _wished = wished;
        _least = least;
        _target = new double[mesh.VertexCount];
        for (int v = 0; v < _target.Length; v++)
        {
            Set(v, greatest);
        }
    }

    /// <summary>False once the caller's field has returned something that is not a length.</summary>
    public bool AreUsable { get; private set; } = true;

    public double At(int vertex) => _target[vertex];

    public double OfEdge(int a, int b) => 0.5 * (_target[a] + _target[b]);

    public void NoteBetween(int vertex, int a, int b, double part) =>
        Set(vertex, _target[a] + (part * (_target[b] - _target[a])));

    /// <summary>Interpolates for a vertex about to be put into a triangle.</summary>
    public void NoteInside(int vertex, int triangle)
    {
        int a = _mesh.Origin[3 * triangle], b = _mesh.Origin[(3 * triangle) + 1], c = _mesh.Origin[(3 * triangle) + 2];
        double bx = _mesh.X[b] - _mesh.X[a], by = _mesh.Y[b] - _mesh.Y[a];
        double cx = _mesh.X[c] - _mesh.X[a], cy = _mesh.Y[c] - _mesh.Y[a];
        double px = _mesh.X[vertex] - _mesh.X[a], py = _mesh.Y[vertex] - _mesh.Y[a];
        double cross = (bx * cy) - (by * cx);
        double partB = ((px * cy) - (py * cx)) / cross, partC = ((bx * py) - (by * px)) / cross;
        Set(vertex, _target[a] + (partB * (_target[b] - _target[a])) + (partC * (_target[c] - _target[a])));
    }

    public void Lower(int vertex, double target) =>
        _target[vertex] = Math.Max(_least, Math.Min(_target[vertex], target));

    /// <summary>
    /// Lowers targets until none exceeds a neighbour's by more than the grading times their distance, nearest first
    /// (E. W. Dijkstra, Numer. Math. 1, 1959).
    /// </summary>
    public void LimitGrowth(double grading)
    {
        Neighbours neighbours = new(_mesh);
        PriorityQueue<int, (double Target, int Vertex)> queue = new();
        for (int v = 0; v < _mesh.VertexCount; v++)
        {
            foreach (int u in neighbours.Of(v))
            {
                if (AllowedBeside(v, u, grading) < _target[u])
                {
                    queue.Enqueue(v, (_target[v], v));
                    break;
                }
            }
        }

        while (queue.TryDequeue(out int v, out (double Target, int Vertex) key))
        {
            if (key.Target > _target[v])
            {
                continue;
            }

            foreach (int u in neighbours.Of(v))
            {
                double allowed = AllowedBeside(v, u, grading);
                if (allowed < _target[u])
                {
                    _target[u] = allowed;
                    queue.Enqueue(u, (allowed, u));
                }
            }
        }
    }

    private double AllowedBeside(int vertex, int neighbour, double grading)
    {
        double dx = _mesh.X[neighbour] - _mesh.X[vertex], dy = _mesh.Y[neighbour] - _mesh.Y[vertex];
        return _target[vertex] + (grading * Math.Sqrt((dx * dx) + (dy * dy)));
    }

    private void Set(int vertex, double target)
    {
        if (vertex >= _target.Length)
        {
            Array.Resize(ref _target, Math.Max(vertex + 1, 2 * _target.Length));
        }

        if (_wished is not null)
        {
            double wished = _wished(_mesh.X[vertex], _mesh.Y[vertex]);
            AreUsable &= wished > 0;
            target = wished > 0 ? Math.Min(target, wished) : target;
        }

        _target[vertex] = Math.Max(_least, target);
    }
}

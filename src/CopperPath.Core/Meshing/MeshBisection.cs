namespace CopperPath.Meshing;

/// <summary>
/// Refines a mesh where an earlier solution asks for it, by halving longest edges (M. C. Rivara, Int. J. Numer. Methods
/// Eng. 20, 1984): the old triangles are unions of new ones, so every field the old mesh can hold the new one can hold
/// too, and no angle falls below half the smallest of the old mesh (I. G. Rosenberg and F. Stenger, Math. Comp. 29, 1975).
/// </summary>
public sealed class MeshBisection
{
    private readonly List<double> _x;
    private readonly List<double> _y;
    private readonly List<bool> _isBoundary;
    private readonly List<int> _origin;
    private readonly List<int> _twin;
    private readonly List<int> _marker;
    private readonly List<int> _halvings;
    private readonly Stack<int> _path = new();

    private MeshBisection(SheetMesh mesh, IReadOnlyList<int> halvings)
    {
        TriangleLinks links = new(mesh);
        _x = [.. mesh.XM];
        _y = [.. mesh.YM];
        _isBoundary = [.. mesh.IsBoundaryVertex];
        _origin = [.. mesh.Triangles];
        _twin = [.. Enumerable.Range(0, mesh.Triangles.Length).Select(links.Twin)];
        _marker = [.. mesh.TriangleMarkers];
        _halvings = [.. halvings];
    }

    /// <summary>Halves triangles, and those of their neighbours that must follow to keep the mesh conforming.</summary>
    /// <param name="mesh">The mesh; left as it is.</param>
    /// <param name="halvings">How many times each triangle is to be halved, 0 or more; one per triangle.</param>
    public static SheetMesh Refine(SheetMesh mesh, IReadOnlyList<int> halvings)
    {
        MeshBisection bisection = new(mesh, halvings);
        bisection.Run();
        return bisection.Assemble();
    }

    private void Run()
    {
        // Children are appended, so the sweep meets those that must be halved again.
        for (int t = 0; t < _marker.Count; t++)
        {
            while (_halvings[t] > 0)
            {
                Halve(t);
            }
        }
    }

    /// <summary>Halves one triangle, after the neighbours on the path of ever longer edges that starts in it.</summary>
    private void Halve(int triangle)
    {
        _path.Push(triangle);
        while (_path.TryPeek(out int t))
        {
            int edge = LongestEdge(t);
            int twin = _twin[edge];
            if (twin == TriangleLinks.None || LongestEdge(twin / 3) == twin)
            {
                Split(edge);
                _path.Pop();
            }
            else
            {
                _path.Push(twin / 3);
            }
        }
    }

    /// <summary>Edges are ordered by length and then by their ends, so that both sides of an edge agree on the order.</summary>
    private int LongestEdge(int triangle)
    {
        int best = 3 * triangle;
        for (int edge = best + 1; edge < (3 * triangle) + 3; edge++)
        {
            if (IsLonger(edge, best))
            {
                best = edge;
            }
        }

        return best;
    }

    private bool IsLonger(int edge, int other)
    {
        (double squaredLength, int low, int high) = RankOf(edge);
        (double otherSquaredLength, int otherLow, int otherHigh) = RankOf(other);
        return squaredLength != otherSquaredLength ? squaredLength > otherSquaredLength
            : low != otherLow ? low > otherLow
            : high > otherHigh;
    }

    private (double SquaredLength, int Low, int High) RankOf(int edge)
    {
        int a = _origin[edge], b = _origin[TriangleLinks.Next(edge)];
        (int low, int high) = a < b ? (a, b) : (b, a);
        double dx = _x[high] - _x[low], dy = _y[high] - _y[low];
        return ((dx * dx) + (dy * dy), low, high);
    }

    private void Split(int edge)
    {
        int twin = _twin[edge];
        int a = _origin[edge], b = _origin[TriangleLinks.Next(edge)];
        int middle = _x.Count;
        _x.Add((_x[a] + _x[b]) / 2);
        _y.Add((_y[a] + _y[b]) / 2);
        _isBoundary.Add(twin == TriangleLinks.None);

        int half = SplitSide(edge, middle);
        if (twin != TriangleLinks.None)
        {
            int otherHalf = SplitSide(twin, middle);
            Join(edge, otherHalf);
            Join(twin, half);
        }
    }

    /// <summary>
    /// Triangle a b c with the edge a b becomes a m c; m b c is appended. Returns the appended triangle's edge from m to b.
    /// </summary>
    private int SplitSide(int edge, int middle)
    {
        int triangle = edge / 3;
        int second = TriangleLinks.Next(edge), third = TriangleLinks.Previous(edge);
        int b = _origin[second], c = _origin[third];
        int beyond = _twin[second];

        int first = _origin.Count;
        _origin.AddRange([middle, b, c]);
        _twin.AddRange([TriangleLinks.None, TriangleLinks.None, TriangleLinks.None]);
        _marker.Add(_marker[triangle]);
        _halvings[triangle] = Math.Max(0, _halvings[triangle] - 1);
        _halvings.Add(_halvings[triangle]);

        _origin[second] = middle;
        _twin[edge] = TriangleLinks.None;
        Join(first + 1, beyond);
        Join(first + 2, second);
        return first;
    }

    private void Join(int edge, int twin)
    {
        _twin[edge] = twin;
        if (twin != TriangleLinks.None)
        {
            _twin[twin] = edge;
        }
    }

    /// <summary>Copies out, with the vertices again along a Hilbert curve so that neighbours lie near each other in memory.</summary>
    private SheetMesh Assemble()
    {
        double[] x = [.. _x], y = [.. _y];
        int[] order = HilbertOrder.Of(x, y);
        int[] place = new int[order.Length];
        for (int i = 0; i < order.Length; i++)
        {
            place[order[i]] = i;
        }

        double[] xM = [.. order.Select(v => x[v])], yM = [.. order.Select(v => y[v])];
        int[] triangles = [.. _origin.Select(v => place[v])];
        return new SheetMesh(
            xM, yM, triangles, [.. _marker], [.. order.Select(v => _isBoundary[v])], SmallestAngleDegrees(xM, yM, triangles));
    }

    private static double SmallestAngleDegrees(double[] x, double[] y, int[] triangles)
    {
        double smallest = double.PositiveInfinity;
        for (int edge = 0; edge < triangles.Length; edge++)
        {
            int a = triangles[edge], b = triangles[TriangleLinks.Next(edge)], c = triangles[TriangleLinks.Previous(edge)];
            double ux = x[b] - x[a], uy = y[b] - y[a], vx = x[c] - x[a], vy = y[c] - y[a];
            smallest = Math.Min(smallest, Math.Atan2((ux * vy) - (uy * vx), (ux * vx) + (uy * vy)));
        }

        return smallest * 180 / Math.PI;
    }
}

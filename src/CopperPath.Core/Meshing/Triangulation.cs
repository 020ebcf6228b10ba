namespace CopperPath.Meshing;

/// <summary>
/// A constrained Delaunay triangulation that grows by one vertex at a time. Coordinates are whole numbers
/// (see <see cref="ExactPredicates"/>). Triangle t owns the half-edges 3t, 3t+1 and 3t+2, counter-clockwise; half-edge
/// h runs from Origin[h] to the origin of the next half-edge and its mate in the neighbouring triangle is Twin[h].
/// </summary>
/// <remarks>
/// Vertices enter by re-triangulating the triangles whose circumcircle holds them (A. Bowyer and D. F. Watson,
/// both Computer Journal 24, 1981), without looking across constraint edges.
/// </remarks>
internal sealed class Triangulation
{
    /// <summary>No half-edge, no vertex, no constraint.</summary>
    public const int None = -1;

    private readonly List<int> _cavity = [];
    private readonly List<int> _rim = [];
    private readonly List<RimEdge> _rimEdges = [];
    private readonly List<int> _free = [];
    private int[] _cavityStamp;
    private int[] _spokeStamp;
    private int[] _spokeTriangle;
    private int _stamp;

    public Triangulation(int expectedVertices)
    {
        int vertices = expectedVertices + 4;
        X = new double[vertices];
        Y = new double[vertices];
        HalfEdgeAt = new int[vertices];
        _spokeStamp = new int[vertices];
        _spokeTriangle = new int[vertices];
        int triangles = (2 * vertices) + 2;
        Origin = new int[3 * triangles];
        Twin = new int[3 * triangles];
        Constraint = new int[3 * triangles];
        Region = new int[triangles];
        _cavityStamp = new int[triangles];
    }

    public double[] X { get; private set; }

    public double[] Y { get; private set; }

    public int VertexCount { get; private set; }

    /// <summary>Slots of triangles in use or given back; a slot given back has Region <see cref="None"/>.</summary>
    public int TriangleCount { get; private set; }

    public int[] Origin { get; private set; }

    public int[] Twin { get; private set; }

    /// <summary>
    /// Twice the number of the outline edge a half-edge lies on, plus one when it runs against that edge;
    /// <see cref="None"/> when it lies on no outline.
    /// </summary>
    public int[] Constraint { get; private set; }

    /// <summary>Part of the plane each triangle belongs to; <see cref="None"/> when the triangle does not exist.</summary>
    public int[] Region { get; private set; }

    /// <summary>Some half-edge that starts at each vertex.</summary>
    public int[] HalfEdgeAt { get; private set; }

    /// <summary>Triangles made by the last insertion.</summary>
    public IReadOnlyList<int> NewTriangles => _rim;

    public static int Next(int halfEdge) => halfEdge % 3 == 2 ? halfEdge - 2 : halfEdge + 1;

    public static int Previous(int halfEdge) => halfEdge % 3 == 0 ? halfEdge + 2 : halfEdge - 1;

    public int Destination(int halfEdge) => Origin[Next(halfEdge)];

    public int Apex(int halfEdge) => Origin[Previous(halfEdge)];

    public int Orientation(int a, int b, int c) => ExactPredicates.Orientation(X[a], Y[a], X[b], Y[b], X[c], Y[c]);

    public int Orientation(int a, int b, double x, double y) =>
        ExactPredicates.Orientation(X[a], Y[a], X[b], Y[b], x, y);

    public bool CircleHolds(int triangle, double x, double y)
    {
        int a = Origin[3 * triangle], b = Origin[(3 * triangle) + 1], c = Origin[(3 * triangle) + 2];
        return ExactPredicates.InCircle(X[a], Y[a], X[b], Y[b], X[c], Y[c], x, y) > 0;
    }

    public double SquaredLength(int halfEdge)
    {
        int a = Origin[halfEdge], b = Destination(halfEdge);
        double dx = X[b] - X[a], dy = Y[b] - Y[a];
        return (dx * dx) + (dy * dy);
    }

    /// <summary>Starts with two triangles that cover the square from -half to +half.</summary>
    public void StartWithSquare(double half)
    {
        AddVertex(-half, -half);
        AddVertex(half, -half);
        AddVertex(half, half);
        AddVertex(-half, half);
        int lower = NewTriangle(), upper = NewTriangle();
        SetTriangle(lower, 0, 1, 2, 0);
        SetTriangle(upper, 0, 2, 3, 0);
        Array.Fill(Twin, None, 0, 6);
        Array.Fill(Constraint, None, 0, 6);
        Twin[2] = 3;
        Twin[3] = 2;
    }

    /// <summary>Adds a vertex that is not part of the triangulation yet.</summary>
    public int AddVertex(double x, double y)
    {
        if (VertexCount == X.Length)
        {
            GrowVertices();
        }

        X[VertexCount] = x;
        Y[VertexCount] = y;
        HalfEdgeAt[VertexCount] = None;
        return VertexCount++;
    }

    /// <summary>
    /// Walks from a triangle towards a point. The result holds the point (edges included), or the walk was stopped:
    /// then <paramref name="barrier"/> is the half-edge it would have had to cross, a constraint or the rim.
    /// </summary>
    public int Locate(double x, double y, int from, bool stopAtConstraints, out int barrier)
    {
        int triangle = from, cameAcross = None;
        barrier = None;
        for (int step = 0; step < TriangleCount; step++)
        {
            int crossed = None;
            for (int i = 0; i < 3; i++)
            {
                // Alternating the edge looked at first keeps the walk from circling outside Delaunay regions.
                int h = (3 * triangle) + ((i + step) % 3);
                if (h != cameAcross && Orientation(Origin[h], Destination(h), x, y) < 0)
                {
                    crossed = h;
                    break;
                }
            }

            if (crossed == None)
            {
                return triangle;
            }

            if (Twin[crossed] == None || (stopAtConstraints && Constraint[crossed] != None))
            {
                barrier = crossed;
                return triangle;
            }

            cameAcross = Twin[crossed];
            triangle = cameAcross / 3;
        }

        barrier = 3 * triangle;
        return None;
    }

    /// <summary>Gathers the triangles whose circles hold the point, reachable from a triangle that holds it.</summary>
    public void GatherCavity(double x, double y, int triangle)
    {
        BeginCavity();
        Take(triangle);
        GrowCavity(x, y, None);
    }

    /// <summary>The same for a point on a constraint half-edge, from both of its sides.</summary>
    public void GatherCavityAcross(double x, double y, int splitHalfEdge)
    {
        BeginCavity();
        Take(splitHalfEdge / 3);
        if (Twin[splitHalfEdge] != None)
        {
            Take(Twin[splitHalfEdge] / 3);
        }

        GrowCavity(x, y, splitHalfEdge);
    }

    /// <summary>Constraint half-edges around the gathered cavity, seen from inside.</summary>
    public void CollectConstraintsAround(List<int> found)
    {
        foreach (RimEdge rim in _rimEdges)
        {
            if (rim.Constraint != None)
            {
                found.Add(rim.HalfEdge);
            }
        }
    }

    /// <summary>Whether every edge around the gathered cavity sees the point strictly on its left.</summary>
    public bool CavitySees(double x, double y)
    {
        foreach (RimEdge rim in _rimEdges)
        {
            if (Orientation(rim.From, rim.To, x, y) <= 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Replaces the gathered cavity by triangles around the vertex.</summary>
    public void FillCavity(int vertex)
    {
        foreach (int triangle in _cavity)
        {
            Region[triangle] = None;
            _free.Add(triangle);
        }

        _rim.Clear();
        foreach (RimEdge rim in _rimEdges)
        {
            int triangle = NewTriangle();
            _rim.Add(triangle);
            SetTriangle(triangle, rim.From, rim.To, vertex, rim.Region);
            int h = 3 * triangle;
            Twin[h] = rim.Twin;
            Constraint[h] = rim.Constraint;
            if (rim.Twin != None)
            {
                Twin[rim.Twin] = h;
            }

            Twin[h + 1] = Twin[h + 2] = None;
            Constraint[h + 1] = Constraint[h + 2] = None;
            _spokeStamp[rim.From] = _stamp;
            _spokeTriangle[rim.From] = triangle;
        }

        foreach (int triangle in _rim)
        {
            int towards = Origin[(3 * triangle) + 1];
            if (_spokeStamp[towards] == _stamp)
            {
                int mate = (3 * _spokeTriangle[towards]) + 2;
                Twin[(3 * triangle) + 1] = mate;
                Twin[mate] = (3 * triangle) + 1;
            }
        }
    }

    /// <summary>The half-edge from one vertex to another, or <see cref="None"/> when they are not joined.</summary>
    public int HalfEdgeBetween(int from, int to)
    {
        int start = HalfEdgeAt[from];
        int h = start;
        do
        {
            if (Destination(h) == to)
            {
                return h;
            }

            h = Twin[Previous(h)];
        }
        while (h != start && h != None);

        // Stopped by the rim: turn the other way for the rest.
        for (int g = start; h == None && Twin[g] != None;)
        {
            g = Next(Twin[g]);
            if (Destination(g) == to)
            {
                return g;
            }
        }

        return None;
    }

    /// <summary>Exchanges the diagonal of the quadrilateral around an inner half-edge; returns the new diagonal.</summary>
    public int Flip(int h)
    {
        int t = Twin[h];
        int hn = Next(h), hp = Previous(h), tn = Next(t), tp = Previous(t);
        int a = Origin[h], b = Origin[t], c = Origin[hp], d = Origin[tp];

        // Afterwards h runs from d to c in triangle (d, c, a) and t from c to d in triangle (c, d, b).
        int twinOfA = Twin[tn], twinOfB = Twin[hn];
        int constraintOfA = Constraint[tn], constraintOfB = Constraint[hn];
        Origin[h] = d;
        Origin[hn] = c;
        Origin[hp] = a;
        Origin[t] = c;
        Origin[tn] = d;
        Origin[tp] = b;
        int ca = hn, ad = hp, db = tn, bc = tp;
        int twinCa = Twin[hp], twinBd = Twin[tp];
        int constraintCa = Constraint[hp], constraintBd = Constraint[tp];
        Join(ca, twinCa, constraintCa);
        Join(ad, twinOfA, constraintOfA);
        Join(db, twinBd, constraintBd);
        Join(bc, twinOfB, constraintOfB);
        HalfEdgeAt[a] = ad;
        HalfEdgeAt[b] = bc;
        HalfEdgeAt[c] = t;
        HalfEdgeAt[d] = h;
        return h;
    }

    /// <summary>Deletes every triangle of a region and leaves a rim around its place.</summary>
    public void RemoveRegion(int region)
    {
        for (int t = 0; t < TriangleCount; t++)
        {
            if (Region[t] != region)
            {
                continue;
            }

            for (int h = 3 * t; h < (3 * t) + 3; h++)
            {
                if (Twin[h] != None)
                {
                    Twin[Twin[h]] = None;
                }
            }

            Region[t] = None;
            _free.Add(t);
        }

        for (int v = 0; v < VertexCount; v++)
        {
            HalfEdgeAt[v] = None;
        }

        for (int h = 0; h < 3 * TriangleCount; h++)
        {
            if (Region[h / 3] != None)
            {
                HalfEdgeAt[Origin[h]] = h;
            }
        }
    }

    private void Join(int halfEdge, int twin, int constraint)
    {
        Twin[halfEdge] = twin;
        Constraint[halfEdge] = constraint;
        if (twin != None)
        {
            Twin[twin] = halfEdge;
        }
    }

    private void BeginCavity()
    {
        _stamp++;
        _cavity.Clear();
        _rimEdges.Clear();
    }

    private void Take(int triangle)
    {
        if (_cavityStamp[triangle] != _stamp)
        {
            _cavityStamp[triangle] = _stamp;
            _cavity.Add(triangle);
        }
    }

    private void GrowCavity(double x, double y, int splitHalfEdge)
    {
        int splitTwin = splitHalfEdge == None ? None : Twin[splitHalfEdge];
        for (int i = 0; i < _cavity.Count; i++)
        {
            int first = 3 * _cavity[i];
            for (int h = first; h < first + 3; h++)
            {
                int twin = Twin[h];
                if (twin != None && Constraint[h] == None && _cavityStamp[twin / 3] != _stamp
                    && CircleHolds(twin / 3, x, y))
                {
                    Take(twin / 3);
                }
            }
        }

        foreach (int triangle in _cavity)
        {
            for (int h = 3 * triangle; h < (3 * triangle) + 3; h++)
            {
                bool isSplit = h == splitHalfEdge || (h == splitTwin && splitTwin != None);
                bool isInside = Constraint[h] == None && Twin[h] != None && _cavityStamp[Twin[h] / 3] == _stamp;
                if (!isSplit && !isInside)
                {
                    _rimEdges.Add(
                        new RimEdge(h, Origin[h], Destination(h), Twin[h], Constraint[h], Region[triangle]));
                }
            }
        }
    }

    private int NewTriangle()
    {
        if (_free.Count > 0)
        {
            int reused = _free[^1];
            _free.RemoveAt(_free.Count - 1);
            return reused;
        }

        if (TriangleCount == Region.Length)
        {
            GrowTriangles();
        }

        return TriangleCount++;
    }

    private void SetTriangle(int triangle, int a, int b, int c, int region)
    {
        int h = 3 * triangle;
        Origin[h] = a;
        Origin[h + 1] = b;
        Origin[h + 2] = c;
        HalfEdgeAt[a] = h;
        HalfEdgeAt[b] = h + 1;
        HalfEdgeAt[c] = h + 2;
        Region[triangle] = region;
    }

    private void GrowVertices()
    {
        int size = VertexCount * 2;
        X = Resized(X, size);
        Y = Resized(Y, size);
        HalfEdgeAt = Resized(HalfEdgeAt, size);
        Array.Resize(ref _spokeStamp, size);
        Array.Resize(ref _spokeTriangle, size);
    }

    private void GrowTriangles()
    {
        int size = TriangleCount * 2;
        Origin = Resized(Origin, 3 * size);
        Twin = Resized(Twin, 3 * size);
        Constraint = Resized(Constraint, 3 * size);
        Region = Resized(Region, size);
        Array.Resize(ref _cavityStamp, size);
    }

    private static T[] Resized<T>(T[] array, int size)
    {
        Array.Resize(ref array, size);
        return array;
    }

    private readonly record struct RimEdge(int HalfEdge, int From, int To, int Twin, int Constraint, int Region);
}

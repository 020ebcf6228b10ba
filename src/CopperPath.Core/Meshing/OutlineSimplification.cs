using CopperPath.Geometry;

namespace CopperPath.Meshing;

/// <summary>
/// Thins out the vertices of outlines: three edges in a row become two that bound the same area, the least
/// displacement first, as long as no outline moves farther than the tolerance (B. J. Kronenfeld and others,
/// "Simplification of polylines by segment collapse", Int. J. Cartography 6, 2020).
/// </summary>
/// <remarks>
/// Vertices where more or fewer than two edges meet stay. A collapse that would cross another outline, touch it or sweep
/// over one of its vertices is not made, so the plane graph keeps its shape.
/// </remarks>
internal sealed class OutlineSimplification
{
    /// <summary>
    /// Share of the tolerance that thinning out may use up. The rest is left for edges shorter than the tolerance: such
    /// an edge between long ones would force thin triangles.
    /// </summary>
    private const double ShareForLongEdges = 0.85;

    private readonly OutlineGraph _graph;
    private readonly double _tolerance;
    private readonly List<double> _x;
    private readonly List<double> _y;

    // Edge e runs from _from[e] to _to[e]; a removed edge has _from[e] < 0. Collapsed edges get new numbers.
    private readonly List<int> _from;
    private readonly List<int> _to;
    private readonly List<int> _label;
    private readonly List<double> _moved;

    // The edge that enters and the edge that leaves each vertex of a chain; None at junctions.
    private readonly List<int> _entering;
    private readonly List<int> _leaving;
    private readonly PriorityQueue<Collapse, (double Displacement, int Edge)> _queue = new();
    private readonly SegmentGrid _grid;
    private readonly List<int> _near = [];

    private OutlineSimplification(OutlineGraph graph, double tolerance)
    {
        _graph = graph;
        _tolerance = tolerance;
        _x = [.. graph.X];
        _y = [.. graph.Y];
        _from = [.. graph.From];
        _to = [.. graph.To];
        _label = [.. graph.LabelOf];
        _moved = [.. new double[_from.Count]];
        _entering = [.. Enumerable.Repeat(Triangulation.None, _x.Count)];
        _leaving = [.. Enumerable.Repeat(Triangulation.None, _x.Count)];
        LinkChains();
        _grid = new SegmentGrid(
            new BoxNm((long)_x.Min(), (long)_y.Min(), (long)_x.Max(), (long)_y.Max()), _from.Count);
        for (int e = 0; e < _from.Count; e++)
        {
            AddToGrid(e);
        }
    }

    /// <summary>The graph with fewer vertices; vertices no edge uses are gone.</summary>
    /// <param name="graph">A plane graph.</param>
    /// <param name="tolerance">Largest displacement, in lattice units; 0 changes nothing.</param>
    public static OutlineGraph Of(OutlineGraph graph, double tolerance)
    {
        var simplification = new OutlineSimplification(graph, tolerance);
        if (tolerance > 0)
        {
            simplification.Run();
        }

        return simplification.Result();
    }

    private void LinkChains()
    {
        int[] degree = new int[_x.Count];
        for (int e = 0; e < _from.Count; e++)
        {
            degree[_from[e]]++;
            degree[_to[e]]++;
        }

        for (int e = 0; e < _from.Count; e++)
        {
            // Labels are turned alike along a chain, so that one edge enters and one leaves.
            _leaving[_from[e]] = degree[_from[e]] == 2 ? e : Triangulation.None;
            _entering[_to[e]] = degree[_to[e]] == 2 ? e : Triangulation.None;
        }
    }

    private void Run()
    {
        for (int e = 0; e < _graph.From.Length; e++)
        {
            Propose(e);
        }

        while (_queue.TryDequeue(out Collapse collapse, out _))
        {
            if (IsCurrent(collapse) && IsFree(collapse))
            {
                Make(collapse);
            }
        }
    }

    /// <summary>Proposes to collapse an edge, given that both its ends are inner vertices of a chain.</summary>
    private void Propose(int edge)
    {
        int b = _from[edge], c = _to[edge];
        int before = _entering[b], after = _leaving[c];
        if (before < 0 || after < 0 || _leaving[b] != edge || _entering[c] != edge)
        {
            return;
        }

        int a = _from[before], d = _to[after];
        if (a == d || a == c || b == d)
        {
            return;
        }

        Point pa = At(a), pb = At(b), pc = At(c), pd = At(d);
        double moved = Math.Max(_moved[before], Math.Max(_moved[edge], _moved[after]));
        double allowed = (pb.SquaredDistanceTo(pc) < _tolerance * _tolerance ? 1 : ShareForLongEdges) * _tolerance;
        if (moved > allowed)
        {
            return;
        }

        double best = (allowed - moved) * (allowed - moved);
        bool isAny = false;
        Point place = default;
        Span<Point> candidates = stackalloc Point[3];
        foreach (Point candidate in candidates[..FillCandidates(pa, pb, pc, pd, candidates)])
        {
            double squared = SquaredDisplacement(pa, pb, pc, pd, candidate, best);
            if (squared <= best)
            {
                (isAny, best, place) = (true, squared, candidate);
            }
        }

        if (isAny)
        {
            double displacement = Math.Sqrt(best);
            _queue.Enqueue(new Collapse(before, edge, after, place, moved + displacement), (displacement, edge));
        }
    }

    /// <summary>
    /// Points e that make a, e, d bound the same area as a, b, c, d. All lie on one parallel to the chord a, d: one on
    /// the line a, b, one on the line c, d, and one opposite the middle of b, c.
    /// </summary>
    private static int FillCandidates(Point a, Point b, Point c, Point d, Span<Point> candidates)
    {
        int count = 0;
        Point chord = d - a;
        double twiceArea = (b - a).Cross(c - a) + (c - a).Cross(d - a);
        double first = (b - a).Cross(chord), last = (c - d).Cross(chord);
        if (first != 0)
        {
            candidates[count++] = a + ((b - a) * (twiceArea / first));
        }

        if (last != 0)
        {
            candidates[count++] = d + ((c - d) * (twiceArea / last));
        }

        double squared = chord.Dot(chord);
        double along = 0.5 * ((b - a).Dot(chord) + (c - a).Dot(chord)) / squared;
        candidates[count++] = a + (chord * along) + (new Point(chord.Y, -chord.X) * (twiceArea / squared));
        return count;
    }

    /// <summary>Square of the farthest that one of the paths a, b, c, d and a, e, d strays from the other; anything larger where it is above a limit.</summary>
    private static double SquaredDisplacement(Point a, Point b, Point c, Point d, Point e, double limit)
    {
        double outB = Math.Min(b.SquaredDistanceTo(a, e), b.SquaredDistanceTo(e, d));
        if (outB > limit)
        {
            return outB;
        }

        double outC = Math.Min(c.SquaredDistanceTo(a, e), c.SquaredDistanceTo(e, d));
        if (outC > limit)
        {
            return outC;
        }

        double outOld = Math.Min(e.SquaredDistanceTo(a, b), Math.Min(e.SquaredDistanceTo(b, c), e.SquaredDistanceTo(c, d)));
        return Math.Max(outOld, Math.Max(outB, outC));
    }

    private bool IsCurrent(Collapse collapse) =>
        _from[collapse.Before] >= 0 && _from[collapse.Edge] >= 0 && _from[collapse.After] >= 0;

    /// <summary>Whether no other outline meets the new edges and none has a vertex in the area swept.</summary>
    private bool IsFree(Collapse collapse)
    {
        Point a = At(_from[collapse.Before]), b = At(_from[collapse.Edge]);
        Point c = At(_to[collapse.Edge]), d = At(_to[collapse.After]), e = collapse.Place.Rounded();
        if (e == a || e == d || (e.Side(a, d) == 0 && (e - a).Dot(e - d) > 0))
        {
            return false;
        }

        BoxNm box = BoxNm.Empty;
        foreach (Point corner in (ReadOnlySpan<Point>)[a, b, c, d, e])
        {
            box = box.Including(new PointNm((long)corner.X, (long)corner.Y));
        }

        _near.Clear();
        _grid.Collect(box, _near);
        foreach (int other in _near)
        {
            if (_from[other] < 0 || other == collapse.Before || other == collapse.Edge || other == collapse.After)
            {
                continue;
            }

            Point p = At(_from[other]), q = At(_to[other]);
            if (Meets(p, q, a, e, d) || IsSwept(p, a, b, c, d, e) || IsSwept(q, a, b, c, d, e))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether edge pq meets the path a, e, d anywhere but at a common end.</summary>
    private static bool Meets(Point p, Point q, Point a, Point e, Point d) =>
        MeetsEdge(p, q, a, e) || MeetsEdge(p, q, e, d);

    private static bool MeetsEdge(Point p, Point q, Point s, Point t)
    {
        if (p == s || p == t || q == s || q == t)
        {
            Point common = p == s || p == t ? p : q;
            Point mine = common == p ? q : p, other = common == s ? t : s;
            return mine == other || (mine.Side(common, other) == 0 && (mine - common).Dot(other - common) > 0);
        }

        return !Point.AreApart(p, q, s, t)
            && p.Side(s, t) * q.Side(s, t) <= 0 && s.Side(p, q) * t.Side(p, q) <= 0;
    }

    private static bool IsSwept(Point p, Point a, Point b, Point c, Point d, Point e)
    {
        if (p == a || p == d)
        {
            return false;
        }

        return p.IsIn(a, b, c) || p.IsIn(a, c, d) || p.IsIn(a, e, d);
    }

    private void Make(Collapse collapse)
    {
        int a = _from[collapse.Before], d = _to[collapse.After];
        Point place = collapse.Place.Rounded();
        int e = _x.Count;
        _x.Add(place.X);
        _y.Add(place.Y);
        int first = AddEdge(a, e, collapse), second = AddEdge(e, d, collapse);
        _entering.Add(first);
        _leaving.Add(second);
        if (_leaving[a] == collapse.Before)
        {
            _leaving[a] = first;
        }

        if (_entering[d] == collapse.After)
        {
            _entering[d] = second;
        }

        _from[collapse.Before] = _from[collapse.Edge] = _from[collapse.After] = Triangulation.None;
        Propose(first);
        Propose(second);
        if (_entering[a] >= 0)
        {
            Propose(_entering[a]);
        }

        if (_leaving[d] >= 0)
        {
            Propose(_leaving[d]);
        }
    }

    private int AddEdge(int from, int to, Collapse collapse)
    {
        _from.Add(from);
        _to.Add(to);
        _label.Add(_label[collapse.Edge]);
        _moved.Add(collapse.Moved);
        AddToGrid(_from.Count - 1);
        return _from.Count - 1;
    }

    private void AddToGrid(int e) => _grid.Add(
        e, (long)_x[_from[e]], (long)_y[_from[e]], (long)_x[_to[e]], (long)_y[_to[e]]);

    private OutlineGraph Result()
    {
        int[] numberOf = new int[_x.Count];
        Array.Fill(numberOf, Triangulation.None);
        List<double> x = [], y = [];
        List<int> from = [], to = [], label = [];
        int Number(int v)
        {
            if (numberOf[v] == Triangulation.None)
            {
                numberOf[v] = x.Count;
                x.Add(_x[v]);
                y.Add(_y[v]);
            }

            return numberOf[v];
        }

        for (int e = 0; e < _from.Count; e++)
        {
            if (_from[e] >= 0)
            {
                from.Add(Number(_from[e]));
                to.Add(Number(_to[e]));
                label.Add(_label[e]);
            }
        }

        return new OutlineGraph
        {
            UnitM = _graph.UnitM,
            OriginXM = _graph.OriginXM,
            OriginYM = _graph.OriginYM,
            X = [.. x],
            Y = [.. y],
            From = [.. from],
            To = [.. to],
            LabelOf = [.. label],
            Labels = _graph.Labels,
        };
    }

    private Point At(int v) => new(_x[v], _y[v]);

    private readonly record struct Collapse(int Before, int Edge, int After, Point Place, double Moved);

    private readonly record struct Point(double X, double Y)
    {
        public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

        public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

        public static Point operator *(Point a, double factor) => new(a.X * factor, a.Y * factor);

        public double Dot(Point other) => (X * other.X) + (Y * other.Y);

        public double Cross(Point other) => (X * other.Y) - (Y * other.X);

        public Point Rounded() => new(Math.Round(X), Math.Round(Y));

        /// <summary>Exactly on which side of the line from a to b the point lies.</summary>
        public int Side(Point a, Point b) => ExactPredicates.Orientation(a.X, a.Y, b.X, b.Y, X, Y);

        /// <summary>Whether the point is inside or on the rim of a triangle of either turn; never of a flat one's outside.</summary>
        public bool IsIn(Point a, Point b, Point c)
        {
            int ab = Side(a, b), bc = Side(b, c), ca = Side(c, a);
            bool isOutside = (ab < 0 || bc < 0 || ca < 0) && (ab > 0 || bc > 0 || ca > 0);
            return !isOutside
                && X >= Math.Min(a.X, Math.Min(b.X, c.X)) && X <= Math.Max(a.X, Math.Max(b.X, c.X))
                && Y >= Math.Min(a.Y, Math.Min(b.Y, c.Y)) && Y <= Math.Max(a.Y, Math.Max(b.Y, c.Y));
        }

        public double SquaredDistanceTo(Point other)
        {
            Point rest = this - other;
            return rest.Dot(rest);
        }

        public double SquaredDistanceTo(Point a, Point b)
        {
            Point along = b - a, own = this - a;
            double part = Math.Clamp(own.Dot(along) / Math.Max(along.Dot(along), double.Epsilon), 0, 1);
            return SquaredDistanceTo(a + (along * part));
        }

        public static bool AreApart(Point p, Point q, Point s, Point t) =>
            Math.Max(p.X, q.X) < Math.Min(s.X, t.X) || Math.Max(s.X, t.X) < Math.Min(p.X, q.X)
            || Math.Max(p.Y, q.Y) < Math.Min(s.Y, t.Y) || Math.Max(s.Y, t.Y) < Math.Min(p.Y, q.Y);
    }
}

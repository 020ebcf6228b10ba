namespace CopperPath.Meshing;

/// <summary>
/// Delaunay refinement: segments of outlines are halved until nothing stands in the circle on them, and a vertex
/// is put near the circumcentre of every triangle that is too thin or too large (J. Ruppert, J. Algorithms 18, 1995;
/// J. R. Shewchuk, Computational Geometry 22, 2002). Vertices go to off-centres, which need fewer of them (A. Ungor,
/// LATIN 2004).
/// </summary>
/// <remarks>
/// It ends on any input. Segments that meet at less than 60 degrees are cut on common circles around their meeting
/// point (Ruppert's concentric shells), and the thin triangle between two cuts on one circle is left alone (G. L. Miller,
/// S. E. Pav, N. J. Walkington, Int. J. Comput. Geometry 2005). Below the smallest edge allowed nothing is cut, so
/// vertices keep a least distance; a limit on their number comes last.
/// </remarks>
internal sealed class Refinement
{
    private const double OffCentreShrink = 0.95;
    private const double ShellTolerance = 1e-3;
    private const int BucketCount = 48;

    private readonly Triangulation _mesh;
    private readonly EdgeTargets _targets;
    private readonly SegmentEnds _segments;
    private readonly double _minimumEdge;
    private readonly double _greatestRatioSquared;
    private readonly double _offCentreHeight;
    private readonly int _vertexLimit;
    private readonly bool[] _isHeldMarker;
    private readonly Queue<Corner> _segmentQueue = new();
    private readonly Queue<Corner>[] _buckets = new Queue<Corner>[BucketCount];
    private readonly List<int> _around = [];
    private readonly List<Corner> _pendingSplits = [];
    private int _worstBucket;

    public Refinement(
        Triangulation mesh, SegmentEnds segments, EdgeTargets targets, double minimumEdge, double minimumAngle, int vertexLimit,
        bool[] isHeldMarker)
    {
        _mesh = mesh;
        _segments = segments;
        _targets = targets;
        _minimumEdge = minimumEdge;
        double ratio = 0.5 / Math.Sin(minimumAngle);
        _greatestRatioSquared = ratio * ratio;
        _offCentreHeight = OffCentreShrink * 0.5 / Math.Tan(minimumAngle / 2);
        _vertexLimit = vertexLimit;
        _isHeldMarker = isHeldMarker;
        for (int b = 0; b < BucketCount; b++)
        {
            _buckets[b] = new Queue<Corner>();
        }
    }

    public bool ReachedVertexLimit { get; private set; }

    /// <summary>Refines until nothing is left to improve or the vertex limit is reached.</summary>
    public void Run()
    {
        for (int t = 0; t < _mesh.TriangleCount; t++)
        {
            if (_mesh.Region[t] != Triangulation.None)
            {
                Examine(t);
            }
        }

        while (true)
        {
            if (_mesh.VertexCount >= _vertexLimit)
            {
                ReachedVertexLimit = true;
                return;
            }

            if (_segmentQueue.TryDequeue(out Corner segment))
            {
                if (Holds(segment) && _mesh.Constraint[segment.HalfEdge] != Triangulation.None
                    && NeedsSplit(segment.HalfEdge))
                {
                    Split(segment.HalfEdge);
                }
            }
            else if (TryTakeWorst(out Corner corner))
            {
                if (Holds(corner))
                {
                    Improve(corner);
                }
            }
            else
            {
                return;
            }
        }
    }

    /// <summary>Whether a triangle is thinner than asked where that matters.</summary>
    public bool IsThin(int triangle)
    {
        if (IsHeld(triangle))
        {
            return false;
        }

        Measure(triangle, out double shortest, out double ratioSquared, out _);
        return shortest > 0 && ratioSquared > _greatestRatioSquared;
    }

    private bool IsHeld(int triangle) => _isHeldMarker[_mesh.Region[triangle]];

    private void Examine(int triangle)
    {
        for (int h = 3 * triangle; h < (3 * triangle) + 3; h++)
        {
            if (_mesh.Constraint[h] != Triangulation.None && NeedsSplit(h))
            {
                _segmentQueue.Enqueue(CornerAt(h));
            }
        }

        Enqueue(triangle);
    }

    private bool TryTakeWorst(out Corner corner)
    {
        for (; _worstBucket > 0; _worstBucket--)
        {
            if (_buckets[_worstBucket].TryDequeue(out corner))
            {
                return true;
            }
        }

        return _buckets[0].TryDequeue(out corner);
    }

    private Corner CornerAt(int h) => new(h, _mesh.Origin[h], _mesh.Destination(h), _mesh.Apex(h));

    private bool Holds(Corner corner) => _mesh.Region[corner.HalfEdge / 3] != Triangulation.None
        && _mesh.Origin[corner.HalfEdge] == corner.From && _mesh.Destination(corner.HalfEdge) == corner.To
        && _mesh.Apex(corner.HalfEdge) == corner.Apex;

    private bool CanSplit(int h) => _mesh.SquaredLength(h) >= 9 * _minimumEdge * _minimumEdge;

    private bool NeedsSplit(int h)
    {
        if (!CanSplit(h))
        {
            return false;
        }

        int twin = _mesh.Twin[h];
        return IsTooLong(h) || Encroaches(_mesh.Apex(h), h)
            || (twin != Triangulation.None && Encroaches(_mesh.Apex(twin), h));
    }

    private bool IsTooLong(int h)
    {
        double wished = _targets.OfEdge(_mesh.Origin[h], _mesh.Destination(h));
        return _mesh.SquaredLength(h) > wished * wished;
    }

    private bool Encroaches(int vertex, int h) => Encroaches(_mesh.X[vertex], _mesh.Y[vertex], h);

    private bool Encroaches(double x, double y, int h)
    {
        int a = _mesh.Origin[h], b = _mesh.Destination(h);
        return ((_mesh.X[a] - x) * (_mesh.X[b] - x)) + ((_mesh.Y[a] - y) * (_mesh.Y[b] - y)) < 0;
    }

    private bool Split(int h)
    {
        int a = _mesh.Origin[h], b = _mesh.Destination(h), constraint = _mesh.Constraint[h];
        double part = _segments.WhereToSplit(a, b, Math.Sqrt(_mesh.SquaredLength(h)));
        double x = Math.Round(_mesh.X[a] + (part * (_mesh.X[b] - _mesh.X[a])));
        double y = Math.Round(_mesh.Y[a] + (part * (_mesh.Y[b] - _mesh.Y[a])));
        _mesh.GatherCavityAcross(x, y, h);
        if (!_mesh.CavitySees(x, y))
        {
            return false;
        }

        int vertex = _mesh.AddVertex(x, y);
        _segments.NoteOnSegment(vertex, constraint >> 1);
        _targets.NoteBetween(vertex, a, b, part);
        _mesh.FillCavity(vertex);
        foreach (int triangle in _mesh.NewTriangles)
        {
            int first = 3 * triangle;
            if (_mesh.Origin[first + 1] == a)
            {
                _mesh.Constraint[first + 1] = constraint;
            }
            else if (_mesh.Origin[first + 1] == b)
            {
                _mesh.Constraint[first + 1] = constraint ^ 1;
            }

            if (_mesh.Origin[first] == b)
            {
                _mesh.Constraint[first + 2] = constraint;
            }
            else if (_mesh.Origin[first] == a)
            {
                _mesh.Constraint[first + 2] = constraint ^ 1;
            }
        }

        ExamineNew();
        return true;
    }

    private void ExamineNew()
    {
        IReadOnlyList<int> added = _mesh.NewTriangles;
        for (int i = 0; i < added.Count; i++)
        {
            Examine(added[i]);
        }
    }

    private void Improve(Corner corner)
    {
        int triangle = corner.HalfEdge / 3;
        if (BucketOf(triangle) < 0)
        {
            return;
        }

        (double x, double y) = PlaceFor(triangle);
        int holder = _mesh.Locate(x, y, triangle, stopAtConstraints: true, out int barrier);
        if (barrier != Triangulation.None)
        {
            // A place beyond an outline is no use; splitting the outline, where it can be, moves the place inside.
            if (holder != Triangulation.None && CanSplit(barrier) && Split(barrier))
            {
                Requeue(corner);
            }

            return;
        }

        _mesh.GatherCavity(x, y, holder);
        if (CollectEncroached(x, y))
        {
            SplitEncroached(corner);
        }
        else if (_mesh.CavitySees(x, y))
        {
            int vertex = _mesh.AddVertex(x, y);
            _segments.NoteFree(vertex);
            _targets.NoteInside(vertex, holder);
            _mesh.FillCavity(vertex);
            ExamineNew();
        }
    }

    /// <summary>Collects the segments around the gathered cavity that can be split; true when the place encroaches on any.</summary>
    private bool CollectEncroached(double x, double y)
    {
        _around.Clear();
        _pendingSplits.Clear();
        _mesh.CollectConstraintsAround(_around);
        bool isEncroaching = false;
        foreach (int h in _around)
        {
            if (Encroaches(x, y, h))
            {
                isEncroaching = true;
                if (CanSplit(h))
                {
                    _pendingSplits.Add(CornerAt(h));
                }
            }
        }

        return isEncroaching;
    }

    /// <summary>Splits the collected segments instead of improving the triangle, which is tried again if it survives.</summary>
    private void SplitEncroached(Corner corner)
    {
        bool hasSplit = false;
        foreach (Corner segment in _pendingSplits)
        {
            hasSplit |= Holds(segment) && Split(segment.HalfEdge);
        }

        if (hasSplit)
        {
            Requeue(corner);
        }
    }

    private void Requeue(Corner corner)
    {
        if (Holds(corner))
        {
            Enqueue(corner.HalfEdge / 3);
        }
    }

    private void Enqueue(int triangle)
    {
        int bucket = BucketOf(triangle);
        if (bucket >= 0)
        {
            _buckets[bucket].Enqueue(CornerAt(3 * triangle));
            _worstBucket = Math.Max(_worstBucket, bucket);
        }
    }

    /// <summary>Circumcentre of the triangle, or the off-centre nearer to its shortest edge, on the lattice.</summary>
    private (double X, double Y) PlaceFor(int triangle)
    {
        int h = ShortestEdge(triangle);
        int p = _mesh.Origin[h], q = _mesh.Destination(h), r = _mesh.Apex(h);
        double px = _mesh.X[p], py = _mesh.Y[p];
        double bx = _mesh.X[q] - px, by = _mesh.Y[q] - py, cx = _mesh.X[r] - px, cy = _mesh.Y[r] - py;
        double cross = 2 * ((bx * cy) - (by * cx));
        double liftB = (bx * bx) + (by * by), liftC = (cx * cx) + (cy * cy);
        double x = ((cy * liftB) - (by * liftC)) / cross;
        double y = ((bx * liftC) - (cx * liftB)) / cross;

        // The circumcentre lies on the bisector of the shortest edge, at this signed height over it.
        double length = Math.Sqrt(liftB);
        double height = ((bx * y) - (by * x)) / length;
        double limit = _offCentreHeight * length;
        if (height > limit)
        {
            x = (bx / 2) - (by / length * limit);
            y = (by / 2) + (bx / length * limit);
        }

        return (Math.Round(px + x), Math.Round(py + y));
    }

    private int ShortestEdge(int triangle)
    {
        int best = 3 * triangle;
        for (int h = best + 1; h < (3 * triangle) + 3; h++)
        {
            if (_mesh.SquaredLength(h) < _mesh.SquaredLength(best))
            {
                best = h;
            }
        }

        return best;
    }

    private void Measure(int triangle, out double shortest, out double ratioSquared, out double excess)
    {
        int h = 3 * triangle;
        double l0 = _mesh.SquaredLength(h), l1 = _mesh.SquaredLength(h + 1), l2 = _mesh.SquaredLength(h + 2);
        int a = _mesh.Origin[h], b = _mesh.Origin[h + 1], c = _mesh.Origin[h + 2];
        double cross = ((_mesh.X[b] - _mesh.X[a]) * (_mesh.Y[c] - _mesh.Y[a]))
            - ((_mesh.Y[b] - _mesh.Y[a]) * (_mesh.X[c] - _mesh.X[a]));
        shortest = Math.Min(l0, Math.Min(l1, l2));

        // Circumradius R = l0 l1 l2 / (4 area); R over the shortest edge is 1 / (2 sin of the smallest angle).
        ratioSquared = l0 * l1 * l2 / (4 * cross * cross * shortest);
        double w0 = _targets.OfEdge(a, b), w1 = _targets.OfEdge(b, c), w2 = _targets.OfEdge(c, a);
        excess = Math.Max(l0 / (w0 * w0), Math.Max(l1 / (w1 * w1), l2 / (w2 * w2)));
    }

    /// <summary>Urgency of a triangle that needs a vertex, -1 when it needs none.</summary>
    private int BucketOf(int triangle)
    {
        if (IsHeld(triangle))
        {
            return -1;
        }

        Measure(triangle, out double shortest, out double ratioSquared, out double excess);
        double urgency = excess > 1 ? excess : 0;
        if (ratioSquared > _greatestRatioSquared && shortest >= _minimumEdge * _minimumEdge
            && !IsBetweenShells(triangle))
        {
            urgency = Math.Max(urgency, ratioSquared / _greatestRatioSquared);
        }

        return urgency == 0 ? -1 : Math.Min(BucketCount - 1, (int)(2 * Math.Log2(urgency)));
    }

    /// <summary>Whether the shortest edge joins two cuts on one circle around a point where segments meet.</summary>
    private bool IsBetweenShells(int triangle)
    {
        int h = ShortestEdge(triangle);
        return _segments.AreOnOneShell(_mesh.Origin[h], _mesh.Destination(h), ShellTolerance);
    }

    private readonly record struct Corner(int HalfEdge, int From, int To, int Apex);
}

using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Artwork;

/// <summary>
/// Tells whether a ring crosses itself: whether two of its edges meet inside both, at an angle. Edges that touch, or
/// run back along each other as the two sides of a cut-in do, do not cross.
/// </summary>
/// <remarks>
/// Edges are taken in the order of their lower ends along one axis, each compared with those that still reach there;
/// the axis is the one along which edges are shorter. Only one crossing is looked for, and only to remark on it: the
/// search ends, with no answer but no, where a ring would need more than some hundred comparisons for each edge.
/// </remarks>
internal sealed class SelfCrossing
{
    private const long MostComparisonsPerEdge = 400;

    private long[] _lower = [];
    private int[] _order = [];
    private readonly List<int> _reaching = [];

    public bool IsFoundIn(PointNm[] ring)
    {
        if (ring.Length < 4)
        {
            return false;
        }

        bool alongX = RunsLessAlongX(ring);
        Sort(ring, alongX);
        _reaching.Clear();
        long comparisons = 0;
        for (int k = 0; k < ring.Length && comparisons < MostComparisonsPerEdge * ring.Length; k++)
        {
            int edge = _order[k];
            int kept = 0;
            for (int r = 0; r < _reaching.Count; r++)
            {
                int other = _reaching[r];
                if (UpperEnd(ring, other, alongX) < _lower[k])
                {
                    continue;
                }

                _reaching[kept++] = other;
                if (Cross(ring[edge], End(ring, edge), ring[other], End(ring, other)))
                {
                    return true;
                }
            }

            comparisons += _reaching.Count;
            _reaching.RemoveRange(kept, _reaching.Count - kept);
            _reaching.Add(edge);
        }

        return false;
    }

    private void Sort(PointNm[] ring, bool alongX)
    {
        if (_order.Length < ring.Length)
        {
            _lower = new long[ring.Length];
            _order = new int[ring.Length];
        }

        for (int i = 0; i < ring.Length; i++)
        {
            PointNm a = ring[i];
            PointNm b = End(ring, i);
            _lower[i] = alongX ? Math.Min(a.X, b.X) : Math.Min(a.Y, b.Y);
            _order[i] = i;
        }

        Array.Sort(_lower, _order, 0, ring.Length);
    }

    private static bool RunsLessAlongX(PointNm[] ring)
    {
        double x = 0;
        double y = 0;
        for (int i = 0; i < ring.Length; i++)
        {
            PointNm step = End(ring, i) - ring[i];
            x += Math.Abs(step.X);
            y += Math.Abs(step.Y);
        }

        return x < y;
    }

    private static bool Cross(PointNm a, PointNm b, PointNm c, PointNm d)
    {
        bool apart = Math.Max(a.X, b.X) < Math.Min(c.X, d.X) || Math.Max(c.X, d.X) < Math.Min(a.X, b.X)
            || Math.Max(a.Y, b.Y) < Math.Min(c.Y, d.Y) || Math.Max(c.Y, d.Y) < Math.Min(a.Y, b.Y);
        return !apart && Side(a, b, c) * Side(a, b, d) < 0 && Side(c, d, a) * Side(c, d, b) < 0;
    }

    private static int Side(PointNm from, PointNm to, PointNm p) =>
        ExactSign.OfCross(to.X - from.X, to.Y - from.Y, p.X - from.X, p.Y - from.Y);

    private static PointNm End(PointNm[] ring, int edge) => ring[edge + 1 == ring.Length ? 0 : edge + 1];

    private static long UpperEnd(PointNm[] ring, int edge, bool alongX)
    {
        PointNm a = ring[edge];
        PointNm b = End(ring, edge);
        return alongX ? Math.Max(a.X, b.X) : Math.Max(a.Y, b.Y);
    }
}
